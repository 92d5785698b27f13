import type { Plan } from "../plan/plan.ts";
import { swapsTable } from "../report/table/swaps-table.ts";
import { modelWords } from "../report/words/model-words.ts";
import { swapsSummary } from "../report/words/swaps-summary.ts";
import { chosenLegs, legsAsSettings } from "../season/legs/chosen-legs.ts";
import { MOST_LEGS } from "../season/legs/leg-set.ts";
import { bestLegsOfPlan } from "../season/legs/legs-answer.ts";
import { standSeason } from "../season/legs/stand-season.ts";
import { swapRows } from "../season/legs/swap-rows.ts";
import { type SwapsAnswer, swapsAnswer } from "../season/legs/swaps-answer.ts";
import { panelUnits } from "../season/light/panel-unit.ts";
import { DELIVERY_OPTIONS, deliver } from "./deliver.ts";
import { planHeading, readPlanFile } from "./plan-file.ts";
import { PLAN_OPTIONS, planWithOptions } from "./plan-options.ts";
import { planSkies } from "./plan-skies.ts";
import { tableFiles } from "./table-files.ts";
import { numberOption, textOption, type Verb, type VerbWords, type Voice, wholeOption } from "./verb.ts";
import { version } from "./version.ts";

const help = `
  panel-season swaps [PLAN] [options]

When to change from which leg to which, with the fewest swaps that keep most of the gain;
what each swap is worth; how early or late it may be; and what never changing brings.

  --keep PCT       share of what the legs gain over lying flat that must be kept, 0 to 100 [99]
  --slack PCT      share of that gain that one swap done early or late may cost, 0 to 100 [1]
  --set N          use the best set of N legs instead of the plan's own, 1 to 4
  --csv FILE       the calendar, with FILE-metadata.json beside it
  --json           the whole answer as JSON on standard output
  --from --to --step --climate   as in season
  --force          replace files that are there already

Examples
  panel-season swaps
  panel-season swaps my-plan.json --keep 95 --csv swaps.csv
  panel-season swaps my-plan.json --set 2
`;

const NO_LEGS = "The plan has no legs: these are the best set of up to three to cut.";

const swapsJson = (plan: Plan, answer: SwapsAnswer, notes: readonly string[]): unknown => {
  const { calendar, settings, forgetTiltDeg, forgetTiltWh, cloudIn } = answer;
  return {
    plan,
    notes,
    models: modelWords(plan),
    cloudIn,
    settings,
    swaps: swapRows(answer),
    totalWh: calendar.totalWh,
    everyDayWh: calendar.everyDayWh,
    keptShare: calendar.keptShare,
    flatWh: calendar.firstWh,
    forgetSetting: settings[calendar.forgetSetting].name,
    forgetWh: calendar.forgetWh,
    forgetTiltDeg,
    forgetTiltWh,
  };
};

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const planFile = await readPlanFile(words.positionals[0]);
  const plan = planWithOptions(planFile.plan, words);
  const percent = (name: string, otherwise: number): number =>
    (numberOption(words, name, [0, 100], "%") ?? otherwise) / 100;
  const question = { keep: percent("keep", 99), slack: percent("slack", 1) };
  const size = wholeOption(words, "set", [1, MOST_LEGS], "legs");
  const { skies, notes } = await planSkies(plan, planFile.folder);
  const season = standSeason(plan, skies, panelUnits(plan.panels));
  const sets =
    size === undefined && plan.stand.legs.length > 0 ? [] : bestLegsOfPlan(season, { most: size ?? 3 });
  const answer = swapsAnswer(season, question, legsAsSettings(plan, chosenLegs(plan, sets, size)));
  const provenance = { plan, models: modelWords(plan), notes, version: await version() };
  await deliver(
    {
      heading: planHeading(planFile),
      files: tableFiles(textOption(words, "csv"), swapsTable(answer), provenance),
      json: () => swapsJson(plan, answer, notes),
      lines: [
        ...(size === undefined && plan.stand.legs.length === 0 ? [NO_LEGS] : []),
        ...swapsSummary(answer),
        ...notes,
      ],
    },
    words,
    voice,
  );
};

export const swapsVerb: Verb = {
  name: "swaps",
  says: "when to change from which leg to which, and what each change is worth",
  help,
  options: {
    ...PLAN_OPTIONS,
    ...DELIVERY_OPTIONS,
    keep: { type: "string" },
    slack: { type: "string" },
    set: { type: "string" },
    csv: { type: "string" },
  },
  mostWords: 1,
  run,
};
