/**
 * What cannot be true of twelve monthly means of light, and which slip would explain it.
 */
import type { Problem } from "../../../units/problem.ts";
import { LEAST_EXTRATERRESTRIAL_KWH_M2, type MonthSun, monthSuns } from "../month-sun.ts";
import { MJ_PER_KWH, type MonthlyLight, type Twelve } from "../station.ts";

/** Where a month's value stands, for the complaint: `sky.from.globalKWhM2[4]`, `my.csv row 2 global_05_kWh_m2_day`. */
export type MonthPath = (month: number) => string;

/** The unit that global light was stated in, so that a complaint speaks of what was written. */
export type GlobalUnit = "kWh/m2" | "MJ/m2";

/** No month anywhere reaches this: the Andes and the Antarctic plateau come to about 0.85 (common knowledge, no source). */
const MOST_CLEARNESS = 0.9;
/** Nor is any place darker over the year: the least of the shipped is 0.31; the cloudiest basins have a quarter (no source). */
const LEAST_YEARLY_CLEARNESS = 0.21;
/** Recorders and day-length formulas disagree by minutes a day; beyond this it is another unit. */
const SUNSHINE_SLACK = 1.05;
/** Nearer the equator the seasons of light are ruled by rain, not by the sun's height. */
const SEASONAL_LATITUDE_DEG = 30;

const mean = (values: Twelve): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const correlation = (a: Twelve, b: Twelve): number => {
  const [meanA, meanB] = [mean(a), mean(b)];
  let [both, ownA, ownB] = [0, 0, 0];
  for (const [index, value] of a.entries()) {
    const [da, db] = [value - meanA, (b[index] ?? Number.NaN) - meanB];
    both += da * db;
    ownA += da * da;
    ownB += db * db;
  }
  return both / Math.sqrt(ownA * ownB);
};

/** As it was written: a unit's factor and back leaves dust in the last digits. */
const rounded = (value: number): number => Number(value.toPrecision(12));

const two = (value: number): string => value.toFixed(2);

const valuesOf = (light: MonthlyLight): Twelve => {
  switch (light.kind) {
    case "global":
      return light.kWhM2Day;
    case "clearness":
      return light.index;
    case "sunshine":
      return light.hours;
  }
};

const globalProblems = (
  values: Twelve,
  suns: readonly MonthSun[],
  path: MonthPath,
  unit: GlobalUnit,
): readonly Problem[] => {
  const stated = (kWhM2: number): number => (unit === "MJ/m2" ? kWhM2 * MJ_PER_KWH : kWhM2);
  const bound = suns.map((sun) => sun.extraterrestrialKWhM2);
  const asMegajoules =
    unit === "kWh/m2" &&
    values.every((value, month) => value / MJ_PER_KWH <= MOST_CLEARNESS * (bound[month] ?? 0));
  const problems = values.flatMap((value, month): readonly Problem[] => {
    const most = bound[month] ?? Number.NaN;
    if (value < 0)
      return [{ path: path(month), value: rounded(stated(value)), allowed: "must not be negative" }];
    if (value <= MOST_CLEARNESS * most + 0.01) return [];
    return [
      {
        path: path(month),
        value: rounded(stated(value)),
        allowed: `must be at most ${two(stated(MOST_CLEARNESS * most))} ${unit} a day; ${two(stated(most))} is all that reaches the top of the air at this latitude in that month`,
        hint: asMegajoules
          ? "these look like MJ/m2 a day: say so, or divide by 3.6"
          : "mean of a day, not the sum of a month? latitude right?",
      },
    ];
  });
  if (problems.length > 0) return problems;
  const yearly = mean(values) / mean(bound);
  return yearly >= LEAST_YEARLY_CLEARNESS
    ? []
    : [
        {
          path: path(0),
          value: `${two(stated(mean(values)))} in the mean of the year`,
          allowed: `must come to more than ${two(stated(LEAST_YEARLY_CLEARNESS * mean(bound)))} ${unit} a day over the year; no place is darker`,
          hint: `is the unit ${unit} a day?`,
        },
      ];
};

