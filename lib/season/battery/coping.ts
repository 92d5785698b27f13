import { batteryModel } from "../../circuit/battery.ts";
import { topUpBy } from "../../circuit/top-up.ts";
import { TOP_UP_WAYS, type TopUpWay, type Worth } from "../../plan/worth.ts";
import { type BatterySeason, meanOutcome } from "./battery-season.ts";
import type { SetUp } from "./set-up.ts";

/** What a season is like in which the battery is topped up whenever it reaches its floor; means over the seasons. */
export interface Coping {
  readonly by: TopUpWay;
  /** Times that it is topped up, and hours that it takes. */
  readonly topUps: number;
  readonly hours: number;
  readonly toppedUpWh: number;
  /** What that costs in the plan's currency. */
  readonly price: number;
  /** Days that are short in spite of it. */
  readonly shortDays: number;
}

/** The ways that an answer looks at: the one in use, or all of them where the plan does not say. */
export const waysOf = ({ instead }: Pick<Worth, "instead">): readonly TopUpWay[] =>
  instead.inUse === undefined ? TOP_UP_WAYS : [instead.inUse];

/** A set-up whose owner tops up in a way. */
export const toppedUp = (setUp: SetUp, by: TopUpWay, worth: Pick<Worth, "instead">): SetUp => ({
  ...setUp,
  topUp: topUpBy(by, worth, batteryModel(setUp.battery)),
});

/** What times and hours of topping up cost: a hook-up by the night, driving and a generator by the hour. */
const priceOf = (
  { instead }: Pick<Worth, "instead">,
  by: TopUpWay,
  topUps: number,
  hours: number,
): number => {
  switch (by) {
    case "hook-up":
      return topUps * instead.hookUpNight;
    case "driving":
      return hours * instead.drivingHour;
    case "generator":
      return hours * instead.generatorHour;
  }
};

/** Sums up a season that was lived through with topping up. */
export const copingOf = (season: BatterySeason, by: TopUpWay, worth: Pick<Worth, "instead">): Coping => {
  const topUps = meanOutcome(season, "topUps");
  const hours = meanOutcome(season, "topUpHours");
  return {
    by,
    topUps,
    hours,
    toppedUpWh: meanOutcome(season, "toppedUpWh"),
    price: priceOf(worth, by, topUps, hours),
    shortDays: meanOutcome(season, "shortDays"),
  };
};

/** The cheapest of several ways; of equals the first. */
export const cheapest = (ways: readonly Coping[]): Coping =>
  ways.reduce((best, one) => (one.price < best.price ? one : best));
