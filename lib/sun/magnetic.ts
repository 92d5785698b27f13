/**
 * True bearings and compass bearings: the World Magnetic Model of NOAA and the British Geological Survey,
 * through the geomagnetism package, which holds the editions of 2015, 2020 and 2025.
 */
import geomagnetism from "geomagnetism";
import { wrapBearing } from "../units/angle.ts";

/** Dates a model speaks for, UTC: from the release of the 2015 edition to the end of the 2025 edition. */
const FIRST_MODEL_MS = Date.UTC(2014, 11, 15, 7);
const LAST_MODEL_MS = Date.UTC(2029, 10, 13, 3);

/**
 * Strength of the level part of the field, nT, under which a compass is unsteady, and under which it is useless:
 * the caution and blackout zones of the World Magnetic Model 2020 technical report, section 1.5 (from memory).
 */
const UNSTEADY_BELOW_NT = 6000;
const USELESS_BELOW_NT = 2000;

const M_PER_KM = 1000;

/** What a compass shows at a place and time. */
export interface MagneticDeclination {
  /** Degrees from true north to where the needle points; east (clockwise) positive. */
  readonly declinationDeg: number;
  /** Edition of the model, `WMM-2025`. */
  readonly model: string;
  /** Dates, UTC milliseconds, between which that edition is valid. */
  readonly validFromMs: number;
  readonly validToMs: number;
  /** False when the date asked for lies outside every edition: the nearest date in one is taken instead, and the needle drifts by some tenths of a degree a year. */
  readonly dateCovered: boolean;
  /** How far the needle can be trusted: near the magnetic poles the level part of the field is too weak. */
  readonly needle: "steady" | "unsteady" | "useless";
}

/**
 * Where a compass needle points, against true north. Measured against the official test values of the 2020 and 2025
 * editions: within 0.005 degrees, which is their rounding. Iron, wiring and rock nearby can turn a needle further than any model knows.
 *
 * @param elevationM metres above the sea
 * @param timeMs UTC milliseconds
 * @throws RangeError when the time is no number
 * @example magneticDeclination(52, 5, 0, Date.UTC(2027, 0, 1)).declinationDeg // 2.82
 */
export const magneticDeclination = (
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM: number,
  timeMs: number,
): MagneticDeclination => {
  if (!Number.isFinite(timeMs))
    throw new RangeError(`magneticDeclination: expected UTC milliseconds, received ${timeMs}`);
  const coveredMs = Math.min(Math.max(timeMs, FIRST_MODEL_MS), LAST_MODEL_MS);
  const model = geomagnetism.model(new Date(coveredMs));
  const { decl, h } = model.point([latitudeDeg, longitudeDeg, elevationM / M_PER_KM]);
  return {
    declinationDeg: decl,
    model: model.name,
    validFromMs: model.start_date.valueOf(),
    validToMs: model.end_date.valueOf(),
    dateCovered: coveredMs === timeMs,
    needle: h < USELESS_BELOW_NT ? "useless" : h < UNSTEADY_BELOW_NT ? "unsteady" : "steady",
  };
};

/** A true bearing as a compass shows it, degrees [0, 360); declination east positive. */
export const compassBearing = (trueBearingDeg: number, declinationDeg: number): number =>
  wrapBearing(trueBearingDeg - declinationDeg);

/** A compass bearing brought back to true north, degrees [0, 360); declination east positive. */
export const trueBearing = (compassBearingDeg: number, declinationDeg: number): number =>
  wrapBearing(compassBearingDeg + declinationDeg);
