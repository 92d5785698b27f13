import type { Plan } from "../plan/plan.ts";
import { cuttingSheetPage } from "../report/cutting-sheet-page.ts";
import { legSetsTable } from "../report/leg-sets-table.ts";
import { CUTTING_CAUTION, legsSummary } from "../report/legs-summary.ts";
import { legsTable } from "../report/legs-table.ts";
import { modelWords } from "../report/model-words.ts";
import { piecesTable } from "../report/pieces-table.ts";
import { rulesTable } from "../report/rules-table.ts";
import { svgFile } from "../report/svg-file.ts";
import { tiltGauge } from "../report/tilt-gauge.ts";
import { tiltMapChart, tiltsInUse } from "../report/tilt-map-chart.ts";
import { tiltMapTable } from "../report/tilt-map-table.ts";
import { bandsTable, toleranceTable } from "../report/tolerance-table.ts";
import { chosenLegs, legsAsSettings } from "../season/chosen-legs.ts";
import { LEG_OBJECTIVES, type LegObjective, MOST_LEGS } from "../season/leg-set.ts";
import { type LegsAnswer, legsAnswer } from "../season/legs-answer.ts";
import { panelUnits } from "../season/panel-unit.ts";
import { type StandSeason, standSeason } from "../season/stand-season.ts";
import { swapsAnswer } from "../season/swaps-answer.ts";
import { cuttingSheet } from "../stand/cutting-sheet.ts";
import type { NamedLeg } from "../stand/settings.ts";
import { standPanels } from "../stand/stand-panel.ts";
import { WIND_CAUTION } from "../stand/steadiness.ts";
import { chartDocument } from "./chart-document.ts";
import { readPlanFile } from "./plan-file.ts";
import { PLAN_OPTIONS, planWithOptions } from "./plan-options.ts";
import { planSkies } from "./plan-skies.ts";
import { tableFiles } from "./table-files.ts";
import {
  numberOption,
  switchedOn,
  textOption,
  UsageError,
  type Verb,
  type VerbWords,
  type Voice,
} from "./verb.ts";
import { version } from "./version.ts";
import { type WholeFile, writeWholeFiles } from "./write-file.ts";

const help = `
  panel-season legs [PLAN] [options]

Which lengths to cut, how exact they must be, and everything for the workbench.
A leg of the plan marked "owned": true is kept in every set.

  --most N         most legs to cut, 0 to 4 [3]
  --for WHAT       what the set should be best at: "season total" or "worst month" [season total]
  --set N          make the sheet, the pieces, the gauge and the map's steps for the best set of N legs
                   [the plan's own legs; without any, the best set]

Files, each only when asked for
  --csv FILE       the best sets, one row a leg
  --settings FILE  the plan's legs: both readings, yields, tolerance, stowing, wind
  --tolerance FILE what 1 mm, 1 degree and a wrong bearing cost, by month
  --bands FILE     tilts within 1 % and 3 % of the best, by month
  --rules FILE     rules of thumb against the computed best
  --pieces FILE    pieces to saw
  --sheet FILE     the cutting sheet, a page to print (HTML)
  --gauge FILE     a tilt gauge to print at true size (SVG)
  --map FILE       the tilt-by-date map (SVG); --map-csv FILE its numbers
  --json           the whole answer as JSON on standard output
  --from --to --step   as in season
  --force          replace files that are there already

Examples
  panel-season legs
  panel-season legs my-plan.json --most 2 --set 2 --sheet sheet.html --gauge gauge.svg
  panel-season legs my-plan.json --for "worst month" --csv sets.csv
`;

const objectiveOf = (words: VerbWords): LegObjective => {
  const text = textOption(words, "for") ?? LEG_OBJECTIVES[0];
  const found = LEG_OBJECTIVES.find((objective) => objective === text);
  if (!found) throw new UsageError(`--for ${text}: must be one of: ${LEG_OBJECTIVES.join(", ")}`);
  return found;
};

