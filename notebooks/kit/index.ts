/** What notebooks share: the plan panel, figures and tables, and the skies of a plan. */
export { aimCards } from "./aim-cards.ts";
export { answerOf } from "./answer.ts";
export { checksRun } from "./checks/checks.ts";
export { choice } from "./choice.ts";
export { dataTable } from "./data-table.ts";
export { dayPicker } from "./day-picker.ts";
export { el, saySo, type ViewOf, viewOf } from "./dom.ts";
export { figure } from "./figure.ts";
export { keptChoice } from "./kept-choice.ts";
export { modelList } from "./model-list.ts";
export { pair, pairWidth } from "./pair.ts";
export { panelsOf } from "./panels.ts";
export { planPanel, type Setup } from "./plan/panel.ts";
export { printable } from "./printable.ts";
export { provenanceOf } from "./provenance.ts";
export { saveText } from "./save.ts";
export { planSkiesOf, skiesOf, skyNotesOf } from "./skies.ts";
export { lengthText, temperatureText, type Units } from "./units.ts";
