import type { Plan } from "../plan/plan.ts";
import { svgFile } from "../report/chart/svg-file.ts";
import { worthChart } from "../report/chart/worth-chart.ts";
import { worthTable } from "../report/table/worth-table.ts";
import { standUseWords, uncertaintyWords } from "../report/words/battery-words.ts";
import { secondPanelCautions } from "../report/words/circuit-cautions.ts";
import { circuitModelWords } from "../report/words/circuit-models.ts";
import { modelWords } from "../report/words/model-words.ts";
import { worthSummary, worthVerdicts } from "../report/words/worth-words.ts";
import { smallestPanelsOfPlan, worthOfPlan } from "../season/battery/battery-answer.ts";
import type { WorthAnswer } from "../season/battery/worth.ts";
import { livedSkies } from "./battery-seasons.ts";
import { chartDocument } from "./chart-document.ts";
import { DELIVERY_OPTIONS, deliver } from "./deliver.ts";
import { planHeading, readPlanFile } from "./plan-file.ts";
import { PLAN_OPTIONS, planWithOptions } from "./plan-options.ts";
import { tableFiles } from "./table-files.ts";
import { numberOption, switchedOn, textOption, type Verb, type VerbWords, type Voice } from "./verb.ts";
import { version } from "./version.ts";
import type { WholeFile } from "./write-file.ts";

const help = `
  panel-season worth [PLAN] [options]

What each thing you could do is worth, under the same skies: legs, turning the panel, a second
panel on the roof or on legs, thicker cable, a better controller, a bigger battery, fewer loads.
Judged by short days and by the energy the loads get, not by the light on the glass.

  --csv FILE       set-ups side by side, one row each
  --chart FILE     short days of each set-up (SVG)
  --short-days N   short days a season that you accept, on average [the plan's worth.wantedShortDays]
  --smallest       also seek the smallest second panel that keeps within them
  --json           the whole answer as JSON on standard output
  --from --to --climate   as in season
  --force          replace files that are there already

Prices, years of use and what you do instead of a full battery are the plan's (section worth).

Examples
  panel-season worth
  panel-season worth my-plan.json --csv worth.csv --chart worth.svg --smallest
  panel-season worth my-plan.json --short-days 5
`;

const filesAsked = async (
  words: VerbWords,
  plan: Plan,
  answer: WorthAnswer,
  notes: readonly string[],
): Promise<readonly WholeFile[]> => {
  const provenance = {
    plan,
    models: [...modelWords(plan), ...circuitModelWords(plan)],
    notes,
    version: await version(),
  };
  const chart = textOption(words, "chart");
  return [
    ...tableFiles(textOption(words, "csv"), worthTable(answer, plan.worth), provenance),
    ...(chart === undefined
      ? []
      : [
          {
            path: chart,
            content: svgFile(worthChart(answer, plan.worth, { document: chartDocument(), width: 960 })),
          },
        ]),
  ];
};

/** The plan with the accepted short days changed by the option. */
const withWanted = (plan: Plan, words: VerbWords): Plan => {
  const wantedShortDays = numberOption(words, "short-days", [0, 366], "days a season");
  return wantedShortDays === undefined ? plan : { ...plan, worth: { ...plan.worth, wantedShortDays } };
};

/** Everything of the answer but the days of each season, for programs. */
const jsonOf = (answer: WorthAnswer) => ({
  days: answer.days,
  ways: answer.ways,
  wayStated: answer.wayStated,
  cold: answer.cold,
  remarks: answer.remarks,
  asIs: { ...answer.asIs, season: answer.asIs.season.outcomes },
  rows: answer.rows.map((row) => ({ ...row, season: row.season.outcomes })),
});

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const planFile = await readPlanFile(words.positionals[0]);
  const given = withWanted(planWithOptions(planFile.plan, words), words);
  const lived = await livedSkies(given, planFile.folder, voice);
  const { plan } = lived;
  const { worth } = plan;
  const { answer, uncertainty } = worthOfPlan(plan, lived.skies, lived.progress);
  const smallest = switchedOn(words, "smallest")
    ? smallestPanelsOfPlan(plan, lived.skies, lived.progress)
    : [];
  lived.end();
  const notes = [...lived.skies.notes, ...uncertaintyWords(uncertainty)];
  const cautions = secondPanelCautions(plan);
  await deliver(
    {
      heading: planHeading(planFile),
      files: await filesAsked(words, plan, answer, notes),
      json: () => ({
        plan,
        notes,
        cautions,
        models: [...modelWords(plan), ...circuitModelWords(plan)],
        smallest,
        ...jsonOf(answer),
      }),
      lines: [
        ...standUseWords(plan),
        ...worthSummary(answer, worth, smallest),
        "",
        ...worthVerdicts(answer, worth),
        "",
        "Before you buy, climb or connect",
        ...cautions.map((caution) => `- ${caution}`),
        ...(notes.length === 0 ? [] : ["", ...notes]),
      ],
    },
    words,
    voice,
  );
};

const text = { type: "string" } as const;

export const worthVerb: Verb = {
  name: "worth",
  says: "is it worth it: legs, turning, a second panel, cable, controller, battery, fewer loads",
  help,
  options: {
    ...DELIVERY_OPTIONS,
    from: PLAN_OPTIONS.from,
    to: PLAN_OPTIONS.to,
    climate: PLAN_OPTIONS.climate,
    csv: text,
    chart: text,
    "short-days": text,
    smallest: { type: "boolean" },
  },
  mostWords: 1,
  run,
};
