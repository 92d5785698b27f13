import type { SunColumns } from "../sun/columns.ts";
import { type Aim, normalOf } from "../units/angle.ts";
import type { PlaneColumns } from "./columns.ts";
import type { DomeColumns } from "./dome-columns.ts";
import type { Glass } from "./glass.ts";
import { checkAim, groundView } from "./incidence.ts";

/** Plane columns of a length, filled with zeros, to be handed to {@link planeColumns} again and again. */
export const emptyPlaneColumns = (length: number): PlaneColumns => ({
  length,
  plane: new Float64Array(length),
  absorbed: new Float64Array(length),
});

/**
 * The light on one plane through a season, before and after its glass.
 *
 * plane = beam + circumsolar (both x cos incidence) + dome x sky view + horizon x band view + ground x ground view, the
 * three sky parts together never below 0 (Perez et al. 1990 can go there when the sky is far from any it was fitted
 * to). Light from the sun and from round it passes the glass at the sun's incidence; the rest by the modifiers of
 * sky and ground at the tilt. {@link lightOnPlane} is the same for one moment, spelled out.
 *
 * @param sun Sun columns of the season.
 * @param dome Dome columns made from them.
 * @param aim Tilt 0 to 90 degrees up from horizontal, bearing in degrees clockwise from true north.
 * @param glass The front glass.
 * @param out Columns to write into; made afresh when left out.
 * @returns `out`: W/m2, 0 or more. A row with NaN in it stays NaN.
 * @throws RangeError when the tilt is out of range or the lengths differ.
 */
export const planeColumns = (
  sun: SunColumns,
  dome: DomeColumns,
  aim: Aim,
  glass: Glass,
  out: PlaneColumns = emptyPlaneColumns(sun.length),
): PlaneColumns => {
  checkAim("planeColumns", aim);
  const { length, east, north, up } = sun;
  if (dome.length !== length || out.length !== length) {
    throw new RangeError(
      `planeColumns: expected dome and output of ${length} rows, received ${dome.length} and ${out.length}`,
    );
  }
  const normal = normalOf(aim);
  const [normalEast, normalNorth, normalUp] = [normal.east, normal.north, normal.up];
  const viewOfSky = dome.viewOfSky(aim);
  const viewOfBand = dome.viewOfBand(aim);
  const viewOfGround = groundView(aim.tiltDeg);
  const [skyPasses, groundPasses] = [glass.sky(aim.tiltDeg), glass.ground(aim.tiltDeg)];
  const { table, tableSteps } = glass;
  const { beam, circumsolar: nearSun, dome: evenly, horizon, ground } = dome;
  const { plane, absorbed } = out;

  for (let row = 0; row < length; row += 1) {
    const cosIncidence = Math.max(0, east[row] * normalEast + north[row] * normalNorth + up[row] * normalUp);
    let circumsolar = nearSun[row] * cosIncidence;
    let spread = evenly[row] * viewOfSky + horizon[row] * viewOfBand;
    if (circumsolar + spread < 0) {
      circumsolar = 0;
      spread = 0;
    }
    const fromSun = beam[row] * cosIncidence + circumsolar;
    const fromGround = ground[row] * viewOfGround;
    const at = cosIncidence * tableSteps;
    const step = at | 0;
    const passes = table[step] + (at - step) * (table[step + 1] - table[step]);
    plane[row] = fromSun + spread + fromGround;
    // Grazing circumsolar light hardly passes the glass, so a sky part below 0 beside it could outweigh it there.
    absorbed[row] = Math.max(0, fromSun * passes + spread * skyPasses + fromGround * groundPasses);
  }
  return out;
};
