import { planRemarks } from "../../circuit/checks.ts";
import type { Plan } from "../../plan/plan.ts";
import { dangerWords } from "../../report/words/circuit-cautions.ts";
import { CUTTING_CAUTION, legsSummary } from "../../report/words/legs-summary.ts";
import { steadySentences } from "../../report/words/steady-words.ts";
import { type TrimWorth, trimWords } from "../../report/words/trim-words.ts";
import { livedPlan } from "../../season/battery/lived-plan.ts";
import { fewestShortDaySets, MOST_SHORT_DAY_LEGS } from "../../season/battery/short-day-sets.ts";
import { chosenLegs, legsAsSettings } from "../../season/legs/chosen-legs.ts";
import {
  LEG_OBJECTIVES,
  type LegObjective,
  type LegSetAnswer,
  MOST_LEGS,
} from "../../season/legs/leg-set.ts";
import { bestLegsOfPlan, legsAnswer } from "../../season/legs/legs-answer.ts";
import { type StandSeason, standSeason } from "../../season/legs/stand-season.ts";
import { totalWh } from "../../season/light/day-sums.ts";
import { panelUnits } from "../../season/light/panel-unit.ts";
import type { PlanSkies } from "../../season/light/skies-of-plan.ts";
import type { Trim } from "../../stand/cut.ts";
import type { LegSetting } from "../../stand/leg.ts";
import { WIND_CAUTION } from "../../stand/steadiness.ts";
import { DELIVERY_OPTIONS, deliver } from "../deliver.ts";
import { planHeading, readPlanFile } from "../plan-file.ts";
import { PLAN_OPTIONS, planWithOptions } from "../plan-options.ts";
import { planSkies } from "../plan-skies.ts";
import { progressLine } from "../progress.ts";
import { textOption, UsageError, type Verb, type VerbWords, type Voice, wholeOption } from "../verb.ts";
import { legsFiles, legsJson } from "./files.ts";
import { LEGS_HELP } from "./help.ts";
import { trimAsked } from "./trim.ts";

const BEFORE_CUTTING = `Before cutting: ${CUTTING_CAUTION}`;

const objectiveOf = (words: VerbWords): LegObjective => {
  const text = textOption(words, "for") ?? LEG_OBJECTIVES[0];
  const found = LEG_OBJECTIVES.find((objective) => objective === text);
  if (!found) throw new UsageError(`--for ${text}: must be one of: ${LEG_OBJECTIVES.join(", ")}`);
  return found;
};

/** The best sets for an objective; those that a battery decides take a while. */
const setsFor = (
  objective: LegObjective,
  season: StandSeason,
  skies: PlanSkies,
  most: number,
  voice: Voice,
): readonly LegSetAnswer[] => {
  if (objective !== "fewest short days") return bestLegsOfPlan(season, { most, objective });
  const progress = progressLine("legs on the battery", voice);
  try {
    return fewestShortDaySets(season, skies, Math.min(most, MOST_SHORT_DAY_LEGS), progress.at);
  } finally {
    progress.end();
  }
};

/** What a cut brings on a mean day when the leg is kept all season, facing as it does best. */
const trimWorth = async (
  plan: Plan,
  folder: string,
  { now, then }: Extract<Trim, { kind: "cut" }>,
): Promise<TrimWorth> => {
  const { skies } = await planSkies(plan, folder);
  const { days, energy, facingDeg } = standSeason(plan, skies, panelUnits(plan.panels));
  const dayWh = ({ tiltDeg }: LegSetting): number => totalWh(energy(tiltDeg, facingDeg)) / days.length;
  return { nowDayWh: dayWh(now), thenDayWh: dayWh(then) };
};

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const planFile = await readPlanFile(words.positionals[0]);
  const objective = objectiveOf(words);
  const given = planWithOptions(planFile.plan, words);
  const plan = objective === "fewest short days" ? livedPlan(given) : given;
  const trim = trimAsked(words, plan);
  if (trim !== null) {
    const worth = trim.kind === "cut" ? await trimWorth(plan, planFile.folder, trim) : null;
    const lines = [trimWords(trim, worth), "", BEFORE_CUTTING];
    await deliver({ heading: null, files: [], json: () => trim, lines }, words, voice);
    return;
  }
  const most = wholeOption(words, "most", [0, MOST_LEGS], "legs") ?? 3;
  const size = wholeOption(words, "set", [1, MOST_LEGS], "legs");
  const planned = await planSkies(plan, planFile.folder);
  const { skies, notes } = planned;
  const season = standSeason(plan, skies, panelUnits(plan.panels));
  const sets = setsFor(objective, season, planned, Math.max(most, size ?? 0), voice);
  const legs = chosenLegs(plan, sets, size);
  const answer = legsAnswer(season, objective, sets, legsAsSettings(plan, legs));
  await deliver(
    {
      heading: planHeading(planFile),
      files: await legsFiles(words, season, answer, legs, notes),
      json: () => legsJson(plan, answer, legs, notes),
      lines: [
        ...(objective === "fewest short days" ? dangerWords(planRemarks(plan)) : []),
        ...legsSummary(answer),
        ...notes,
        "",
        BEFORE_CUTTING,
        `Wind: ${WIND_CAUTION}`,
        ...steadySentences(plan, [answer.settings[0].setting, ...legs]),
      ],
    },
    words,
    voice,
  );
};

const text = { type: "string" } as const;

export const legsVerb: Verb = {
  name: "legs",
  says: "which legs to cut, how exact they must be, and the cutting sheet",
  help: LEGS_HELP,
  options: {
    ...PLAN_OPTIONS,
    ...DELIVERY_OPTIONS,
    most: text,
    for: text,
    set: text,
    csv: text,
    settings: text,
    tolerance: text,
    bands: text,
    rules: text,
    pieces: text,
    sheet: text,
    gauge: text,
    map: text,
    "map-csv": text,
    measured: text,
    wanted: text,
    "read-from": text,
  },
  mostWords: 1,
  run,
};
