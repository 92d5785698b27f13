import type { CircuitRemark } from "../../circuit/remark.ts";
import type { Worth } from "../../plan/worth.ts";
import type { SkySource } from "../light/sky-source.ts";
import {
  type BatteryOptions,
  type BatterySeason,
  batterySeasons,
  meanOutcome,
  quantileOutcome,
} from "./battery-season.ts";
import { type ColdToll, coldToll } from "./cold-toll.ts";
import { type Coping, cheapest, copingOf, toppedUp, waysOf } from "./coping.ts";
import type { Need } from "./needs.ts";
import { remarksOf } from "./set-up.ts";
import type { Choices, Remedy } from "./set-ups.ts";

/** What a set-up is like to live with, a season on average. */
export interface Living {
  readonly season: BatterySeason;
  readonly shortDays: number;
  /** In one season of ten there are more; `null` with fewer than five seasons. */
  readonly shortDaysP90: number | null;
  readonly shortWh: number;
  /** Days on which the cold kept the battery from being charged. */
  readonly blockedDays: number;
  /** What topping it up whenever it is flat comes to, in the way that the answer rests on. */
  readonly coping: Coping;
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
  /** Seasons after which it has saved its price in topping up; `null` where it never does. */
  readonly paysAfter: number | null;
  /** What it needs beside what was asked for, to be safe to build; its price is in `price`. */
  readonly needs: readonly Need[];
  /** What still speaks against building it; empty where it is safe. */
  readonly unsafe: readonly CircuitRemark[];
  /** Whether it keeps short days within what is accepted, and can be built. */
  readonly enough: boolean;
}

/** Today, and what each remedy is worth. */
export interface WorthAnswer {
  readonly asIs: Living;
  /** What is to be said about the build as it is, dangers first. */
  readonly remarks: readonly CircuitRemark[];
  readonly rows: readonly WorthRow[];
  readonly days: number;
  /** Every way to top up that was looked at, for today's set-up: the one in use, or all where the plan does not say. */
  readonly ways: readonly Coping[];
  /** Whether the plan says which way is in use; if not, the answer rests on the cheapest. */
  readonly wayStated: boolean;
  /** What the cold does to today's set-up; `null` where it never blocks its charging. */
  readonly cold: ColdToll | null;
}

const living = (season: BatterySeason, coping: Coping): Living => {
  const days = season.days.length;
  return {
    season,
    shortDays: meanOutcome(season, "shortDays"),
    shortDaysP90: quantileOutcome(season, "shortDays", 0.9),
    shortWh: meanOutcome(season, "shortWh"),
    blockedDays: meanOutcome(season, "blockedDays"),
    coping,
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
  { setUp, says, price, needs, unsafe }: Remedy,
  season: BatterySeason,
  coping: Coping,
): WorthRow => {
  const now = living(season, coping);
  const days = season.days.length;
  const shortDaysAvoided = asIs.shortDays - now.shortDays;
  const usefulWhADay = now.usedWhADay - asIs.usedWhADay;
  const usefulKWh = (usefulWhADay * days * worth.years) / 1000;
  const saved = asIs.coping.price - coping.price;
  const spares = asIs.coping.topUps - coping.topUps > LEAST_DAYS;
  return {
    ...now,
    name: setUp.name,
    says,
    price,
    needs,
    unsafe,
    shortDaysAvoided,
    paperWhADay: now.offeredWhADay - asIs.offeredWhADay,
    usefulWhADay,
    pricePerShortDay: shortDaysAvoided > LEAST_DAYS ? price / (shortDaysAvoided * worth.years) : null,
    pricePerUsefulKWh: usefulKWh * 1000 > LEAST_WH ? price / usefulKWh : null,
    paysAfter: saved > 0 && spares ? price / saved : null,
    enough: unsafe.length === 0 && now.shortDays <= worth.wantedShortDays,
  };
};

/**
 * What each remedy is worth: every set-up lives through the same skies as today's, and is judged by what its loads got.
 *
 * Every set-up is lived with twice: left to the sun, for its short days; and topped up whenever its charge reaches the
 * floor, for what coping costs. Price a short day avoided = price / (days avoided a season x years); price a useful kWh
 * likewise. It pays after price / (what topping up costs a season today - with the remedy) seasons.
 */
export const worthOf = (
  source: SkySource,
  { asIs, remedies }: Choices,
  worth: Worth,
  options: BatteryOptions,
): WorthAnswer => {
  const { onProgress = () => {}, ...plain } = options;
  const half = (round: 0 | 1) => ({
    ...plain,
    onProgress: (done: number, seasons: number) => onProgress(round * seasons + done, 2 * seasons),
  });
  const ways = waysOf(worth);
  const [today, ...lived] = batterySeasons(
    source,
    [asIs, ...remedies.map(({ setUp }) => setUp), ...ways.map((by) => toppedUp(asIs, by, worth))],
    half(0),
  );
  const copings = ways.map((by, at) => copingOf(lived[remedies.length + at], by, worth));
  const way = cheapest(copings);
  const now = living(today, way);
  // What warms a battery that the cold never blocks is no remedy.
  const offered = remedies
    .map((remedy, at) => ({ remedy, season: lived[at] }))
    .filter(({ remedy }) => remedy.against !== "cold" || now.blockedDays > 0);
  const coped =
    offered.length === 0
      ? []
      : batterySeasons(
          source,
          offered.map(({ remedy }) => toppedUp(remedy.setUp, way.by, worth)),
          half(1),
        );
  return {
    asIs: now,
    remarks: remarksOf(asIs),
    rows: offered.map(({ remedy, season }, at) =>
      rowOf(worth, now, remedy, season, copingOf(coped[at], way.by, worth)),
    ),
    days: today.days.length,
    ways: copings,
    wayStated: worth.instead.inUse !== undefined,
    cold: coldToll(source, today, plain),
  };
};
