import type { Plan } from "../../../lib/plan/plan.ts";
import type { ClimateTable } from "../../../lib/sky/climate/table/climate-table.ts";
import type { JobName } from "./jobs.ts";

/** What the page asks of the worker: all that the job needs, since a worker can't see what the browser keeps. */
export interface Request {
  readonly job: JobName;
  readonly plan: Plan;
  readonly options: unknown;
  readonly weatherCsv: string | null;
  readonly climates: ClimateTable;
}

/** What the worker tells the page. */
export type Reply =
  | { readonly kind: "progress"; readonly share: number }
  | { readonly kind: "answer"; readonly answer: unknown }
  | { readonly kind: "failure"; readonly message: string };
