import { PlanError } from "../plan/problem.ts";
import type { SeasonDay } from "../sun/columns.ts";
import { meanOfSkies } from "./bands.ts";
import { type DayEnergies, dayEnergiesOver } from "./day-energy.ts";
import type { PanelUnit } from "./panel-unit.ts";
import type { ReadySky, SeasonSkies } from "./skies.ts";

/**
 * What the stand's panels bring in on each day at each of a ladder of tilts, all at one bearing: the tilt-by-date map.
 * Panels fixed elsewhere are not in it: no leg changes what they bring.
 */
export interface TiltLadder {
  readonly days: readonly SeasonDay[];
  readonly tiltsDeg: readonly number[];
  readonly bearingDeg: number;
  /** Wh of each day under a clear sky, one column for each tilt. */
  readonly clearWh: readonly Float64Array[];
  /** The same with cloud in it; `null` when only the clear sky is known. */
  readonly expectedWh: readonly Float64Array[] | null;
}

/** What tilts are judged by: what is to be expected, or the clear-sky bound where nothing else is known. */
export const judgedLadder = ({ clearWh, expectedWh }: TiltLadder): readonly Float64Array[] =>
  expectedWh ?? clearWh;

/**
 * The panels that a leg moves.
 *
 * @throws PlanError when every panel is fixed: there is then nothing to choose
 */
export const panelsOnStand = (units: readonly PanelUnit[]): readonly PanelUnit[] => {
  const moved = units.filter(({ fixedAim }) => fixedAim === null);
  if (moved.length === 0) {
    throw new PlanError([
      {
        path: "panels",
        value: units.map(({ name }) => name).join(", "),
        allowed: "must hold at least one panel on the stand",
        hint: 'legs move no fixed panel; give one the mount {"kind": "stand"}',
      },
    ]);
  }
  return moved;
};

/**
 * Makes the function that gives the Wh of each day at an aim: clear, or expected (the weighted mean over skies).
 * It keeps its own work columns.
 */
export const aimEnergiesOver = (
  skies: SeasonSkies,
  units: readonly PanelUnit[],
): {
  readonly clear: (tiltDeg: number, bearingDeg: number) => Float64Array;
  /** `null` when only the clear sky is known. */
  readonly expected: ((tiltDeg: number, bearingDeg: number) => Float64Array) | null;
} => {
  const moved = panelsOnStand(units);
  const dayEnergies: DayEnergies = dayEnergiesOver(skies.sun);
  const days = skies.sun.days.length;
  const under = (sky: ReadySky, tiltDeg: number, bearingDeg: number): Float64Array => {
    const out = new Float64Array(days);
    for (const unit of moved) dayEnergies(sky, unit, { tiltDeg, bearingDeg }, out);
    return out;
  };
  const weights = skies.expected.map(({ weight }) => weight);
  return {
    clear: (tiltDeg, bearingDeg) => under(skies.clear, tiltDeg, bearingDeg),
    expected:
      skies.expected.length === 0
        ? null
        : (tiltDeg, bearingDeg) =>
            meanOfSkies(
              skies.expected.map((sky) => under(sky, tiltDeg, bearingDeg)),
              weights,
            ),
  };
};

/** Whole degrees from flat to upright. */
export const EVERY_DEGREE: readonly number[] = Array.from({ length: 91 }, (_, tilt) => tilt);

/**
 * Daily energies for a ladder of tilts.
 *
 * @param tiltsDeg degrees up from horizontal, 0 to 90, in any order
 * @throws PlanError when no panel is on the stand
 */
export const tiltLadder = (
  skies: SeasonSkies,
  units: readonly PanelUnit[],
  bearingDeg: number,
  tiltsDeg: readonly number[] = EVERY_DEGREE,
): TiltLadder => {
  const { clear, expected } = aimEnergiesOver(skies, units);
  return {
    days: skies.sun.days,
    tiltsDeg,
    bearingDeg,
    clearWh: tiltsDeg.map((tilt) => clear(tilt, bearingDeg)),
    expectedWh: expected && tiltsDeg.map((tilt) => expected(tilt, bearingDeg)),
  };
};