const clearnessProblems = (
  values: Twelve,
  suns: readonly MonthSun[],
  path: MonthPath,
): readonly Problem[] => {
  const percent = values.every((value) => value === 0 || (value > 1 && value <= 100));
  const outside = values.flatMap((value, month): readonly Problem[] =>
    value >= 0 && value <= MOST_CLEARNESS
      ? []
      : [
          {
            path: path(month),
            value,
            allowed: `must be a clearness index, 0 to ${MOST_CLEARNESS}: no more light than above the air`,
            ...(percent ? { hint: "these look like per cent: divide by 100" } : {}),
          },
        ],
  );
  if (outside.length > 0) return outside;
  const above = suns.reduce((sum, { extraterrestrialKWhM2 }) => sum + extraterrestrialKWhM2, 0);
  const light = suns.reduce((sum, sun, month) => sum + (values[month] ?? 0) * sun.extraterrestrialKWhM2, 0);
  return light > LEAST_YEARLY_CLEARNESS * above
    ? []
    : [
        {
          path: path(0),
          value: `${two(light / above)} in the mean of the year`,
          allowed: `must come to more than ${LEAST_YEARLY_CLEARNESS} over the year; no place is darker`,
          hint: "a clearness index is the share of the light above the air, usually 0.3 to 0.7",
        },
      ];
};

const sunshineProblems = (values: Twelve, suns: readonly MonthSun[], path: MonthPath): readonly Problem[] => {
  const perDay = values.every((value, month) => value <= (suns[month]?.dayHours ?? 0) * SUNSHINE_SLACK);
  if (perDay && mean(values) > 1) {
    return [
      {
        path: path(0),
        value: values[0],
        allowed: "must be hours in the whole month",
        hint: "these look like hours a day: multiply by the days of the month",
      },
    ];
  }
  return values.flatMap((value, month) => {
    const sun = suns[month];
    const most = sun === undefined ? Number.NaN : sun.days * sun.dayHours;
    // A grazing sun that refraction lifts over the horizon may be recorded where geometry has none: 10 hours a month.
    return value >= 0 && value <= most * SUNSHINE_SLACK + 10
      ? []
      : [
          {
            path: path(month),
            value,
            allowed: `must be 0 to ${Math.round(most)} hours; the sun is not up longer in that month`,
            hint: "latitude right? hours of the whole month?",
          },
        ];
  });
};

/**
 * How far a year's light may run against its own sun. Winter-sunny coasts (Kushiro, East London) reach -0.7 in sunshine
 * hours and never below 0.2 in radiation; a table of the other hemisphere stands near -0.97.
 */
const LEAST_CORRELATION = -0.8;

/** Months that follow the sun of the other hemisphere rather than that of their own. */
const swappedHemisphere = (
  light: MonthlyLight,
  latitudeDeg: number,
  suns: readonly MonthSun[],
  path: MonthPath,
): readonly Problem[] => {
  // Clearness is taken relative to its own season and has none of its own to speak of.
  if (Math.abs(latitudeDeg) < SEASONAL_LATITUDE_DEG || light.kind === "clearness") return [];
  const values = valuesOf(light);
  const own = suns.map((sun) => sun.extraterrestrialKWhM2);
  if (correlation(values, own) > LEAST_CORRELATION) return [];
  const [here, there] = latitudeDeg > 0 ? ["northern", "southern"] : ["southern", "northern"];
  return [
    {
      path: path(0),
      value: values[0],
      allowed: `must follow the ${here} seasons at latitude ${latitudeDeg}`,
      hint: `the bright months are those of the ${there} half of the Earth: is the latitude's sign right, are the months January first?`,
    },
  ];
};

/**
 * Everything wrong with twelve monthly means of light at a latitude: more than reaches the top of the air (with the
 * unit that would explain it), a clearness above 1 or in per cent, more sunshine than daylight, hours a day for
 * hours a month, the seasons of the other hemisphere, missing months. Empty when they can be used.
 *
 * @param unit what global light was stated in; the complaint speaks in it [kWh/m2]
 */
export const lightProblems = (
  light: MonthlyLight,
  latitudeDeg: number,
  path: MonthPath,
  unit: GlobalUnit = "kWh/m2",
): readonly Problem[] => {
  const values = valuesOf(light);
  const missing = Array.from({ length: 12 }, (_, month) => month).filter(
    (month) => !Number.isFinite(values[month]),
  );
  if (missing.length > 0 || values.length !== 12) {
    return [
      ...missing.map((month) => ({
        path: path(month),
        value: values[month],
        allowed: "must be a number: twelve months are needed, January first",
      })),
      ...(values.length > 12
        ? [{ path: path(12), value: values[12], allowed: "must be the last of twelve months" }]
        : []),
    ];
  }
  const suns = monthSuns(latitudeDeg);
  const problems =
    light.kind === "global"
      ? globalProblems(values, suns, path, unit)
      : light.kind === "clearness"
        ? clearnessProblems(values, suns, path)
        : sunshineProblems(values, suns, path);
  return problems.length > 0 ? problems : swappedHemisphere(light, latitudeDeg, suns, path);
};

/** True where a month is dark by geometry alone. */
export const isPolarNight = (sun: MonthSun): boolean =>
  sun.extraterrestrialKWhM2 < LEAST_EXTRATERRESTRIAL_KWH_M2;
