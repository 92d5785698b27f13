import { panelPower } from "../../panel/panel-power.ts";
import type { DomeColumns } from "../../plane/dome-columns.ts";
import { CLEAN_GLASS_ANGULAR_LOSS, martinRuizGlass } from "../../plane/glass.ts";
import { emptyPlaneColumns, planeColumns } from "../../plane/plane-columns.ts";
import type { SkyColumns } from "../../sky/columns.ts";
import type { SeasonDay, SunColumns } from "../../sun/columns.ts";
import type { Aim } from "../../units/angle.ts";
import type { PanelUnit } from "./panel-unit.ts";
import type { Setting } from "./settings.ts";
import type { ReadySky, SeasonSkies } from "./skies.ts";

/** One setting through one day, a value for each step with the sun up. */
export interface DayCurve {
  readonly setting: Setting;
  /** All panels together, W. */
  readonly watts: Float64Array;
  /** Plane irradiance at the setting's aim, before the glass, W/m2. */
  readonly planeWm2: Float64Array;
}

/** Every setting through one day. */
export interface DayCurves {
  readonly day: SeasonDay;
  /** Middles of the steps, UTC milliseconds; empty in polar night. */
  readonly timeMs: Float64Array;
  readonly curves: readonly DayCurve[];
}

/** The same columns, of one day only: views into them, nothing is copied. */
const sunOfDay = (sun: SunColumns, { first, end }: SeasonDay): SunColumns => ({
  ...sun,
  length: end - first,
  timeMs: sun.timeMs.subarray(first, end),
  hours: sun.hours.subarray(first, end),
  east: sun.east.subarray(first, end),
  north: sun.north.subarray(first, end),
  up: sun.up.subarray(first, end),
  day: sun.day.subarray(first, end),
});

const skyOfDay = (sky: SkyColumns, { first, end }: SeasonDay): SkyColumns => ({
  length: end - first,
  beamNormal: sky.beamNormal.subarray(first, end),
  diffuse: sky.diffuse.subarray(first, end),
  global: sky.global.subarray(first, end),
  extraterrestrial: sky.extraterrestrial.subarray(first, end),
  airMass: sky.airMass.subarray(first, end),
  albedo: sky.albedo.subarray(first, end),
  airC: sky.airC.subarray(first, end),
  windMs: sky.windMs.subarray(first, end),
});

const domeOfDay = (dome: DomeColumns, { first, end }: SeasonDay): DomeColumns => ({
  ...dome,
  length: end - first,
  beam: dome.beam.subarray(first, end),
  circumsolar: dome.circumsolar.subarray(first, end),
  dome: dome.dome.subarray(first, end),
  horizon: dome.horizon.subarray(first, end),
  ground: dome.ground.subarray(first, end),
});

/**
 * Watts and plane irradiance through one day for each setting, under the clear sky or as expected (the mean over
 * the expected skies, by their shares).
 *
 * @param dayIndex which of the season's days, from 0
 * @throws RangeError when there is no such day, or nothing but the clear sky is known and more is asked for
 */
export const dayCurves = (
  { sun, clear, expected }: SeasonSkies,
  units: readonly PanelUnit[],
  settings: readonly Setting[],
  dayIndex: number,
  under: "clear" | "expected",
): DayCurves => {
  const day = sun.days[dayIndex];
  if (day === undefined) {
    throw new RangeError(`dayCurves: expected a day 0 to ${sun.days.length - 1}, received ${dayIndex}`);
  }
  const skies = under === "clear" ? [clear] : expected;
  if (skies.length === 0) throw new RangeError("dayCurves: expected a sky with cloud in it, received none");
  const ownSun = sunOfDay(sun, day);
  const { length } = ownSun;
  const glass = martinRuizGlass(CLEAN_GLASS_ANGULAR_LOSS);
  const light = emptyPlaneColumns(length);
  const power = new Float64Array(length);
  const share = new Map<ReadySky, { readonly sky: SkyColumns; readonly dome: DomeColumns }>(
    skies.map((ready) => [ready, { sky: skyOfDay(ready.sky, day), dome: domeOfDay(ready.dome, day) }]),
  );
  const addPower = (
    weight: number,
    sky: SkyColumns,
    dome: DomeColumns,
    unit: PanelUnit,
    aim: Aim,
    out: Float64Array,
  ) => {
    planeColumns(ownSun, dome, aim, glass, light);
    panelPower(unit.model, light, sky, power);
    for (let row = 0; row < length; row += 1) out[row] += weight * unit.howMany * power[row];
  };
  const curves = settings.map((setting): DayCurve => {
    const watts = new Float64Array(length);
    const planeWm2 = new Float64Array(length);
    for (const [{ weight }, { sky, dome }] of share) {
      planeColumns(ownSun, dome, setting, glass, light);
      for (let row = 0; row < length; row += 1) planeWm2[row] += weight * light.plane[row];
      for (const unit of units) addPower(weight, sky, dome, unit, unit.fixedAim ?? setting, watts);
    }
    return { setting, watts, planeWm2 };
  });
  return { day, timeMs: ownSun.timeMs, curves };
};
