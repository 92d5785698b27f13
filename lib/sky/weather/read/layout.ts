/**
 * The header row of a weather file: which column is which, and what is wrong with it as a whole.
 */
import { PlanError, type Problem } from "../../../units/problem.ts";
import {
  type ColumnMeaning,
  meaningOf,
  QUANTITIES,
  type Quantity,
  SUGGESTED,
  unitBehind,
} from "./headers.ts";

/** Header of each quantity, for files whose names are not ours. */
export type ColumnNames = { readonly [Name in Quantity]?: string | undefined };

/** What each column holds; `null` for those left aside. */
export interface Layout {
  readonly meanings: readonly (ColumnMeaning | null)[];
  readonly ignored: readonly string[];
}

const problem = (file: string, value: string, allowed: string, hint?: string): Problem => ({
  path: `${file} row 1`,
  value,
  allowed,
  ...(hint === undefined ? {} : { hint }),
});

/**
 * Reads a header row.
 *
 * @param named headers to use instead of the known names
 * @throws PlanError when a named header is not there, there is no column of stamps, or a quantity stands twice
 */
export const layoutOf = (headers: readonly string[], file: string, named: ColumnNames = {}): Layout => {
  const problems: Problem[] = [];
  const stated = new Map<string, Quantity>();
  for (const quantity of QUANTITIES) {
    const header = named[quantity];
    if (header === undefined) continue;
    stated.set(header, quantity);
    if (!headers.includes(header)) {
      problems.push(problem(file, header, `must be one of the file's columns: ${headers.join(", ")}`));
    }
  }
  const meanings = headers.map((header): ColumnMeaning | null => {
    const quantity = stated.get(header);
    if (quantity !== undefined) return { quantity, unit: unitBehind(header, quantity) };
    const meaning = meaningOf(header);
    return meaning !== null && named[meaning.quantity] !== undefined ? null : meaning;
  });
  const firstOf = (quantity: Quantity) => meanings.findIndex((meaning) => meaning?.quantity === quantity);
  if (problems.length === 0 && firstOf("time") < 0 && firstOf("date") < 0) {
    problems.push(
      problem(
        file,
        headers.join(", "),
        "must have a column of time stamps",
        `name it ${SUGGESTED.time}, or ${SUGGESTED.date} for sums of whole days`,
      ),
    );
  }
  meanings.forEach((meaning, index) => {
    if (meaning !== null && firstOf(meaning.quantity) !== index) {
      problems.push(
        problem(
          file,
          headers[index] ?? "",
          "must be the only column of its kind",
          "rename or remove the one that is not wanted",
        ),
      );
    }
  });
  if (problems.length > 0) throw new PlanError(problems);
  return { meanings, ignored: headers.filter((_, index) => meanings[index] === null) };
};
