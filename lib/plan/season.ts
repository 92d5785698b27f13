import { z } from "zod";
import { DAY_MS } from "../units/time.ts";
import { civilDate } from "./field.ts";

/** Steps that divide an hour, so that no step lies across two weather intervals. */
export const STEP_MINUTES = [1, 2, 3, 5, 6, 10, 15, 20, 30, 60] as const;

const LONGEST_DAYS = 366;

/** Days in a season, both ends counted. */
const daysOf = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / DAY_MS + 1;

/** The rules on both dates are applied as soon as both are dates, whatever else is wrong. */
const bothDates = (payload: { readonly value: unknown }): boolean =>
  z.looseObject({ from: civilDate, to: civilDate }).safeParse(payload.value).success;

/** The days asked about, and how finely each is stepped through. A season may wrap the new year. */
export const seasonSchema = z
  .strictObject({
    from: civilDate,
    to: civilDate,
    stepMinutes: z
      .literal([...STEP_MINUTES])
      .meta({ unit: "minutes" })
      .default(10),
  })
  .refine(({ from, to }) => from <= to, {
    path: ["to"],
    message: "must not come before season.from",
    params: { hint: "a season over the new year ends in the next year" },
    when: bothDates,
  })
  .refine(({ from, to }) => daysOf(from, to) <= LONGEST_DAYS, {
    path: ["to"],
    message: `must make a season of at most ${LONGEST_DAYS} days, both ends counted`,
    when: bothDates,
  });

export type Season = z.output<typeof seasonSchema>;
