import { DAY_MINUTES, MINUTE_MS } from "../units/time.ts";
import type { SunColumns } from "./columns.ts";
import { LAG_STEPS } from "./sun-columns.ts";

/** The whole solar days of a season in even steps, night and day; they begin where the sun columns' own steps do. */
export interface WholeDays {
  /** Beginning of each day's first step, UTC milliseconds. */
  readonly startsMs: readonly number[];
  readonly stepMinutes: number;
  readonly perDay: number;
  /** Steps from the beginning of a day's first one to its solar noon. */
  readonly noonStep: number;
}

/** Cuts a season's solar days into whole days of even steps. */
export const wholeDays = ({ days, stepMinutes }: Pick<SunColumns, "days" | "stepMinutes">): WholeDays => {
  const perDay = DAY_MINUTES / stepMinutes;
  return {
    startsMs: days.map(({ startMs }) => startMs + LAG_STEPS * stepMinutes * MINUTE_MS),
    stepMinutes,
    perDay,
    noonStep: perDay / 2 - LAG_STEPS,
  };
};
