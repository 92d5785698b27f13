import type { StationSource } from "../station.ts";
import type { Covariance } from "./optimal.ts";
/**
 * What was fitted by leaving out each shared station in turn, all stations together: `npm run validate:climate` prints how far
 * the left-out stations are missed. The covariances of air are set by hand. Shares of light are natural logarithms of
 * clearness; air is in K.
 */

/** A covariance and the variance of a station's own error. */
export interface Fitted {
  readonly covariance: Covariance;
  readonly noise: number;
}

/** Usual sunshine share of a month from the field's clearness c and the sine of the noon sun n: 1, c, n, c n. */
export const USUAL_SHARE = [-0.19, 1.426, -0.286, 0.505] as const;

/** Clearness of a month: 1, the field's clearness, the sunshine share, sine of the noon sun, vapour pressure in hPa. */
export const CLEARNESS = [0.104, 0.429, 0.288, 0.038, -0.0011] as const;

/** Sunshine share beyond the usual: mean of the year, and the months' deviations from it. */
export const SUNSHINE: Readonly<
  Record<"tropics" | "beyond", { readonly year: Fitted; readonly month: Fitted }>
> = {
  tropics: {
    year: {
      covariance: { near: 0.0041, nearKm: 450, nearM: 680, far: 0.004, farKm: 2500 },
      noise: 0.0009,
    },
    month: {
      covariance: { near: 0.0011, nearKm: 200, nearM: 300, far: 0.0025, farKm: 1500 },
      noise: 0.0002,
    },
  },
  beyond: {
    year: {
      covariance: { near: 0.0021, nearKm: 700, nearM: 500, far: 0.003, farKm: 2500 },
      noise: 0.0004,
    },
    month: {
      covariance: { near: 0.0012, nearKm: 500, nearM: 1000, far: 0.003, farKm: 2500 },
      noise: 0.0003,
    },
  },
};

/** Log of clearness at radiation stations beyond what field and sunshine tell; each station's own error by its source. */
export const RADIATION: Readonly<Record<"year" | "month", Covariance>> = {
  year: { near: 0.00153, nearKm: 2000, nearM: 1320, far: 0.00139, farKm: 3000 },
  month: { near: 0.00244, nearKm: 660, nearM: 820, far: 0.00024, farKm: 1500 },
};

export const MEAN_AIR: Covariance = { near: 4, nearKm: 400, nearM: 2000, far: 9, farKm: 2000 };
export const SPAN_AIR: Covariance = { near: 2, nearKm: 300, nearM: 800, far: 4, farKm: 2000 };
export const MOIST_AIR: Covariance = { near: 0.02, nearKm: 300, nearM: 1500, far: 0.05, farKm: 2000 };
export const WIND_AIR: Covariance = { near: 0.04, nearKm: 200, nearM: 500, far: 0.02, farKm: 2000 };
export const AIR_NOISE = { mean: 0.5, span: 1, moist: 0.003, wind: 0.03 } as const;
/** The grid's wind blows over the open; stations stand among houses and trees. */
export const WIND_OF_GRID = 0.75;

/** Variance of a radiation station's own year and month, by what it is: a typical month is one month out of many years. */
export const RADIATION_NOISE: Readonly<
  Record<Exclude<StationSource, "sunshine">, { readonly year: number; readonly month: number }>
> = {
  normal: { year: 0.0005, month: 0.0001 },
  "typical year": { year: 0.00154, month: 0.0088 },
  "measured year": { year: 0.0025, month: 0.01 },
  "own table": { year: 0.0005, month: 0.0001 },
};

/**
 * A month is missed by more under a low sun: the standard deviation is times exp(a - b sin(noon)). Fitted to the share of left-out
 * stations within one and two deviations, in each quarter of the year.
 */
export const MONTH_UNCERTAINTY = [0.88, 1.5] as const;

/**
 * What a year in the tropics adds where no radiation station is near, as a variance: hardly any is among those that could be left
 * out, and years held back there were missed by 15 %, as the raw grid's makers print.
 */
export const TROPICS_YEAR_VARIANCE = 0.0064;
