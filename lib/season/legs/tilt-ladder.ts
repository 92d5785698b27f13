import type { SeasonDay } from "../../sun/columns.ts";
import { PlanError } from "../../units/problem.ts";
import { meanOfSkies } from "../light/bands.ts";
import { dayEnergiesOver } from "../light/day-energy.ts";
import { clearLightOf, foreseen, holdsWeather } from "../light/foreseen.ts";
import type { PanelUnit } from "../light/panel-unit.ts";
import type { ReadySky, SeasonSkies } from "../light/skies.ts";

/**
 * What the stand's panels bring in on each day at each of a ladder of tilts, all at one bearing: the tilt-by-date map.
 * Panels fixed elsewhere are not in it: no leg changes what they bring.
 */
export interface TiltLadder {
  readonly days: readonly SeasonDay[];
  /** Rising, degrees up from horizontal. */
  readonly tiltsDeg: readonly number[];
  readonly bearingDeg: number;
  /** Wh of each day as it can be foreseen, one column for each tilt; clear-sky where no other is known. */
  readonly dayWh: readonly Float64Array[];
  /** Whether cloud is in the figures; if not they are an upper bound. */
  readonly cloudIn: boolean;
}

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

/** Wh of each day at an aim: tilt and bearing in degrees. */
export type AimEnergy = (tiltDeg: number, bearingDeg: number) => Float64Array;

/**
 * Makes the function that gives the Wh of each day at an aim for the panels on the stand: what can be foreseen of the
 * expected skies (`foreseen`), or the clear sky where no other is known. It keeps its own work columns.
 *
 * @throws PlanError when no panel is on the stand
 */
export const aimEnergyOver = (
  { sun, clear, expected }: SeasonSkies,
  units: readonly PanelUnit[],
): AimEnergy => {
  const moved = panelsOnStand(units);
  const dayEnergies = dayEnergiesOver(sun);
  const days = sun.days.length;
  const under = (sky: ReadySky, tiltDeg: number, bearingDeg: number): Float64Array => {
    const out = new Float64Array(days);
    for (const unit of moved) dayEnergies(sky, unit, { tiltDeg, bearingDeg }, out);
    return out;
  };
  const weights = expected.map(({ weight }) => weight);
  const clearLight = holdsWeather(expected.length) ? clearLightOf(sun, clear.sky) : null;
  return (tiltDeg, bearingDeg) => {
    if (expected.length === 0) return under(clear, tiltDeg, bearingDeg);
    const mean = meanOfSkies(
      expected.map((sky) => under(sky, tiltDeg, bearingDeg)),
      weights,
    );
    return clearLight === null ? mean : foreseen(mean, clearLight);
  };
};

/** Tilts from flat to upright in equal steps that divide 90. @example tiltsEvery(45) // [0, 45, 90] */
export const tiltsEvery = (stepDeg: number): readonly number[] =>
  Array.from({ length: Math.round(90 / stepDeg) + 1 }, (_, index) => index * stepDeg);

/**
 * Daily energies for a ladder of tilts.
 *
 * @param tiltsDeg degrees up from horizontal, 0 to 90, rising [every degree]
 * @throws PlanError when no panel is on the stand
 */
export const tiltLadder = (
  skies: SeasonSkies,
  units: readonly PanelUnit[],
  bearingDeg: number,
  tiltsDeg: readonly number[] = tiltsEvery(1),
): TiltLadder => {
  const energy = aimEnergyOver(skies, units);
  return {
    days: skies.sun.days,
    tiltsDeg,
    bearingDeg,
    dayWh: tiltsDeg.map((tilt) => energy(tilt, bearingDeg)),
    cloudIn: skies.expected.length > 0,
  };
};

/** A rung is read off the four coarse ones around it: the cubic through them (Lagrange). */
const cubicWeights = (at: number, knots: readonly number[]): readonly number[] =>
  knots.map((knot, index) =>
    knots.reduce(
      (product, other, j) => (j === index ? product : (product * (at - other)) / (knot - other)),
      1,
    ),
  );

/**
 * Wh of each day at a tilt between the rungs of a ladder, read off a cubic: a day's energy bends so gently with the tilt
 * that steps of 3 degrees are enough for 0.02 % of the day's best. Facing away from the noon sun, where all the beam
 * slips behind the panel at nearly one tilt, that corner is rounded off: to 0.2 %, and to 2 % on the weakest days near
 * the polar night.
 *
 * @param ladder at least four rungs
 * @param tiltDeg degrees, within the ladder
 * @throws RangeError for a shorter ladder
 */
export const energyAt = ({ tiltsDeg, dayWh }: TiltLadder, tiltDeg: number): Float64Array => {
  if (tiltsDeg.length < 4) {
    throw new RangeError(`energyAt: expected at least 4 rungs, received ${tiltsDeg.length}`);
  }
  const same = tiltsDeg.indexOf(tiltDeg);
  if (same >= 0) return dayWh[same];
  const above = tiltsDeg.findIndex((rung) => rung > tiltDeg);
  const first = Math.min(tiltsDeg.length - 4, Math.max(0, above - 2));
  const [wa, wb, wc, wd] = cubicWeights(tiltDeg, tiltsDeg.slice(first, first + 4));
  const [a, b, c, d] = dayWh.slice(first, first + 4);
  // Energy is never negative, whatever a cubic makes of a corner in it.
  return a.map((wh, day) => Math.max(0, wa * wh + wb * b[day] + wc * c[day] + wd * d[day]));
};

/**
 * A ladder with finer steps from flat to upright, read off a coarse one at a fraction of the cost, as `energyAt`.
 *
 * @param ladder at least four rungs, from 0 to 90 degrees
 * @param stepDeg step of the finer ladder; divides 90
 */
export const finerLadder = (ladder: TiltLadder, stepDeg: number): TiltLadder => {
  const tiltsDeg = tiltsEvery(stepDeg);
  return { ...ladder, tiltsDeg, dayWh: tiltsDeg.map((tilt) => energyAt(ladder, tilt)) };
};

/**
 * The best tilt of each day, degrees: the top of the parabola through the best rung and its neighbours, so that a coarse
 * ladder still tells a fraction of a degree. NaN on a day without light.
 */
export const bestTilts = ({ days, tiltsDeg, dayWh }: TiltLadder): Float64Array =>
  Float64Array.from(days, (_, day) => {
    let best = 0;
    for (let rung = 1; rung < dayWh.length; rung += 1) if (dayWh[rung][day] > dayWh[best][day]) best = rung;
    if (!(dayWh[best][day] > 0)) return Number.NaN;
    if (best === 0 || best === dayWh.length - 1) return tiltsDeg[best];
    const [below, at, above] = [dayWh[best - 1][day], dayWh[best][day], dayWh[best + 1][day]];
    const [stepDown, stepUp] = [tiltsDeg[best] - tiltsDeg[best - 1], tiltsDeg[best + 1] - tiltsDeg[best]];
    const [slopeDown, slopeUp] = [(at - below) / stepDown, (above - at) / stepUp];
    // Where the slope, straight between the middles of the two steps, is zero.
    const share = slopeDown / (slopeDown - slopeUp);
    return tiltsDeg[best] - stepDown / 2 + (share * (stepDown + stepUp)) / 2;
  });
