import type { SunshineRelation } from "../../plan/climate.ts";
import type { MeasuredMemory } from "./day-memory.ts";
import { LEAST_EXTRATERRESTRIAL_KWH_M2, type MonthSun, monthSuns } from "./month-sun.ts";
import { globalOfSunshine } from "./sunshine.ts";

/** Twelve values, January first. */
export type Twelve = readonly number[];

/** How a row's light was come by; it decides how far the row is trusted. A normal is a mean of thirty years measured. */
export const STATION_SOURCES = ["normal", "typical year", "measured year", "sunshine", "own table"] as const;

export type StationSource = (typeof STATION_SOURCES)[number];

export const MJ_PER_KWH = 3.6;

/** The light of twelve months, in whichever form a table gives it. */
export type MonthlyLight =
  /** Mean daily global horizontal radiation, kWh/m2. */
  | { readonly kind: "global"; readonly kWhM2Day: Twelve }
  /** Global over extraterrestrial, 0..1. */
  | { readonly kind: "clearness"; readonly index: Twelve }
  /** Bright-sunshine hours in the whole month. */
  | { readonly kind: "sunshine"; readonly hours: Twelve };

/** Air temperature of twelve months, degC: the days' low and high, or only the mean. */
export type MonthlyAir =
  | { readonly kind: "range"; readonly lowC: Twelve; readonly highC: Twelve }
  | { readonly kind: "mean"; readonly meanC: Twelve };

/** Mean wind of twelve months, m/s, at a height above ground. */
export interface MonthlyWind {
  readonly ms: Twelve;
  readonly heightM: number;
}

/** One place of a climate table. */
export interface ClimateStation {
  readonly id: string;
  readonly place: string;
  readonly country: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** Above the sea; `null` where it is not known. */
  readonly elevationM: number | null;
  readonly source: StationSource;
  readonly light: MonthlyLight;
  readonly air: MonthlyAir | null;
  readonly wind: MonthlyWind | null;
  /** How its days follow each other; `null` where no days were at hand. */
  readonly dayMemory: MeasuredMemory | null;
}

const meanDaily = (light: MonthlyLight, month: number, sun: MonthSun, relation: SunshineRelation): number => {
  switch (light.kind) {
    case "global":
      return light.kWhM2Day[month] ?? Number.NaN;
    case "clearness":
      return (light.index[month] ?? Number.NaN) * sun.extraterrestrialKWhM2;
    case "sunshine":
      return globalOfSunshine(relation, light.hours[month] ?? Number.NaN, sun);
  }
};

/**
 * Mean daily global horizontal radiation of twelve months (kWh/m2), whatever the table gave.
 *
 * @param relation how sunshine is read [fitted]
 */
export const monthlyGlobal = (
  light: MonthlyLight,
  latitudeDeg: number,
  relation: SunshineRelation = "fitted",
): Twelve => monthSuns(latitudeDeg).map((sun, month) => meanDaily(light, month, sun, relation));

/** Clearness index of twelve months: global over extraterrestrial. NaN in polar night, where it has no meaning. */
export const monthlyClearness = (
  light: MonthlyLight,
  latitudeDeg: number,
  relation: SunshineRelation = "fitted",
): Twelve =>
  monthSuns(latitudeDeg).map((sun, month) =>
    sun.extraterrestrialKWhM2 < LEAST_EXTRATERRESTRIAL_KWH_M2
      ? Number.NaN
      : meanDaily(light, month, sun, relation) / sun.extraterrestrialKWhM2,
  );
