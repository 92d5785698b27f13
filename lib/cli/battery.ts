import type { Plan } from "../plan/plan.ts";
import { chargeChart } from "../report/chart/charge-chart.ts";
import { svgFile } from "../report/chart/svg-file.ts";
import { batteryTable } from "../report/table/battery-table.ts";
import { wiringTable } from "../report/table/wiring-table.ts";
import {
  batterySummary,
  ruleWords,
  standUseWords,
  uncertaintyWords,
  wiringSummary,
} from "../report/words/battery-words.ts";
import { circuitCautions, dangerWords } from "../report/words/circuit-cautions.ts";
import { circuitModelWords } from "../report/words/circuit-models.ts";
import { coldWords } from "../report/words/cold-words.ts";
import { copingWords } from "../report/words/coping-words.ts";
import { modelWords } from "../report/words/model-words.ts";
import { type BatteryAnswer, batteryOfPlan } from "../season/battery/battery-answer.ts";
import { meanOutcome } from "../season/battery/battery-season.ts";
import { livedSkies } from "./battery-seasons.ts";
import { chartDocument } from "./chart-document.ts";
import { DELIVERY_OPTIONS, deliver } from "./deliver.ts";
import { planHeading, readPlanFile } from "./plan-file.ts";
import { PLAN_OPTIONS, planWithOptions } from "./plan-options.ts";
import { tableFiles } from "./table-files.ts";
import { textOption, type Verb, type VerbWords, type Voice } from "./verb.ts";
import { version } from "./version.ts";
import type { WholeFile } from "./write-file.ts";

const help = `
  panel-season battery [PLAN] [options]

From the light to the loads: cables, controller and battery of the plan, lived with through
every year of its weather file, or through many seasons drawn from its climate.
The plan's sections circuit, battery and loads say what there is; what they leave out has defaults.

  --csv FILE       the season, one row a day: offered, used, short, curtailed, lowest charge
  --wiring FILE    cables: drop, loss and what the next sizes up return, one row a size
  --chart FILE     the charge through the season (SVG)
  --json           the whole answer as JSON on standard output
  --from --to --climate   as in season
  --step MINUTES   as in season [the plan's worth.stepMinutes: 60]
  --force          replace files that are there already

Words used
  short day        a day on which the loads went without a watt-hour or more
  curtailed        light that nothing could take: battery full, too cold, or too slow
  lowest charge    of the whole capacity; the floor is what you are not willing to take out

Examples
  panel-season battery
  panel-season battery my-plan.json --csv battery.csv --wiring cables.csv --chart charge.svg
`;

const filesAsked = async (
  words: VerbWords,
  plan: Plan,
  { season, wiring }: BatteryAnswer,
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
    ...tableFiles(textOption(words, "csv"), batteryTable(season), provenance),
    ...tableFiles(textOption(words, "wiring"), wiringTable(wiring), provenance),
    ...(chart === undefined
      ? []
      : [{ path: chart, content: svgFile(chargeChart(season, { document: chartDocument(), width: 960 })) }]),
  ];
};

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const planFile = await readPlanFile(words.positionals[0]);
  const given = planWithOptions(planFile.plan, words);
  const lived = await livedSkies(given, planFile.folder, voice);
  const { plan } = lived;
  const answer = batteryOfPlan(plan, lived.skies, lived.progress);
  lived.end();
  const { season, wiring } = answer;
  const notes = [...lived.skies.notes, ...uncertaintyWords(answer.uncertainty)];
  const cautions = circuitCautions(plan);
  await deliver(
    {
      heading: planHeading(planFile),
      files: await filesAsked(words, plan, answer, notes),
      json: () => ({
        plan,
        notes,
        cautions,
        models: [...modelWords(plan), ...circuitModelWords(plan)],
        seasons: season.outcomes,
        days: batteryTable(season).rows,
        wiring,
        cold: answer.cold,
        ways: answer.ways,
        rule: answer.rule,
      }),
      lines: [
        ...dangerWords(wiring.remarks),
        ...standUseWords(plan),
        ...batterySummary(season),
        ...coldWords(answer.cold, plan.battery, season.days.length, meanOutcome(season, "shortDays")),
        ...copingWords(answer.ways, null, plan.worth, answer.cold !== null),
        ...ruleWords(answer.rule),
        "",
        "Wiring",
        ...wiringSummary({ ...wiring, remarks: wiring.remarks.filter(({ kind }) => kind !== "danger") }),
        "",
        "Before you touch a wire",
        ...cautions.map((caution) => `- ${caution}`),
        ...(notes.length === 0 ? [] : ["", ...notes]),
      ],
    },
    words,
    voice,
  );
};

const text = { type: "string" } as const;

export const batteryVerb: Verb = {
  name: "battery",
  says: "what reaches the battery and when: cables, charge through the season, short days",
  help,
  options: {
    ...DELIVERY_OPTIONS,
    ...PLAN_OPTIONS,
    csv: text,
    wiring: text,
    chart: text,
  },
  mostWords: 1,
  run,
};
