import { seasonChart } from "../report/chart/season-chart.ts";
import { svgFile } from "../report/chart/svg-file.ts";
import { seasonRows, seasonTable } from "../report/table/season-table.ts";
import { bandSentences } from "../report/words/band-words.ts";
import { modelWords } from "../report/words/model-words.ts";
import { countedWords, textSummary } from "../report/words/text-summary.ts";
import { panelUnits } from "../season/light/panel-unit.ts";
import { type SeasonYield, seasonYield } from "../season/light/season-yield.ts";
import { seasonBands, type TotalBand } from "../season/light/sequences.ts";
import { settingsOf } from "../season/light/settings.ts";
import type { PlanSkies } from "../season/light/skies-of-plan.ts";
import { isRough } from "../sky/climate/place/plan-climate.ts";
import { chartDocument } from "./chart-document.ts";
import { DELIVERY_OPTIONS, deliver } from "./deliver.ts";
import { planHeading, readPlanFile } from "./plan-file.ts";
import { PLAN_OPTIONS, planWithOptions } from "./plan-options.ts";
import { planSkies } from "./plan-skies.ts";
import { progressLine } from "./progress.ts";
import { tableFiles } from "./table-files.ts";
import { textOption, type Verb, type VerbWords, type Voice } from "./verb.ts";
import { version } from "./version.ts";
import type { WholeFile } from "./write-file.ts";

const help = `
  panel-season season [PLAN] [options]

  --csv FILE       the table: one row a day and setting, with FILE-metadata.json beside it
  --chart FILE     the chart, as SVG
  --from DATE      first day instead of the plan's (2027-04-01)
  --to DATE        last day instead of the plan's
  --climate WHERE  cloud from a climate instead of the plan's sky: "nearest", a place's name,
                   or a kind of climate such as "hot desert"
  --step MINUTES   1, 2, 3, 5, 6, 10, 15, 20, 30 or 60 [10]
  --json           the whole answer as JSON on standard output, for programs
  --force          replace files that are there already

The columns of the table:
  date              civil date of the day's solar noon at the site
  setting           the leg in use, or flat
  tilt_deg          up from level
  bearing_deg       clockwise from true north
  sun_hours         hours the sun is above a level horizon
  clear_Wh          under a clear sky: an upper bound
  expected_Wh       with cloud in it; empty when only the clear sky is known
  p10_Wh p50_Wh p90_Wh   where a spread is known: nine days in ten bring more than p10
  best              true for the setting that brings most that day

Examples
  panel-season season                                   the demo plan
  panel-season season my-plan.json --csv season.csv --chart season.svg
  panel-season season my-plan.json --climate "Punta Arenas"
  panel-season season my-plan.json --from 2027-06-01 --to 2027-06-30 --json
`;

const chartFiles = (path: string | undefined, yields: SeasonYield): readonly WholeFile[] =>
  path === undefined
    ? []
    : [{ path, content: svgFile(seasonChart(yields, { document: chartDocument(), width: 960 })) }];

const CLEAR_HINT =
  'For expected figures, with cloud in them: --climate nearest, or "sky": { "source": "climate" } in the plan.';

/** Bands of whole seasons, drawn under a progress line; `null` when the skies come from no climate. */
const totalBands = (yields: SeasonYield, { cloud }: PlanSkies, voice: Voice): readonly TotalBand[] | null => {
  if (cloud === null) return null;
  const progress = progressLine(`drawing ${cloud.seasons} seasons`, voice);
  const bands = seasonBands(yields, cloud, (done, days) => progress.at(done / days));
  progress.end();
  return bands;
};

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const planFile = await readPlanFile(words.positionals[0]);
  const plan = planWithOptions(planFile.plan, words);
  const planned = await planSkies(plan, planFile.folder);
  const { skies, notes, cloud } = planned;
  const yields = seasonYield(skies, panelUnits(plan.panels), settingsOf(plan));
  const totals = totalBands(yields, planned, voice);
  const provenance = { plan, models: modelWords(plan), notes, version: await version() };
  await deliver(
    {
      heading: planHeading(planFile),
      files: [
        ...tableFiles(textOption(words, "csv"), seasonTable(yields), provenance),
        ...chartFiles(textOption(words, "chart"), yields),
      ],
      json: () => ({ plan, notes, models: modelWords(plan), totals, rows: seasonRows(yields) }),
      lines: [
        ...textSummary(yields, plan.site.name, cloud !== null && isRough(cloud.chosen)),
        ...countedWords(plan),
        ...bandSentences(yields, totals),
        ...notes,
        ...(plan.sky.source === "clear" ? [CLEAR_HINT] : []),
      ],
    },
    words,
    voice,
  );
};

export const seasonVerb: Verb = {
  name: "season",
  says: "what each leg setting brings in on each day of the season, and which is best when",
  help,
  options: {
    ...PLAN_OPTIONS,
    ...DELIVERY_OPTIONS,
    csv: { type: "string" },
    chart: { type: "string" },
  },
  mostWords: 1,
  run,
};
