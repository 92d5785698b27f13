import { celsius, fahrenheit, lengthText, typedLengthMm, type Units } from "../units.ts";

/** A number as typed, with a comma or a point; text that is none is kept, for the library to refuse. */
export const asNumber = (text: string): unknown => {
  const bare = text.trim().replace(",", ".").replace("\u2212", "-");
  if (bare === "") return undefined;
  const value = Number(bare);
  return Number.isNaN(value) ? text : value;
};

/** A number by itself, decimals with a point or a comma. */
const NUMBER = /^[-+\u2212]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;

/** Text without the field's own unit behind a number, as people write it: "100 W", "57.5°". Other units stay, to be refused. */
export const withoutUnit = (text: string, unit: string): string => {
  const bare = text.trim();
  const number = bare.slice(0, -unit.length).trim();
  const isThere = unit !== "" && bare.toLowerCase().endsWith(unit.toLowerCase());
  return isThere && NUMBER.test(number) ? number : text;
};

const asText = (value: unknown): string => (value === undefined || value === null ? "" : String(value));

/** Numbers are shown as far as they were stated, and never with the tail of a binary fraction. */
const asShown = (value: unknown): string =>
  typeof value === "number" ? String(Number(value.toPrecision(8))) : asText(value);

/** How typed text becomes the plan's value, and back. */
export interface Reading {
  readonly read: (text: string) => unknown;
  readonly write: (value: unknown) => string;
}

export const READINGS: Readonly<
  Record<"number" | "length" | "temperature" | "text" | "date", (units: () => Units) => Reading>
> = {
  number: () => ({ read: asNumber, write: asShown }),
  text: () => ({ read: (text) => text, write: asText }),
  date: () => ({ read: (text) => text, write: asText }),
  length: (units) => ({
    read: (text) => (text.trim() === "" ? undefined : (typedLengthMm(text, units()) ?? text)),
    write: (value) => {
      const lengthMm = typeof value === "string" ? typedLengthMm(value, "metric") : value;
      if (typeof lengthMm !== "number") return asText(value);
      return units() === "metric" ? asShown(lengthMm) : lengthText(lengthMm, "inch").replace(/ in$/, "");
    },
  }),
  temperature: (units) => ({
    read: (text) => {
      const value = asNumber(text);
      return typeof value === "number" && units() === "inch" ? celsius(value) : value;
    },
    write: (value) => asShown(typeof value === "number" && units() === "inch" ? fahrenheit(value) : value),
  }),
};

/**
 * The numbers in a piece of text that was copied from a table: a row or a column, parted by tabs, spaces, semicolons, line
 * ends or commas; a comma inside a number is its decimal point.
 */
export const numbersIn = (text: string): readonly number[] => {
  const parts = text.trim().split(/[\s;|]+/);
  // With no other mark between them, commas are what parts the numbers.
  const bare = parts.length > 1 ? parts.map((part) => part.replace(/,$/, "")) : text.split(",");
  return bare
    .map((part) => part.trim())
    .filter((part) => NUMBER.test(part))
    .map((part) => Number(part.replace(",", ".").replace("\u2212", "-")));
};
