/**
 * Interval files onto the rows of a season.
 */

import type { DiffuseSplit } from "../../../plan/sky.ts";
import type { SunColumns } from "../../../sun/columns.ts";
import { isoMinute } from "../../../units/dates.ts";
import { PlanError } from "../../../units/problem.ts";
import { HOUR_MS, MINUTE_MS } from "../../../units/time.ts";
import type { SkyColumns } from "../../columns.ts";
import { fileShift } from "../read/calendar.ts";
import type { IntervalSeries } from "../read/series.ts";
import { eachOverlap, type SeasonSlots, seasonSlots, slotSpan } from "./slots.ts";
import { SPLITS } from "./split.ts";

/** Index into the file for every slot with light; -1 where the slot has none. */
const fileIndices = (slots: SeasonSlots, series: IntervalSeries, yearsOn: number): Int32Array => {
  const endMs = series.startMs + series.length * series.intervalMinutes * MINUTE_MS;
  const shiftAt = fileShift(series.startMs, endMs, yearsOn);
  const index = new Int32Array(slots.length).fill(-1);
  const missing: number[] = [];
  for (let slot = 0; slot < slots.length; slot += 1) {
    if (slots.litMs[slot] === 0) continue;
    const middle = slots.startMs + (slot + 0.5) * slots.intervalMs;
    const shift = shiftAt(middle);
    if (Number.isNaN(shift)) missing.push(middle);
    else index[slot] = Math.floor((middle + shift - series.startMs) / slots.intervalMs);
  }
  if (missing.length > 0) {
    throw new PlanError([
      {
        path: "weather file",
        value: `no light for ${isoMinute(missing[0])} to ${isoMinute(missing[missing.length - 1])}`,
        allowed: `must hold every day of the season; it runs from ${isoMinute(series.startMs)} to ${isoMinute(endMs)}`,
        hint: "shorten the season, or take a file of a whole year",
      },
    ]);
  }
  return index;
};

/** Beam (normal) and diffuse of every slot, means over its lit part. */
const lightOfSlots = (slots: SeasonSlots, series: IntervalSeries, index: Int32Array, split: DiffuseSplit) => {
  const { length, global, sine, litMs, insideMs } = slots;
  for (let slot = 0; slot < length; slot += 1) {
    if (index[slot] >= 0) global[slot] = series.global[index[slot]] * (insideMs[slot] / litMs[slot]);
  }
  const shares = new Float64Array(length);
  SPLITS[split](slots, shares);
  const beamNormal = new Float64Array(length);
  const diffuse = new Float64Array(length);
  for (let slot = 0; slot < length; slot += 1) {
    const at = index[slot];
    if (at < 0) continue;
    const whileLit = insideMs[slot] / litMs[slot];
    const all = global[slot];
    const normalRead = (series.beamNormal?.[at] ?? Number.NaN) * whileLit;
    const levelRead = (series.beamHorizontal?.[at] ?? Number.NaN) * whileLit;
    const diffuseRead = (series.diffuse?.[at] ?? Number.NaN) * whileLit;
    const level = Number.isNaN(levelRead) ? normalRead * sine[slot] : levelRead;
    if (!Number.isNaN(diffuseRead)) diffuse[slot] = diffuseRead;
    else if (!Number.isNaN(level)) diffuse[slot] = Math.max(0, all - level);
    else diffuse[slot] = shares[slot] * all;
    if (!Number.isNaN(normalRead)) beamNormal[slot] = normalRead;
    else
      beamNormal[slot] =
        (Number.isNaN(levelRead) ? Math.max(0, all - diffuse[slot]) : levelRead) / sine[slot];
  }
  return { beamNormal, diffuse };
};

/**
 * Fills the sky columns of a season from a file of intervals. See `weatherSkyColumns`.
 *
 * @param yearsOn years from the season's calendar to the file's
 * @param windShare what part of the file's wind blows at the panel
 */
export const fillFromIntervals = (
  sun: SunColumns,
  series: IntervalSeries,
  clear: SkyColumns,
  split: DiffuseSplit,
  yearsOn: number,
  windShare: number,
  out: SkyColumns,
): void => {
  const span = slotSpan(sun, series.startMs, series.intervalMinutes);
  const slots = seasonSlots(sun, clear, span);
  const index = fileIndices(slots, series, yearsOn);
  const { beamNormal, diffuse } = lightOfSlots(slots, series, index, split);
  out.global.fill(0);
  out.beamNormal.fill(0);
  out.diffuse.fill(0);
  out.airC.fill(0);
  out.windMs.fill(0);
  eachOverlap(sun, span, (row, slot, sharedMs) => {
    const share = sharedMs / (sun.hours[row] * HOUR_MS);
    const at = index[slot];
    out.global[row] += share * slots.global[slot];
    out.beamNormal[row] += share * beamNormal[slot];
    out.diffuse[row] += share * diffuse[slot];
    const air = series.airC?.[at] ?? Number.NaN;
    const wind = series.windMs?.[at] ?? Number.NaN;
    out.airC[row] += share * (Number.isNaN(air) ? clear.airC[row] : air);
    out.windMs[row] += share * (Number.isNaN(wind) ? clear.windMs[row] : wind * windShare);
  });
  for (let row = 0; row < sun.length; row += 1) {
    out.beamNormal[row] = Math.min(out.beamNormal[row], clear.extraterrestrial[row]);
  }
};
