import { PlanError } from "../../units/problem.ts";
import type { LegDays, LegSetAnswer } from "../legs/leg-set.ts";
import { legCandidates, legFacings, lyingFlat, ownedLegs } from "../legs/legs-answer.ts";
import type { StandSeason } from "../legs/stand-season.ts";
import { type AimPlan, aimByDay, heldAim } from "../light/aim-plan.ts";
import { totalWh } from "../light/day-sums.ts";
import { panelUnits } from "../light/panel-unit.ts";
import type { PlanSkies } from "../light/skies-of-plan.ts";
import { type SkySource, skySource } from "../light/sky-source.ts";
import { batterySeasons, meanOutcome } from "./battery-season.ts";
import type { SetUp } from "./set-up.ts";

/**
 * A battery has to be lived with through every season for every set, which no bound spares; so lengths are thinned to
 * this many and sets to two legs. Between neighbours short days hardly differ: see the tolerance table.
 */
const LENGTHS_TRIED = 12;
export const MOST_SHORT_DAY_LEGS = 2;

/** How a set does on the battery. */
interface Lived {
  readonly legs: readonly LegDays[];
  readonly shortDays: number;
  readonly shortWh: number;
}

const thinned = (legs: readonly LegDays[]): readonly LegDays[] => {
  if (legs.length <= LENGTHS_TRIED) return legs;
  const last = legs.length - 1;
  return Array.from({ length: LENGTHS_TRIED }, (_, i) => legs[Math.round((i * last) / (LENGTHS_TRIED - 1))]);
};

/** For each day the setting that can be foreseen to bring most; of equals the first. */
const settingOfDay = (settings: readonly LegDays[]): Uint8Array =>
  Uint8Array.from(settings[0].dayWh, (_, day) =>
    settings.reduce((best, { dayWh }, index) => (dayWh[day] > settings[best].dayWh[day] ? index : best), 0),
  );

/** Fewer short days; of as many, fewer watt-hours short; of alike, fewer legs and those met first. */
const better = (a: Lived, b: Lived): boolean =>
  a.shortDays < b.shortDays - 1e-9 || (a.shortDays < b.shortDays + 1e-9 && a.shortWh < b.shortWh - 1e-6);

const setsOf = (candidates: readonly LegDays[], size: number): readonly (readonly LegDays[])[] =>
  size === 0
    ? [[]]
    : candidates.flatMap((leg, index) =>
        setsOf(candidates.slice(index + 1), size - 1).map((rest) => [leg, ...rest]),
      );

/**
 * The sets of 0, 1 and 2 legs with the fewest short days on the plan's battery and loads, by trying every set of up to
 * a dozen lengths through every season. On each day the setting that can be foreseen to bring most is in use.
 *
 * @param most legs to cut, 0 to 2
 * @param onProgress told how far the work has come, 0 to 1
 * @throws PlanError when the plan has no loads: no day is then short
 */
export const fewestShortDaySets = (
  season: StandSeason,
  skies: PlanSkies,
  most: number = MOST_SHORT_DAY_LEGS,
  onProgress: (share: number) => void = () => {},
): readonly LegSetAnswer[] => {
  const { plan } = season;
  if (plan.loads.appliances.length === 0) {
    throw new PlanError([
      {
        path: "loads.appliances",
        value: [],
        allowed: "must list what is run, so that a day can be short",
        hint: "or ask for the best season total or worst month",
      },
    ]);
  }
  const source: SkySource = skySource(plan, skies);
  const [flat, owned] = [lyingFlat(season), ownedLegs(season)];
  const units = panelUnits(plan.panels);
  const { circuit, battery, loads } = plan;

  const live = (legs: readonly LegDays[]): Lived & { readonly dayWh: Float64Array } => {
    const settings = [
      { ...flat, bearingDeg: season.facingDeg },
      ...[...owned, ...legs].flatMap((leg) => legFacings(season, leg)),
    ];
    const ofDay = settingOfDay(settings);
    const aims: AimPlan = aimByDay(
      source.sun,
      settings.map(({ tiltDeg, bearingDeg }) => ({ tiltDeg, bearingDeg })),
      ofDay,
    );
    const setUp: SetUp = {
      name: "a set of legs",
      panels: units.map((unit) => ({ unit, aims: unit.fixedAim === null ? aims : heldAim(unit.fixedAim) })),
      circuit,
      battery,
      loads,
    };
    const [lived] = batterySeasons(source, [setUp], {
      timeZone: plan.site.timeZone,
      airC: plan.air.temperatureC,
    });
    return {
      legs,
      shortDays: meanOutcome(lived, "shortDays"),
      shortWh: meanOutcome(lived, "shortWh"),
      dayWh: flat.dayWh.map((_, day) => settings[ofDay[day]].dayWh[day]),
    };
  };

  const candidates = thinned(legCandidates(season));
  const bySize = Array.from({ length: Math.min(most, MOST_SHORT_DAY_LEGS) + 1 }, (_, size) =>
    setsOf(candidates, size),
  );
  const tries = bySize.reduce((sum, sets) => sum + sets.length, 0);
  let tried = 0;
  let best: (Lived & { readonly dayWh: Float64Array }) | null = null;
  return bySize.flatMap((sets): LegSetAnswer[] => {
    const before = best;
    for (const legs of sets) {
      const lived = live(legs);
      tried += 1;
      onProgress(tried / tries);
      if (best === null || better(lived, best)) best = lived;
    }
    return best === null || best === before ? [] : [answerOf(best, before)];
  });
};

const answerOf = (
  { legs, dayWh, shortDays }: Lived & { readonly dayWh: Float64Array },
  before: (Lived & { readonly dayWh: Float64Array }) | null,
): LegSetAnswer => {
  const meanWh = (column: Float64Array): number => totalWh(column) / column.length;
  return {
    legs,
    dayWh,
    totalWh: totalWh(dayWh),
    scoreWh: meanWh(dayWh),
    addsWh: before === null ? 0 : meanWh(dayWh) - meanWh(before.dayWh),
    shortDays,
  };
};
