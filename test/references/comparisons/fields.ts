import { inputsOf, type ReferenceRow } from "../read.ts";

/** A number from a field of a row; throws when it is none, so that no case passes on NaN. */
export const numberOf = (record: Readonly<Record<string, string>>, field: string): number => {
  const text = record[field];
  const value = Number(text);
  if (text === undefined || text.trim() === "" || !Number.isFinite(value)) {
    throw new Error(`no number in field ${field} of ${JSON.stringify(record)}`);
  }
  return value;
};

/** A reader of the numbers in a row's `inputs`. */
export const inputReader = (row: ReferenceRow): ((name: string) => number) => {
  const inputs = inputsOf(row);
  return (name) => numberOf(inputs, name);
};

/** What a row is called. */
export const idOf = (row: ReferenceRow): string => row.case_id ?? "?";
