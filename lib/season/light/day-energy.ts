import { panelPower } from "../../panel/panel-power.ts";
import { CLEAN_GLASS_ANGULAR_LOSS, martinRuizGlass } from "../../plane/glass.ts";
import { emptyPlaneColumns, planeColumns } from "../../plane/plane-columns.ts";
import type { SunColumns } from "../../sun/columns.ts";
import type { Aim } from "../../units/angle.ts";
import type { PanelUnit } from "./panel-unit.ts";
import type { ReadySky } from "./skies.ts";

/** Adds up watts into watt-hours of each day: `out[day] += W x hours` over the day's rows. */
export const addDayEnergies = (
  sun: SunColumns,
  watts: Float64Array,
  times: number,
  out: Float64Array,
): void => {
  const { hours } = sun;
  sun.days.forEach(({ first, end }, day) => {
    let sum = 0;
    for (let row = first; row < end; row += 1) sum += watts[row] * hours[row];
    out[day] += sum * times;
  });
};

/**
 * What panels bring in on each day of a season, at an aim and under a sky.
 *
 * @returns Wh for each day, added to what `out` holds
 */
export type DayEnergies = (sky: ReadySky, unit: PanelUnit, aim: Aim, out: Float64Array) => Float64Array;

/**
 * Makes the function that adds up a season's days. It keeps its own work columns, so that a loop over aims
 * allocates nothing; give each concurrent user one of its own.
 */
export const dayEnergiesOver = (sun: SunColumns): DayEnergies => {
  const glass = martinRuizGlass(CLEAN_GLASS_ANGULAR_LOSS);
  const light = emptyPlaneColumns(sun.length);
  const watts = new Float64Array(sun.length);
  return ({ sky, dome }, unit, aim, out) => {
    planeColumns(sun, dome, aim, glass, light);
    panelPower(unit.model, light, sky, watts);
    addDayEnergies(sun, watts, unit.howMany, out);
    return out;
  };
};
