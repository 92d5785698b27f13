import type { Worth } from "../../plan/worth.ts";
import type { SkySource } from "../light/sky-source.ts";
import {
  type BatteryOptions,
  type BatterySeason,
  batterySeasons,
  meanOutcome,
  quantileOutcome,
} from "./battery-season.ts";
import type { Choices, Remedy } from "./set-ups.ts";

/** Seasons after which something has paid for itself against each way to cope; `null` where it never does. */
export interface BreakEven {
  readonly hookUp: number | null;
  readonly driving: number | null;
  readonly generator: number | null;
}

/** What a set-up is like to live with, a season on average. */
export interface Living {
  readonly season: BatterySeason;
  readonly shortDays: number;
  /** In one season of ten there are more; `null` with fewer than five seasons. */
  readonly shortDaysP90: number | null;
  readonly shortWh: number;
  /** What the loads got, and what the controller could have given, Wh a day. */
  readonly usedWhADay: number;
  readonly offeredWhADay: number;
  /** Share of days on which the battery is full by noon, 0 to 1. */
  readonly fullByNoonShare: number;
}

/** A remedy beside today. */
export interface WorthRow extends Living {
  readonly name: string;
  readonly says: string;
  readonly price: number;
  readonly shortDaysAvoided: number;
  /** Wh a day more from the panels, on paper, and that the loads really got. */
  readonly paperWhADay: number;
  readonly usefulWhADay: number;
  /** Price over the years stated for each short day avoided and each useful kWh more; `null` where there is none. */
  readonly pricePerShortDay: number | null;
  readonly pricePerUsefulKWh: number | null;
  readonly breakEven: BreakEven;
  /** Whether it keeps short days within what is accepted. */
  readonly enough: boolean;
}

/** Today, and what each remedy is worth. */
export interface WorthAnswer {
  readonly asIs: Living;
  readonly rows: readonly WorthRow[];
  readonly days: number;
  /** What today's short days cost a season when each way to cope with them is paid for. */
  readonly copingPrice: { readonly hookUp: number; readonly driving: number; readonly generator: number };
}

/** What the short days and watt-hours of a season cost by each way to cope. */
const copingPrice = ({ instead }: Worth, shortDays: number, shortWh: number) => ({
  hookUp: shortDays * instead.hookUpNight,
  driving: (shortWh / instead.drivingHourWh) * instead.drivingHour,
  generator: (shortWh / instead.generatorHourWh) * instead.generatorHour,
});

const living = (season: BatterySeason): Living => {
  const days = season.days.length;
  return {
    season,
    shortDays: meanOutcome(season, "shortDays"),
    shortDaysP90: quantileOutcome(season, "shortDays", 0.9),
    shortWh: meanOutcome(season, "shortWh"),
    usedWhADay: meanOutcome(season, "usedWh") / days,
    offeredWhADay: meanOutcome(season, "offeredWh") / days,
    fullByNoonShare: meanOutcome(season, "fullByNoonDays") / days,
  };
};

/** Less than this is no difference that the model can tell: a hundredth of a day, a watt-hour a season. */
const [LEAST_DAYS, LEAST_WH] = [0.01, 1];

const rowOf = (
  worth: Worth,
  asIs: Living,
  { setUp, says, price }: Remedy,
  season: BatterySeason,
): WorthRow => {
  const now = living(season);
  const days = season.days.length;
  const shortDaysAvoided = asIs.shortDays - now.shortDays;
  const usefulWhADay = now.usedWhADay - asIs.usedWhADay;
  const usefulKWh = (usefulWhADay * days * worth.years) / 1000;
  const [before, after] = [asIs, now].map(({ shortDays, shortWh }) => copingPrice(worth, shortDays, shortWh));
  const seasonsTo = (saved: number): number | null =>
    saved > 0 && (shortDaysAvoided > LEAST_DAYS || asIs.shortWh - now.shortWh > LEAST_WH)
      ? price / saved
      : null;
  return {
    ...now,
    name: setUp.name,
    says,
    price,
    shortDaysAvoided,
    paperWhADay: now.offeredWhADay - asIs.offeredWhADay,
    usefulWhADay,
    pricePerShortDay: shortDaysAvoided > LEAST_DAYS ? price / (shortDaysAvoided * worth.years) : null,
    pricePerUsefulKWh: usefulKWh * 1000 > LEAST_WH ? price / usefulKWh : null,
    breakEven: {
      hookUp: seasonsTo(before.hookUp - after.hookUp),
      driving: seasonsTo(before.driving - after.driving),
      generator: seasonsTo(before.generator - after.generator),
    },
    enough: now.shortDays <= worth.wantedShortDays,
  };
};

/**
 * What each remedy is worth: every set-up lives through the same skies as today's, and is judged by what its loads got.
 *
 * Price a short day avoided = price / (days avoided a season x years); price a useful kWh likewise. Break-even = price /
 * (what coping with short days costs a season today - with the remedy).
 */
export const worthOf = (
  source: SkySource,
  { asIs, remedies }: Choices,
  worth: Worth,
  options: BatteryOptions,
): WorthAnswer => {
  const [today, ...rest] = batterySeasons(source, [asIs, ...remedies.map(({ setUp }) => setUp)], options);
  const now = living(today);
  return {
    asIs: now,
    rows: rest.map((season, at) => rowOf(worth, now, remedies[at], season)),
    days: today.days.length,
    copingPrice: copingPrice(worth, now.shortDays, now.shortWh),
  };
};
