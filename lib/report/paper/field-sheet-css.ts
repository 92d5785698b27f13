/** Papers the field sheet fits on, each on one page. */
export const PAPERS = ["A4", "Letter"] as const;

export type Paper = (typeof PAPERS)[number];

/** Black on white, whatever the reader's screen is set to: it is made for paper, and a copier. */
export const FIELD_SHEET_CSS = `
.field-sheet { font: 9.6pt/1.34 system-ui, -apple-system, "Segoe UI", "Noto Sans", "Open Sans", sans-serif; color: #000; background: #fff; box-sizing: border-box; width: 100%; max-width: 186mm; margin: 0 auto; padding: 1mm }
.field-sheet h1, .field-sheet h2, .field-sheet .big { font-family: Bahnschrift, "DIN Alternate", "Franklin Gothic Medium", "Nimbus Sans Narrow", "Arial Narrow", sans-serif-condensed, sans-serif; font-weight: 700; line-height: 1.1 }
.field-sheet h1 { font-size: 19pt; margin: 0; max-width: none; letter-spacing: 0 }
.field-sheet h2 { font-size: 11.5pt; margin: 0 0 1.2mm; padding-top: 1mm; border-top: 0.7mm solid #000 }
.field-sheet p { margin: 0 0 1.2mm; max-width: none }
.field-sheet header { margin-bottom: 3mm }
.field-sheet section { margin-bottom: 2.6mm; break-inside: avoid }
.field-sheet .columns { display: grid; grid-template-columns: 1fr 1fr; gap: 0 7mm; align-items: start }
.field-sheet .big { font-size: 21pt; margin: 0 0 1mm }
.field-sheet table { border-collapse: collapse; width: 100%; font-size: 9pt; font-variant-numeric: tabular-nums }
.field-sheet th, .field-sheet td { text-align: left; padding: 0.5mm 2mm 0.5mm 0; border-bottom: 0.2mm solid #999; vertical-align: baseline; white-space: normal; background: none; color: #000 }
.field-sheet th { font-weight: 600; font-size: 8.4pt }
.field-sheet .number { text-align: right }
.field-sheet ol, .field-sheet ul { margin: 0; padding-left: 4.6mm; max-width: none }
.field-sheet li { margin-bottom: 0.7mm }
.field-sheet svg { display: block; width: 100%; height: auto; margin: 0 0 1.2mm }
.field-sheet td svg { width: 9mm; margin: 0 }
.field-sheet td.middle { vertical-align: middle; width: 1% }
.field-sheet .mark { display: inline-block; min-width: 4.6mm; text-align: center; border: 0.3mm solid #000; border-radius: 50%; font-weight: 700; line-height: 4.4mm }
.field-sheet .danger { border: 1.5px solid currentColor; font-weight: 700; margin: 0 0 1.5mm; padding: 1mm 2mm }
.field-sheet .care { font-size: 7.9pt; line-height: 1.25; margin: 0 }
.field-sheet .care ul { columns: 2; column-gap: 7mm }
.field-sheet .care li { break-inside: avoid; margin-bottom: 0.5mm }
.field-sheet .small { font-size: 8.3pt }
.field-sheet footer { font-size: 7pt; line-height: 1.2; border-top: 0.2mm solid #999; padding-top: 1mm }
.field-sheet footer p { margin: 0 0 0.6mm }
.field-sheet.crowded { zoom: 0.75; max-width: 247mm }
@media screen and (max-width: 640px) { .field-sheet .columns { grid-template-columns: 1fr } .field-sheet .care ul { columns: 1 } .field-sheet { padding: 4mm } .field-sheet > section svg { overflow: visible; margin-bottom: 3mm } .field-sheet > section svg text { font-size: 25px } .field-sheet > section svg text:not([font-weight]) { transform: translateY(10px) } }
`;

/** The page around it when it is a document of its own. */
export const paperCss = (paper: Paper): string =>
  `@page { size: ${paper} portrait; margin: 11mm 12mm }\nhtml { background: #fff } body { margin: 0 }\n`;
