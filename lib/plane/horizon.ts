/**
 * What stands between the panel and the sky: hills, trees, walls, as altitudes over bearings. It hides the sun and the
 * brightening round it, takes its share of the dome and of the band along the horizon, and shades the ground in front.
 * What is hidden is taken as dark: trees and rock send back little of what they catch.
 */

import type { SkyColumns } from "../sky/columns.ts";
import type { SunColumns } from "../sun/columns.ts";
import { type Aim, clampedAsin, toDegrees, toRadians, wrapBearing } from "../units/angle.ts";
import { between } from "../units/interpolation.ts";
import type { DomeColumns } from "./dome-columns.ts";

/** A point of the skyline: degrees clockwise from true north, degrees above level. */
export interface HorizonPoint {
  readonly bearingDeg: number;
  readonly altitudeDeg: number;
}

/** The altitude of the skyline at a bearing, degrees above level. */
export type Skyline = (bearingDeg: number) => number;

/**
 * The skyline through some points, in any order: straight lines between neighbours, right round past north.
 * Two points at one bearing make a step, the later one holding on from there. No points: level all round.
 *
 * @example skylineOf([{ bearingDeg: 90, altitudeDeg: 0 }, { bearingDeg: 180, altitudeDeg: 30 }])(135) // 15
 */
export const skylineOf = (points: readonly HorizonPoint[]): Skyline => {
  if (points.length === 0) return () => 0;
  const sorted = points
    .map(({ bearingDeg, altitudeDeg }) => ({ bearingDeg: wrapBearing(bearingDeg), altitudeDeg }))
    .sort((a, b) => a.bearingDeg - b.bearingDeg);
  const first = sorted[0];
  const last = sorted[sorted.length - 1];
  const round = [
    { ...last, bearingDeg: last.bearingDeg - 360 },
    ...sorted,
    { ...first, bearingDeg: first.bearingDeg + 360 },
  ];
  return (bearingDeg) => {
    const bearing = wrapBearing(bearingDeg);
    let right = 1;
    while (right < round.length - 1 && round[right].bearingDeg <= bearing) right += 1;
    const [from, to] = [round[right - 1], round[right]];
    const width = to.bearingDeg - from.bearingDeg;
    if (width === 0) return from.altitudeDeg;
    return between(from.altitudeDeg, to.altitudeDeg, (bearing - from.bearingDeg) / width);
  };
};

/** How far the sun's centre stands above the skyline in each row, degrees; negative behind it. */
const clearances = ({ length, east, north, up }: SunColumns, skyline: Skyline): Float64Array => {
  const over = new Float64Array(length);
  for (let row = 0; row < length; row += 1) {
    const bearingDeg = toDegrees(Math.atan2(east[row], north[row]));
    over[row] = toDegrees(clampedAsin(up[row])) - skyline(bearingDeg);
  }
  return over;
};

/** The part of a stretch with the sun clear of the skyline, when its clearance runs straight from one value to another. */
const clearPart = (from: number, to: number): number => {
  if (from > 0 && to > 0) return 1;
  if (from <= 0 && to <= 0) return 0;
  return Math.max(from, to) / Math.abs(to - from);
};

/**
 * The share of each row's time in which the sun stands clear of the skyline, 0 to 1. Between the middles of two rows of a
 * day its clearance is taken to change evenly, so that a ridge is cleared within a step and not at its ends.
 */
export const sunClear = (sun: SunColumns, skyline: Skyline): Float64Array => {
  const over = clearances(sun, skyline);
  const share = new Float64Array(sun.length);
  for (const { first, end } of sun.days) {
    for (let row = first; row < end; row += 1) {
      const own = over[row];
      const before = row > first ? (over[row - 1] + own) / 2 : own;
      const after = row < end - 1 ? (own + over[row + 1]) / 2 : own;
      share[row] = (clearPart(before, own) + clearPart(own, after)) / 2;
    }
  }
  return share;
};

/** Bearings looked along when the dome is added up; a degree apart. */
const LOOKS = 360;

/** Altitude up to which the bright band along the horizon reaches, degrees: Perez et al. 1987, Solar Energy 39, 221. */
const BAND_DEG = 6.5;

/** The skyline sampled once for every aim, and what does not depend on the aim worked out along each bearing. */
interface Lookout {
  /** Cosine and sine of each bearing looked along. */
  readonly cosLook: Float64Array;
  readonly sinLook: Float64Array;
  /** Tangent of the skyline's altitude. */
  readonly tangent: Float64Array;
  /** What an even dome above the skyline gives a flat plane (cos^2 / 2) and an upright one facing it. */
  readonly onFlat: Float64Array;
  readonly onUpright: Float64Array;
  /** The share of the horizon band that shows over the skyline. */
  readonly bandShows: Float64Array;
}

/** The integral of cos^2 from an altitude (radians) to the zenith: what a dome above it gives an upright plane. */
const uprightAbove = (altitude: number): number => (Math.PI / 2 - altitude) / 2 - Math.sin(2 * altitude) / 4;

