import type { SkyToPlane } from "../plan/sky.ts";
import type { SkyColumns } from "../sky/columns.ts";
import type { SunColumns } from "../sun/columns.ts";
import { type Aim, toRadians } from "../units/angle.ts";
import { hayDavies } from "./hay-davies.ts";
import { skyView } from "./incidence.ts";
import { isotropic } from "./isotropic.ts";
import { perez } from "./perez.ts";
import type { SkyModel, SkyMoment, SkySplit } from "./sky-model.ts";

/** The sky-to-plane models by name. */
export const SKY_MODELS: Readonly<Record<SkyToPlane, SkyModel>> = {
  perez,
  "hay-davies": hayDavies,
  isotropic,
};

/**
 * The light of a season, sorted by where it comes from: one row for each row of the sun columns, W/m2.
 * Made once for a sky and shared by every aim, so that an aim costs one dot product and a few multiplications a row.
 */
export interface DomeColumns {
  readonly length: number;
  /** Straight from the sun, for each unit of the cosine of incidence. */
  readonly beam: Float64Array;
  /** From round the sun, for each unit of the cosine of incidence. */
  readonly circumsolar: Float64Array;
  /** From the even dome, for each unit of the sky view. */
  readonly dome: Float64Array;
  /** From the band along the horizon, for each unit of what an aim sees of it; may be negative. */
  readonly horizon: Float64Array;
  /** Back from the ground, for each unit of the ground view. */
  readonly ground: Float64Array;
  /** The share of the dome that an aim sees, 0 to 1. Over a level horizon it depends on the tilt alone. */
  readonly viewOfSky: (aim: Aim) => number;
  /** What an aim sees of the horizon band: the sine of the tilt over a level horizon. */
  readonly viewOfBand: (aim: Aim) => number;
}

/**
 * Sorts the light of a season by where it comes from, ready for any number of aims.
 *
 * Ground light is albedo times global horizontal (Liu & Jordan 1963).
 *
 * @param sun Sun columns of the season.
 * @param sky Sky columns made from them, of the same length.
 * @param model How diffuse light is spread over the sky [perez].
 * @throws RangeError when the two differ in length.
 */
export const domeColumns = (sun: SunColumns, sky: SkyColumns, model: SkyToPlane = "perez"): DomeColumns => {
  const { length } = sun;
  if (sky.length !== length) {
    throw new RangeError(`domeColumns: expected sky columns of ${length} rows, received ${sky.length}`);
  }
  const splitSky = SKY_MODELS[model];
  const circumsolar = new Float64Array(length);
  const dome = new Float64Array(length);
  const horizon = new Float64Array(length);
  const ground = new Float64Array(length);
  const moment = { beamNormal: 0, diffuse: 0, sinAltitude: 0, extraterrestrial: 0, airMass: 0 };
  const split: SkySplit = { circumsolar: 0, dome: 0, horizon: 0 };
  for (let row = 0; row < length; row += 1) {
    moment.beamNormal = sky.beamNormal[row];
    moment.diffuse = sky.diffuse[row];
    moment.sinAltitude = sun.up[row];
    moment.extraterrestrial = sky.extraterrestrial[row];
    moment.airMass = sky.airMass[row];
    splitSky(moment satisfies SkyMoment, split);
    circumsolar[row] = split.circumsolar;
    dome[row] = split.dome;
    horizon[row] = split.horizon;
    ground[row] = sky.albedo[row] * sky.global[row];
  }
  return {
    length,
    beam: sky.beamNormal,
    circumsolar,
    dome,
    horizon,
    ground,
    viewOfSky: (aim) => skyView(aim.tiltDeg),
    viewOfBand: (aim) => Math.sin(toRadians(aim.tiltDeg)),
  };
};
