import { panelPower } from "../../panel/panel-power.ts";
import { CLEAN_GLASS_ANGULAR_LOSS, martinRuizGlass } from "../../plane/glass.ts";
import { emptyPlaneColumns, planeColumns } from "../../plane/plane-columns.ts";
import type { SunColumns } from "../../sun/columns.ts";
import type { Aim } from "../../units/angle.ts";
import { DAY_MINUTES, MINUTE_MS } from "../../units/time.ts";
import { totalWh } from "../light/day-sums.ts";
import type { PanelUnit } from "../light/panel-unit.ts";
import type { Period } from "../light/periods.ts";
import type { ReadySky } from "../light/skies.ts";
import { facingSunOver } from "./facing-sun.ts";

/** Parts into which a solar day is cut, from solar midnight to solar midnight. */
export interface DayBins {
  readonly minutes: number;
  readonly count: number;
}

/** What aims bring in each part of the day, mean over a period's days and its skies, Wh. */
export interface PeriodEnergies {
  readonly period: Period;
  /** For each aim, a value for each bin of the day. */
  readonly binWh: readonly Float64Array[];
  /** Wh a day for a panel that at every moment points where most light comes from: no aiming does better. */
  readonly limitWh: number;
}

const SHORTEST_BIN_MINUTES = 10;

/** Bins of ten minutes, or of as many steps as make at least ten. */
export const dayBins = (stepMinutes: number): DayBins => {
  const minutes = Math.ceil(SHORTEST_BIN_MINUTES / stepMinutes) * stepMinutes;
  return { minutes, count: DAY_MINUTES / minutes };
};

/** For each row, its place in an array of (period, bin). */
const slotsOf = (sun: SunColumns, periods: readonly Period[], bins: DayBins): Int32Array => {
  const periodOfDay = new Int32Array(sun.days.length);
  periods.forEach(({ first, end }, index) => {
    periodOfDay.fill(index, first, end);
  });
  const slots = new Int32Array(sun.length);
  for (let row = 0; row < sun.length; row += 1) {
    const day = sun.day[row];
    const sinceStart = sun.timeMs[row] - sun.days[day].startMs;
    const bin = Math.min(bins.count - 1, Math.floor(sinceStart / (bins.minutes * MINUTE_MS)));
    slots[row] = periodOfDay[day] * bins.count + bin;
  }
  return slots;
};

/**
 * What each of many aims brings in each part of the day, by period: the ground on which aims are chosen.
 *
 * @param skies one or more, their weights summing to 1
 * @param units the panels that are aimed
 * @param periods that hold every day once
 * @param onProgress told how much is done, 0 to 1
 */
export const aimEnergies = (
  sun: SunColumns,
  skies: readonly ReadySky[],
  units: readonly PanelUnit[],
  aims: readonly Aim[],
  periods: readonly Period[],
  onProgress: (share: number) => void = () => {},
): readonly PeriodEnergies[] => {
  const bins = dayBins(sun.stepMinutes);
  const slots = slotsOf(sun, periods, bins);
  const glass = martinRuizGlass(CLEAN_GLASS_ANGULAR_LOSS);
  const { length } = sun;
  const light = emptyPlaneColumns(length);
  const [power, watts, most, share] = [0, 1, 2, 3].map(() => new Float64Array(length));
  const slotCount = periods.length * bins.count;
  const ofAim = aims.map(() => new Float64Array(slotCount));
  const limit = new Float64Array(slotCount);

  /** Watts of all units for the light at hand. */
  const allUnits = (sky: ReadySky): Float64Array => {
    watts.fill(0);
    for (const { model, howMany } of units) {
      panelPower(model, light, sky.sky, power);
      for (let row = 0; row < length; row += 1) watts[row] += howMany * power[row];
    }
    return watts;
  };

  const facingSun = facingSunOver(sun, skies[0].dome, glass);
  skies.forEach((sky, skyIndex) => {
    facingSun(sky.dome, light);
    most.set(allUnits(sky));
    for (let row = 0; row < length; row += 1) share[row] = sky.weight * sun.hours[row];
    aims.forEach((aim, index) => {
      planeColumns(sun, sky.dome, aim, glass, light);
      const brings = allUnits(sky);
      const out = ofAim[index];
      for (let row = 0; row < length; row += 1) {
        const power = brings[row];
        if (power > most[row]) most[row] = power;
        out[slots[row]] += share[row] * power;
      }
      onProgress((skyIndex + (index + 1) / aims.length) / skies.length);
    });
    for (let row = 0; row < length; row += 1) limit[slots[row]] += share[row] * most[row];
  });

  return periods.map((period, index) => {
    const days = period.end - period.first;
    const part = (column: Float64Array): Float64Array =>
      column.slice(index * bins.count, (index + 1) * bins.count).map((wh) => wh / days);
    return {
      period,
      binWh: ofAim.map(part),
      limitWh: totalWh(part(limit)),
    };
  });
};

/** Energies of disjoint periods put together into those of one that holds them all, each by its days. */
export const joinedEnergies = (name: string, parts: readonly PeriodEnergies[]): PeriodEnergies => {
  const daysOf = ({ period }: PeriodEnergies): number => period.end - period.first;
  const days = parts.reduce((sum, part) => sum + daysOf(part), 0);
  const shares = parts.map((part) => daysOf(part) / days);
  const binWh = parts[0].binWh.map((first, aim) =>
    first.map((_, bin) => parts.reduce((sum, part, index) => sum + shares[index] * part.binWh[aim][bin], 0)),
  );
  return {
    period: { name, first: parts[0].period.first, end: parts[parts.length - 1].period.end },
    binWh,
    limitWh: parts.reduce((sum, part, index) => sum + shares[index] * part.limitWh, 0),
  };
};
