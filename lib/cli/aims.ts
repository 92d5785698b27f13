import type { Plan } from "../plan/plan.ts";
import { svgFile } from "../report/chart/svg-file.ts";
import { dialBearings } from "../report/paper/dial-bearings.ts";
import { sunCompass } from "../report/paper/sun-compass.ts";
import { aimsTable } from "../report/table/aims-table.ts";
import { type CardPlace, cardPlace } from "../report/words/aim-card.ts";
import { aimsSummary } from "../report/words/aims-summary.ts";
import { modelWords } from "../report/words/model-words.ts";
import { type Reaim, reaim } from "../season/aiming/reaim.ts";
import { panelUnits } from "../season/light/panel-unit.ts";
import { chartDocument } from "./chart-document.ts";
import { DELIVERY_OPTIONS, deliver } from "./deliver.ts";
import { planHeading, readPlanFile } from "./plan-file.ts";
import { PLAN_OPTIONS, planWithOptions } from "./plan-options.ts";
import { planSkies } from "./plan-skies.ts";
import { progressLine } from "./progress.ts";
import { tableFiles } from "./table-files.ts";
import { textOption, type Verb, type VerbWords, type Voice, wholeOption } from "./verb.ts";
import { version } from "./version.ts";

const help = `
  panel-season aims [PLAN] [options]

  --aims N         aims a day to spell out and to draw, 1 to 4 [2]
  --csv FILE       the table: one row an aim, for each month and for one routine all season,
                   with FILE-metadata.json beside it
  --dial FILE      a sun compass to print at true size, as SVG: with a pin's shadow on now, its
                   arrows point along the season's bearings
  --from DATE      first day instead of the plan's (2027-04-01)
  --to DATE        last day instead of the plan's
  --climate WHERE  cloud from a climate instead of the plan's sky: "nearest", a place's name,
                   or a kind of climate such as "hot desert"
  --step MINUTES   1, 2, 3, 5, 6, 10, 15, 20, 30 or 60 [10]
  --json           the whole answer as JSON on standard output, for programs
  --force          replace files that are there already

Looked at: lying flat and every leg of the plan, at bearings 5 degrees apart, changed at any ten
minutes between 06:00 and 22:00 (the plan's section "aiming" sets other steps and times). A horizon
(the plan's "site.horizon") hides the sun and its share of sky. Only panels on the stand count.

The columns of the table:
  period              the season (one routine kept all through), or a month (2027-06) with its own
  routine             facing noon; at most 1, 2, 3, 4 aims; facing the sun (a limit no stand reaches)
  aim                 number of the aim within the day
  from_clock          when to walk out, in the site's clock time; empty for the first aim
  setting             the leg in use, or flat
  tilt_deg            up from level
  bearing_deg         clockwise from true north
  compass_deg         the same from magnetic north
  expected_Wh_a_day   with cloud in it; empty when only the clear sky is known
  clear_Wh_a_day      under a clear sky: an upper bound
  gain_Wh_a_day       what the routine brings more than the one before it

Examples
  panel-season aims                                     the demo plan
  panel-season aims my-plan.json --aims 3 --csv aims.csv --dial dial.svg
`;

const dialFile = (plan: Plan, answer: Reaim, place: CardPlace, aims: number): string =>
  svgFile(sunCompass(chartDocument(), plan.site, place.days, dialBearings(answer, aims)), "light");

const modelsOf = (plan: Plan): readonly string[] => [
  ...modelWords(plan),
  "compass north: World Magnetic Model (NOAA and British Geological Survey)",
];

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const aims = wholeOption(words, "aims", [1, 4], "aims a day") ?? 2;
  const planFile = await readPlanFile(words.positionals[0]);
  const given = planWithOptions(planFile.plan, words);
  const mostAims = Math.max(given.aiming.mostAims, aims);
  const plan = { ...given, aiming: { ...given.aiming, mostAims } };
  const { skies, notes } = await planSkies(plan, planFile.folder);
  const progress = progressLine("trying aims", voice);
  const answer = reaim(plan, skies, panelUnits(plan.panels), progress.at);
  progress.end();
  const place = cardPlace(plan.site, skies.sun.days);
  const provenance = { plan, models: modelsOf(plan), notes, version: await version() };
  const dial = textOption(words, "dial");
  await deliver(
    {
      heading: planHeading(planFile),
      files: [
        ...tableFiles(textOption(words, "csv"), aimsTable(answer, place), provenance),
        ...(dial === undefined ? [] : [{ path: dial, content: dialFile(plan, answer, place, aims) }]),
      ],
      json: () => ({ plan, notes, models: modelsOf(plan), rows: aimsTable(answer, place).rows }),
      lines: [...aimsSummary(answer, place, aims), ...notes],
    },
    words,
    voice,
  );
};

export const aimsVerb: Verb = {
  name: "aims",
  says: "what turning the panel in the course of the day brings, and when to turn it where",
  help,
  options: {
    ...PLAN_OPTIONS,
    ...DELIVERY_OPTIONS,
    aims: { type: "string" },
    csv: { type: "string" },
    dial: { type: "string" },
  },
  mostWords: 1,
  run,
};