const filesAsked = async (
  words: VerbWords,
  season: StandSeason,
  answer: LegsAnswer,
  legs: readonly NamedLeg[],
): Promise<readonly WholeFile[]> => {
  const { plan } = season;
  const provenance = { plan, models: modelWords(plan), version: await version() };
  const asked = (name: string) => textOption(words, name);
  const files: WholeFile[] = [
    ...tableFiles(asked("csv"), legSetsTable(answer), provenance),
    ...tableFiles(asked("settings"), legsTable(plan, answer.settings), provenance),
    ...tableFiles(asked("tolerance"), toleranceTable(answer.settings), provenance),
    ...tableFiles(asked("bands"), bandsTable(answer.bands), provenance),
    ...tableFiles(
      asked("map-csv"),
      tiltMapTable(() => answer.ladder),
      provenance,
    ),
    ...tableFiles(asked("rules"), rulesTable(answer.rules), provenance),
  ];
  const [pieces, sheet, gauge, map] = ["pieces", "sheet", "gauge", "map"].map(asked);
  if (pieces !== undefined) {
    const cut = cuttingSheet(plan.stand, standPanels(plan).shortestMm, legs);
    files.push(...tableFiles(pieces, piecesTable(cut), provenance));
  }
  if (sheet !== undefined)
    files.push({ path: sheet, content: cuttingSheetPage(chartDocument(), plan, legs) });
  if (gauge !== undefined) {
    files.push({ path: gauge, content: `${tiltGauge(chartDocument(), legs).outerHTML}\n` });
  }
  if (map !== undefined) {
    const settings = legsAsSettings(plan, legs);
    const { calendar } = swapsAnswer(season, {}, settings);
    const inUse = tiltsInUse(
      calendar,
      settings.map(({ tiltDeg }) => tiltDeg),
    );
    files.push({
      path: map,
      content: svgFile(tiltMapChart(answer.ladder, inUse, { document: chartDocument(), width: 960 })),
    });
  }
  return files;
};

const jsonOf = (
  plan: Plan,
  answer: LegsAnswer,
  legs: readonly NamedLeg[],
  notes: readonly string[],
): string =>
  JSON.stringify({
    plan,
    notes,
    models: modelWords(plan),
    objective: answer.objective,
    sets: answer.sets.map(({ legs: cut, totalWh, scoreWh, addsWh }) => ({
      legs: cut.map(({ legMm, tiltDeg }) => ({ legMm, tiltDeg })),
      totalWh,
      scoreWh,
      addsWh,
    })),
    settings: answer.settings.map(({ setting, totalWh, tolerance }) => ({ ...setting, totalWh, tolerance })),
    bands: answer.bands,
    rules: answer.rules,
    sheet: cuttingSheet(plan.stand, standPanels(plan).shortestMm, legs),
  });

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const planFile = await readPlanFile(words.positionals[0]);
  const plan = planWithOptions(planFile.plan, words);
  const most = numberOption(words, "most", [0, MOST_LEGS], "legs") ?? 3;
  const size = numberOption(words, "set", [1, MOST_LEGS], "legs");
  const { skies, notes } = await planSkies(plan, planFile.folder);
  const season = standSeason(plan, skies, panelUnits(plan.panels));
  const answer = legsAnswer(season, { most: Math.max(most, size ?? 0), objective: objectiveOf(words) });
  const legs = chosenLegs(plan, answer.sets, size);
  const files = await filesAsked(words, season, answer, legs);
  await writeWholeFiles(files, { force: switchedOn(words, "force") });

  if (switchedOn(words, "json")) {
    voice.say(jsonOf(plan, answer, legs, notes));
    return;
  }
  voice.say(
    [
      `${plan.name}${planFile.isDemo ? " (the demo plan)" : ""}`,
      "",
      ...legsSummary(answer),
      ...notes,
      "",
      `Before cutting: ${CUTTING_CAUTION}`,
      `Wind: ${WIND_CAUTION}`,
    ].join("\n"),
  );
  for (const { path } of files) voice.remark(`wrote ${path}\n`);
};

const text = { type: "string" } as const;

export const legsVerb: Verb = {
  name: "legs",
  says: "which legs to cut, how exact they must be, and the cutting sheet",
  help,
  options: {
    ...PLAN_OPTIONS,
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
    json: { type: "boolean" },
    force: { type: "boolean" },
  },
  mostWords: 1,
  run,
};
