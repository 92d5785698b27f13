/** What the library's own checks came to, for the page that shows them. */
export { allowanceChart } from "./allowance-chart.ts";
export { casesChart } from "./cases-chart.ts";
export { checksRun } from "./checks-run.ts";
export { casesTable, comparisonsTable, measuredTable } from "./checks-tables.ts";
export { measuredDaysChart } from "./measured-days-chart.ts";
export { modelErrorsChart } from "./model-errors-chart.ts";
export { checksHeadline } from "./outcomes.ts";
