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

/**
 * One unit of the last digit that a number was printed with. @example lastDigit("2.49491e-10") // 1e-15
 * Half of it is what rounding leaves; the other half is for what the source rounded on its way.
 */
export const lastDigit = (text: string): number => {
  const [mantissa = "", exponent = "0"] = text.trim().toLowerCase().split("e");
  return 10 ** (Number(exponent) - (mantissa.split(".")[1] ?? "").length);
};

/** The last digit of a column: some of its numbers lost their closing zeros. */
export const lastDigitOf = (rows: readonly ReferenceRow[]): number =>
  Math.min(...rows.map((row) => lastDigit(row.expected ?? "")));

/** What a row is called. */
export const idOf = (row: ReferenceRow): string => row.case_id ?? "?";
