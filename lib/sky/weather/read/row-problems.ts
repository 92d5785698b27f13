/**
 * Complaints about the rows of a file. Neighbouring rows with the same fault make one complaint, so that a column in the
 * wrong unit reads as one line and not as eight thousand.
 */
import type { Problem } from "../../../units/problem.ts";

/** One kind of fault: the same kind in the next row joins the complaint before it. */
export interface RowFault {
  readonly column: string;
  readonly allowed: string;
  /** What makes two faults of a column the same, where the wording of `allowed` differs from row to row. */
  readonly kind?: string;
  readonly hint?: string;
}

interface Run {
  readonly fault: RowFault;
  readonly first: number;
  last: number;
  readonly value: unknown;
}

/** Gathers faults by row (1 is the header row, as a spreadsheet counts). */
export class RowProblems {
  readonly #file: string;
  readonly #runs: Run[] = [];
  readonly #open = new Map<string, Run>();

  constructor(file: string) {
    this.#file = file;
  }

  /** Notes a fault. Rows of one column must come in rising order for runs to join. */
  add(row: number, value: unknown, fault: RowFault): void {
    const kind = `${fault.column}\n${fault.kind ?? fault.allowed}`;
    const open = this.#open.get(kind);
    if (open !== undefined && open.last === row - 1) {
      open.last = row;
      return;
    }
    const run = { fault, first: row, last: row, value };
    this.#runs.push(run);
    this.#open.set(kind, run);
  }

  /** Every complaint, in the order of the rows. */
  problems(): readonly Problem[] {
    return this.#runs
      .toSorted((a, b) => a.first - b.first)
      .map(({ fault, first, last, value }) => {
        const rows = first === last ? `row ${first}` : `rows ${first}-${last}`;
        return {
          path: `${this.#file} ${rows}${fault.column === "" ? "" : ` ${fault.column}`}`,
          value,
          allowed: fault.allowed,
          ...(fault.hint === undefined ? {} : { hint: fault.hint }),
        };
      });
  }
}
