import { z } from "zod";
import { millimetresOf } from "../units/length.ts";

/**
 * The kinds of field a plan is made of. Every field says its range, its unit and, where people slip, a hint;
 * the complaint is worded from these (see `issues.ts`), and the same words feed the notebooks' forms.
 */
export interface FieldNotes {
  /** Unit as a person says it: `degrees`, `mm`, `W`. */
  readonly unit?: string;
  /** What would mend the usual slip. */
  readonly hint?: string;
  /** One line for forms and help. */
  readonly says?: string;
}

declare module "zod" {
  interface GlobalMeta extends FieldNotes {}
}

/** A finite number in a closed range, in the unit named. */
export const quantity = (least: number, most: number, notes: FieldNotes) =>
  z
    .number()
    .min(least)
    .max(most)
    .meta({ ...notes });

/** A whole number in a closed range. */
export const count = (least: number, most: number, notes: FieldNotes) =>
  z
    .int()
    .min(least)
    .max(most)
    .meta({ ...notes });

/** A length: a number is millimetres; text carries its unit (`"21.5 in"`, `"540 mm"`). Millimetres out. */
export const lengthMm = (leastMm: number, mostMm: number, notes: FieldNotes = {}) =>
  z
    .preprocess(
      (value) => (typeof value === "string" ? (millimetresOf(value) ?? value) : value),
      z.number().min(leastMm).max(mostMm),
    )
    .meta({
      unit: "mm",
      hint: 'a bare number is millimetres; inches are text with a unit, "21.5 in"',
      ...notes,
    });

/** A short name shown to people: 1 to 60 characters on one line. */
export const shortName = z
  .string()
  .trim()
  .min(1)
  .max(60)
  .regex(/^[^\p{Cc}]*$/u, "must be one line of plain text")
  .meta({ unit: "characters" });

/** A civil date, ISO 8601 (`2027-04-01`), from 1950 to 2100: the sun series and its time scale are checked there. */
export const civilDate = z.iso
  .date({ abort: true })
  .refine(
    (date) => date >= "1950-01-01" && date <= "2100-12-31",
    "must be a date from 1950-01-01 to 2100-12-31",
  )
  .meta({ hint: 'written as "2027-04-01"' });

/** Twelve numbers, January first. */
export const monthly = (least: number, most: number, notes: FieldNotes) =>
  z
    .array(quantity(least, most, notes))
    .length(12)
    .meta({ ...notes, hint: notes.hint ?? "twelve numbers, January first" });
