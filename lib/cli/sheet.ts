import { planRemarks } from "../circuit/checks.ts";
import { PAPERS, type Paper } from "../report/paper/field-sheet-css.ts";
import { fieldSheetPage } from "../report/paper/field-sheet-page.ts";
import { dangerWords } from "../report/words/circuit-cautions.ts";
import { shortCredit } from "../report/words/credits.ts";
import { fieldSheetWords } from "../report/words/field-sheet-words.ts";
import { modelWords } from "../report/words/model-words.ts";
import { panelUnits } from "../season/light/panel-unit.ts";
import { type FieldSheet, fieldSheet } from "../season/sheet/field-sheet.ts";
import { chartDocument } from "./chart-document.ts";
import { DELIVERY_OPTIONS, deliver } from "./deliver.ts";
import { planHeading, readPlanFile } from "./plan-file.ts";
import { PLAN_OPTIONS, planWithOptions } from "./plan-options.ts";
import { planSkies } from "./plan-skies.ts";
import { printPdf } from "./print-pdf.ts";
import { progressLine } from "./progress.ts";
import { shippedSidecars } from "./sidecars.ts";
import {
  switchedOn,
  textOption,
  UsageError,
  type Verb,
  type VerbWords,
  type Voice,
  wholeOption,
} from "./verb.ts";
import type { WholeFile } from "./write-file.ts";

const help = `
  panel-season sheet [PLAN] [options]

The field sheet: one page to take along, black on white. Legs to cut, which leg when, where to face
and when to turn, what to expect month by month, wiring order and cautions.

  --html FILE      the page, whole in itself [field-sheet.html when no other form is asked for]
  --pdf FILE       the page as PDF, printed by an installed Chromium, Chrome or Edge
  --paper SIZE     A4 or Letter [A4]
  --aims N         aims a day to spell out, 1 (no turning) to 4 [2]
  --json           what the sheet says as JSON on standard output
  --from --to --step --climate   as in season
  --force          replace files that are there already

Examples
  panel-season sheet                                    the demo plan
  panel-season sheet my-plan.json --pdf sheet.pdf --paper Letter
`;

const paperOf = (words: VerbWords): Paper => {
  const text = textOption(words, "paper") ?? PAPERS[0];
  const found = PAPERS.find((paper) => paper.toLowerCase() === text.toLowerCase());
  if (found === undefined) throw new UsageError(`--paper ${text}: must be one of: ${PAPERS.join(", ")}`);
  return found;
};

/** The sheet for programs: the turning as a card to follow, and the season's days left out. */
const toldSheet = ({ days, turning, ...sheet }: FieldSheet) => {
  const words = fieldSheetWords({ days, turning, ...sheet });
  return {
    ...sheet,
    ...words,
    lastDate: days[days.length - 1].date,
    turning: turning && { lines: words.turning, dayWh: turning.dayWh, pays: turning.pays },
  };
};

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const paper = paperOf(words);
  const aims = wholeOption(words, "aims", [1, 4], "aims a day") ?? 2;
  const planFile = await readPlanFile(words.positionals[0]);
  const plan = planWithOptions(planFile.plan, words);
  const { skies, notes } = await planSkies(plan, planFile.folder);
  const progress = progressLine("trying aims", voice);
  const sheet = fieldSheet(plan, skies, panelUnits(plan.panels), aims, progress.at);
  progress.end();
  const foot = [...notes, shortCredit(await shippedSidecars())];
  const page = fieldSheetPage(chartDocument(), sheet, paper, foot);
  const pdfFile = textOption(words, "pdf");
  const unnamed = pdfFile === undefined && !switchedOn(words, "json") ? "field-sheet.html" : undefined;
  const htmlFile = textOption(words, "html") ?? unnamed;
  const files: WholeFile[] = [
    ...(htmlFile === undefined ? [] : [{ path: htmlFile, content: page }]),
    ...(pdfFile === undefined ? [] : [{ path: pdfFile, content: await printPdf(page) }]),
  ];
  await deliver(
    {
      heading: planHeading(planFile),
      files,
      json: () => ({ ...toldSheet(sheet), remarks: planRemarks(plan), notes, models: modelWords(plan) }),
      lines: [
        `Field sheet for ${paper} paper: legs, which leg when, where to face, what to expect, wiring and cautions.`,
        ...dangerWords(planRemarks(plan)),
        ...notes,
      ],
    },
    words,
    voice,
  );
};

export const sheetVerb: Verb = {
  name: "sheet",
  says: "the field sheet: one page to print and take along",
  help,
  options: {
    ...PLAN_OPTIONS,
    ...DELIVERY_OPTIONS,
    html: { type: "string" },
    pdf: { type: "string" },
    paper: { type: "string" },
    aims: { type: "string" },
  },
  mostWords: 1,
  run,
};