const lookoutOf = (skyline: Skyline): Lookout => {
  const looks = Float64Array.from({ length: LOOKS }, (_, look) => toRadians(look + 0.5));
  const altitudesDeg = looks.map((look) => Math.max(0, skyline(toDegrees(look))));
  const altitudes = altitudesDeg.map(toRadians);
  return {
    cosLook: looks.map(Math.cos),
    sinLook: looks.map(Math.sin),
    tangent: altitudes.map(Math.tan),
    onFlat: altitudes.map((altitude) => Math.cos(altitude) ** 2 / 2),
    onUpright: altitudes.map(uprightAbove),
    bandShows: altitudesDeg.map((altitude) => Math.max(0, 1 - altitude / BAND_DEG)),
  };
};

/**
 * The share of an even dome that falls on an aim over the skyline: the integral of cos(incidence) over what shows of the
 * sky in front of the plane, divided by pi. Along each bearing it is worked out in closed form:
 * cos b cos^2(a0) / 2 + sin b cos(turn) ((pi / 2 - a0) / 2 - sin(2 a0) / 4), from a0, the higher of the skyline and the plane's own
 * edge. Over a level horizon it is (1 + cos b) / 2.
 */
const viewOver = (
  { cosLook, sinLook, tangent, onFlat, onUpright }: Lookout,
  { tiltDeg, bearingDeg }: Aim,
): number => {
  const [tilt, bearing] = [toRadians(tiltDeg), toRadians(bearingDeg)];
  const cosTilt = Math.cos(tilt);
  const [north, east] = [Math.sin(tilt) * Math.cos(bearing), Math.sin(tilt) * Math.sin(bearing)];
  let sum = 0;
  for (let look = 0; look < LOOKS; look += 1) {
    const towards = north * cosLook[look] + east * sinLook[look];
    // Behind the plane the sky starts at the plane's own edge, where that stands above the skyline.
    if (-towards > tangent[look] * cosTilt) {
      const edge = Math.atan2(-towards, cosTilt);
      sum += (cosTilt * Math.cos(edge) ** 2) / 2 + towards * uprightAbove(edge);
    } else {
      sum += cosTilt * onFlat[look] + towards * onUpright[look];
    }
  }
  return (sum * 2) / LOOKS;
};

/** What an aim sees of the horizon band, for each unit of the band's light: sin(tilt) over a level horizon. */
const bandOver = ({ cosLook, sinLook, bandShows }: Lookout, { tiltDeg, bearingDeg }: Aim): number => {
  const bearing = toRadians(bearingDeg);
  const [north, east] = [Math.cos(bearing), Math.sin(bearing)];
  let shown = 0;
  let all = 0;
  for (let look = 0; look < LOOKS; look += 1) {
    const towards = Math.max(0, north * cosLook[look] + east * sinLook[look]);
    shown += towards * bandShows[look];
    all += towards;
  }
  return (Math.sin(toRadians(tiltDeg)) * shown) / all;
};

/** Takes from the dome columns of a sky over a level horizon what a skyline hides. */
export type Shading = (sky: SkyColumns, dome: DomeColumns) => DomeColumns;

/**
 * Makes the shading of a season by a skyline, shared by all of its skies.
 *
 * Beam and circumsolar light: by the share of the row's time with the sun clear. Dome and horizon band: by what each
 * aim sees over the skyline. Ground: what is left of the global light on it, the ground in front being shaded alike.
 * A level skyline hands every dome back as it is.
 *
 * @throws RangeError (the shading) when sky or dome have another length than the sun columns
 */
export const behindSkyline = (sun: SunColumns, points: readonly HorizonPoint[]): Shading => {
  if (points.every(({ altitudeDeg }) => altitudeDeg <= 0)) return (_, dome) => dome;
  const { length } = sun;
  const skyline = skylineOf(points);
  const lookout = lookoutOf(skyline);
  const clear = sunClear(sun, skyline);
  const openSky = viewOver(lookout, { tiltDeg: 0, bearingDeg: 0 });
  return (sky, dome) => {
    if (sky.length !== length || dome.length !== length) {
      throw new RangeError(
        `behindSkyline: expected sky and dome of ${length} rows, received ${sky.length} and ${dome.length}`,
      );
    }
    const ground = new Float64Array(length);
    for (let row = 0; row < length; row += 1) {
      const beamLevel = sky.beamNormal[row] * sun.up[row];
      ground[row] = sky.albedo[row] * (beamLevel * clear[row] + sky.diffuse[row] * openSky);
    }
    return {
      ...dome,
      beam: dome.beam.map((light, row) => light * clear[row]),
      circumsolar: dome.circumsolar.map((light, row) => light * clear[row]),
      ground,
      viewOfSky: (aim) => viewOver(lookout, aim),
      viewOfBand: (aim) => bandOver(lookout, aim),
    };
  };
};
