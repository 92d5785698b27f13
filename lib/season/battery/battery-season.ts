import { mean, quantile } from "d3";
import { batteryModel } from "../../circuit/battery.ts";
import { loadCutOffOf } from "../../circuit/load-cut-off.ts";
import { type LoadColumns, loadColumns } from "../../circuit/loads.ts";
import type { Loads } from "../../plan/loads.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import { bandOfSkies, type DayBand, FEWEST_FOR_A_BAND } from "../light/bands.ts";
import { type SkySource, seasonsOf } from "../light/sky-source.ts";
import { outcomeOfDays, type SeasonOutcome, SHORT_DAY_WH } from "./battery-outcome.ts";
import { type BatteryDays, emptyBatteryDays, runBattery } from "./battery-run.ts";
import { batterySteps } from "./battery-steps.ts";
import { harvestsOf } from "./harvests.ts";
import type { SetUp } from "./set-up.ts";
import { surroundingsOf } from "./surroundings.ts";

/** A set-up lived with through every season of a source. */
export interface BatterySeason {
  readonly setUp: SetUp;
  readonly days: readonly SeasonDay[];
  /** What each season came to, in the order of the source. */
  readonly outcomes: readonly SeasonOutcome[];
  /** Lowest state of charge of each day over the seasons, 0 to 1 of the whole capacity; `null` with fewer than five. */
  readonly lowest: StateBand | null;
  /** Means over the seasons, one value a day. */
  readonly meanLowest: Float64Array;
  readonly meanOfferedWh: Float64Array;
  readonly meanUsedWh: Float64Array;
  readonly meanShortWh: Float64Array;
  readonly meanCurtailedWh: Float64Array;
  /** Share of the seasons in which each day is short, 0 to 1. */
  readonly shortShare: Float64Array;
  /** Share of the seasons in which the cold kept the battery from being charged on each day, 0 to 1. */
  readonly blockedShare: Float64Array;
}

/** p10, p50 and p90 of a state of charge, one value a day. */
export interface StateBand {
  readonly p10: Float64Array;
  readonly p50: Float64Array;
  readonly p90: Float64Array;
}

/** What a comparison is told beside its set-ups. */
export interface BatteryOptions {
  /** IANA zone of the site, for the clock times of the loads. */
  readonly timeZone: string;
  /** Air where the sky says nothing of it (polar night), degC: one number or twelve. */
  readonly airC: number | readonly number[];
  /** Told after each season how many are done. */
  readonly onProgress?: (done: number, seasons: number) => void;
}

const stateBand = (band: DayBand | null): StateBand | null =>
  band && { p10: band.p10Wh, p50: band.p50Wh, p90: band.p90Wh };

/** Gathers the seasons of one set-up as they are run. */
const gatherer = (setUp: SetUp, calendar: readonly SeasonDay[], seasons: number) => {
  const column = () => new Float64Array(calendar.length);
  const [meanLowest, meanOfferedWh, meanUsedWh] = [column(), column(), column()];
  const [meanShortWh, meanCurtailedWh, shortShare, blockedShare] = [column(), column(), column(), column()];
  const outcomes: SeasonOutcome[] = [];
  const lowest: Float64Array[] = [];
  return {
    add: (days: BatteryDays): void => {
      outcomes.push(outcomeOfDays(calendar, days));
      lowest.push(days.lowest.slice());
      for (let day = 0; day < calendar.length; day += 1) {
        meanLowest[day] += days.lowest[day] / seasons;
        meanOfferedWh[day] += days.offeredWh[day] / seasons;
        meanUsedWh[day] += days.usedWh[day] / seasons;
        meanShortWh[day] += days.shortWh[day] / seasons;
        meanCurtailedWh[day] += days.curtailedWh[day] / seasons;
        if (days.shortWh[day] >= SHORT_DAY_WH) shortShare[day] += 1 / seasons;
        if (days.tooColdWh[day] >= SHORT_DAY_WH) blockedShare[day] += 1 / seasons;
      }
    },
    done: (): BatterySeason => ({
      setUp,
      days: calendar,
      outcomes,
      lowest: stateBand(
        bandOfSkies(
          lowest,
          lowest.map(() => 1 / lowest.length),
        ),
      ),
      meanLowest,
      meanOfferedWh,
      meanUsedWh,
      meanShortWh,
      meanCurtailedWh,
      shortShare,
      blockedShare,
    }),
  };
};

/**
 * Runs several set-ups through the same skies: every set-up lives through each season of the source.
 *
 * @throws RangeError without a season
 */
export const batterySeasons = (
  source: SkySource,
  setUps: readonly SetUp[],
  { timeZone, airC, onProgress }: BatteryOptions,
): readonly BatterySeason[] => {
  const seasons = seasonsOf(source);
  if (seasons === 0) throw new RangeError("batterySeasons: expected at least one season, received none");
  const { sun } = source;
  const steps = batterySteps(sun);
  const batteries = setUps.map(({ battery }) => batteryModel(battery));
  const harvests = harvestsOf(source, setUps, batteries);
  const laidOut = new Map<Loads, LoadColumns>();
  const plans = setUps.map(({ circuit, loads, topUp = null }, at) => {
    const columns = laidOut.get(loads) ?? loadColumns(loads, steps, timeZone);
    laidOut.set(loads, columns);
    const harvest = harvests.ofSetUp[at];
    return {
      battery: batteries[at],
      loads: columns,
      ownW: harvests.harvesters[harvest].ownW,
      cutOff: loadCutOffOf(circuit, batteries[at]),
      topUp,
      harvest,
    };
  });
  const surroundings = surroundingsOf(
    source,
    steps,
    setUps.map(({ battery }, at) => ({ battery, loads: plans[at].loads })),
    airC,
  );
  const days = emptyBatteryDays(sun.days.length);
  const gatherers = setUps.map((setUp) => gatherer(setUp, sun.days, seasons));
  for (let season = 0; season < seasons; season += 1) {
    const under = harvests.under(season);
    const round = surroundings(season);
    plans.forEach((plan, at) => {
      gatherers[at].add(runBattery(plan, steps, under[plan.harvest], round[at], days));
    });
    onProgress?.(season + 1, seasons);
  }
  return gatherers.map(({ done }) => done());
};

/** One number of every season. */
export type OutcomeNumber = Exclude<keyof SeasonOutcome, "firstShort">;

/** The mean of one number over a set-up's seasons. */
export const meanOutcome = ({ outcomes }: BatterySeason, of: OutcomeNumber): number =>
  mean(outcomes, (outcome) => outcome[of]) ?? Number.NaN;

/** A quantile of one number over a set-up's seasons; `null` with fewer than five, where it would only be the extreme. */
export const quantileOutcome = (
  { outcomes }: BatterySeason,
  of: OutcomeNumber,
  share: number,
): number | null =>
  outcomes.length < FEWEST_FOR_A_BAND ? null : (quantile(outcomes, share, (outcome) => outcome[of]) ?? null);
