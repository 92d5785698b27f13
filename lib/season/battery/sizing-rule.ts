import { sum } from "d3";
import { batteryModel } from "../../circuit/battery.ts";
import { storageDays95, storageWh } from "../../circuit/sizing.ts";
import { emptyBranchLight, lightOver } from "../light/aim-plan.ts";
import { meanOver } from "../light/day-sums.ts";
import { periodsOf } from "../light/periods.ts";
import type { ReadySky, SeasonSkies } from "../light/skies.ts";
import type { BatterySeason } from "./battery-season.ts";
import { airOfDays } from "./battery-steps.ts";
import type { SetUp } from "./set-up.ts";

/** What a handbook's rule of thumb would have bought, beside what there is. */
export interface SizingRule {
  /** The poorest month, by the light on the panels, and its peak sun hours: kWh/m2 a day past the glass. */
  readonly month: string;
  readonly peakSunHours: number;
  /** Days of storage that the rule asks for, for 95 % of the time. */
  readonly days: number;
  /** Capacity to buy by it, and what the plan has, Wh of the whole battery. */
  readonly capacityWh: number;
  readonly presentWh: number;
}

/** Peak sun hours for which the rule was fitted. */
const [LEAST_HOURS, MOST_HOURS] = [1, 8];

/** Light on a set-up's panels on each day under a sky, kWh/m2, panels weighed by their rated power. */
const lightOfDays = (skies: SeasonSkies, { panels }: SetUp, sky: ReadySky): Float64Array => {
  const { sun } = skies;
  const fill = lightOver(sun);
  const light = emptyBranchLight(sun.length);
  const out = new Float64Array(sun.days.length);
  const rated = sum(panels, ({ unit }) => unit.howMany * unit.model.ratedW);
  for (const { unit, aims } of panels) {
    fill(sky, aims, unit.model.heatLoss, light);
    const share = (unit.howMany * unit.model.ratedW) / rated / 1000;
    for (let row = 0; row < sun.length; row += 1) {
      out[sun.day[row]] += share * light.absorbed[row] * sun.hours[row];
    }
  }
  return out;
};

/**
 * The storage that a handbook's rule asks for in the season's poorest month: days by peak sun hours, divided by the usable
 * share and by the share of the capacity left in that month's warmth.
 *
 * @param airC Air where the sky says nothing of it, degC: one number or twelve.
 * @returns `null` without loads, or where the month lies outside the rule's 1 to 8 peak sun hours.
 */
export const sizingRule = (
  skies: SeasonSkies,
  { setUp, outcomes, days: calendar }: BatterySeason,
  airC: number | readonly number[],
): SizingRule | null => {
  const { sun, clear, expected } = skies;
  const seen = expected.length > 0 ? expected : [clear];
  const light = new Float64Array(calendar.length);
  for (const sky of seen) {
    lightOfDays(skies, setUp, sky).forEach((kWhM2, day) => {
      light[day] += sky.weight * kWhM2;
    });
  }
  const air = airOfDays(sun, seen[0].sky, airC);
  const [, ...months] = periodsOf(sun.days);
  const [poorest] = months
    .map(({ name, first, end }) => ({
      name,
      peakSunHours: meanOver(light, { first, end }),
      airC: meanOver(air, { first, end }),
    }))
    .sort((a, b) => a.peakSunHours - b.peakSunHours);
  const loadWhPerDay = sum(outcomes, ({ wantedWh }) => wantedWh) / outcomes.length / calendar.length;
  if (loadWhPerDay === 0 || !(poorest.peakSunHours >= LEAST_HOURS && poorest.peakSunHours <= MOST_HOURS))
    return null;
  const battery = batteryModel(setUp.battery);
  const days = storageDays95(poorest.peakSunHours);
  return {
    month: poorest.name,
    peakSunHours: poorest.peakSunHours,
    days,
    capacityWh: storageWh({
      loadWhPerDay,
      days,
      usableShare: setUp.battery.usablePct / 100,
      capacityShare: battery.capacityShare(battery.keptAtC ?? poorest.airC),
    }),
    presentWh: battery.capacityWh,
  };
};
