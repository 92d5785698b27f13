import type { Plan } from "../../plan/plan.ts";
import { svgFile } from "../../report/chart/svg-file.ts";
import { tiltMapChart, tiltsInUse } from "../../report/chart/tilt-map-chart.ts";
import { cuttingSheetPage } from "../../report/paper/cutting-sheet-page.ts";
import { tiltGauge } from "../../report/paper/tilt-gauge.ts";
import { legSetsTable } from "../../report/table/leg-sets-table.ts";
import { legsTable } from "../../report/table/legs-table.ts";
import { piecesTable } from "../../report/table/pieces-table.ts";
import { rulesTable } from "../../report/table/rules-table.ts";
import { tiltMapTable } from "../../report/table/tilt-map-table.ts";
import { bandsTable, toleranceTable } from "../../report/table/tolerance-table.ts";
import { modelWords } from "../../report/words/model-words.ts";
import { legsAsSettings } from "../../season/legs/chosen-legs.ts";
import type { LegsAnswer } from "../../season/legs/legs-answer.ts";
import type { StandSeason } from "../../season/legs/stand-season.ts";
import { swapsAnswer } from "../../season/legs/swaps-answer.ts";
import { cuttingSheet } from "../../stand/cutting-sheet.ts";
import type { NamedLeg } from "../../stand/settings.ts";
import { standPanels } from "../../stand/stand-panel.ts";
import { chartDocument } from "../chart-document.ts";
import { tableFiles } from "../table-files.ts";
import { textOption, type VerbWords } from "../verb.ts";
import { version } from "../version.ts";
import type { WholeFile } from "../write-file.ts";

/** The files that the options of `legs` ask for. */
export const legsFiles = async (
  words: VerbWords,
  season: StandSeason,
  answer: LegsAnswer,
  legs: readonly NamedLeg[],
  notes: readonly string[],
): Promise<readonly WholeFile[]> => {
  const { plan } = season;
  const provenance = { plan, models: modelWords(plan), notes, version: await version() };
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
    files.push({ path: gauge, content: svgFile(tiltGauge(chartDocument(), legs), "light") });
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

/** The whole answer about legs, for programs. */
export const legsJson = (
  plan: Plan,
  answer: LegsAnswer,
  legs: readonly NamedLeg[],
  notes: readonly string[],
): unknown => ({
  plan,
  notes,
  models: modelWords(plan),
  objective: answer.objective,
  sets: answer.sets.map(({ legs: cut, totalWh, scoreWh, addsWh, shortDays }) => ({
    legs: cut.map(({ legMm, tiltDeg }) => ({ legMm, tiltDeg })),
    totalWh,
    scoreWh,
    addsWh,
    shortDays,
  })),
  settings: answer.settings.map(({ setting, totalWh, tolerance }) => ({ ...setting, totalWh, tolerance })),
  bands: answer.bands,
  rules: answer.rules,
  sheet: cuttingSheet(plan.stand, standPanels(plan).shortestMm, legs),
});
