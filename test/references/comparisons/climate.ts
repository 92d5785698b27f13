/** The cloud climate against handbooks, a 30-year manual, and stations with hours of their own. */

import {
  hourOfDayDiffuse,
  hourOfDayGlobal,
  meanBeamRatio,
  meanDayOnPlane,
} from "../../../lib/plane/mean-day.ts";
import { dayMemory, PUBLISHED_DAY_MEMORY } from "../../../lib/sky/climate/day-memory.ts";
import { ATOMS, addSpread } from "../../../lib/sky/climate/days/clearness-spread.ts";
import type { StationSource } from "../../../lib/sky/climate/station.ts";
import { clearnessOfSunshine } from "../../../lib/sky/climate/sunshine.ts";
import { erbsMonthly } from "../../../lib/sky/diffuse-share/erbs.ts";
import { dailyExtraterrestrial } from "../../../lib/sky/extraterrestrial.ts";
import { geometricDayHours, sunsetHourAngleDeg } from "../../../lib/sun/hour-angle.ts";
import { cooperDeclinationDeg } from "../../../lib/sun/orbit.ts";
import { airErrors, CONTINENTS, ofQuarter, QUARTERS, toldMonths, withinPct } from "../climate/anywhere.ts";
import { type HourlyYear, MEASURED_YEARS, stationDays, TYPICAL_YEARS } from "../climate/hourly-year.ts";
import { hoursAgainstMonths, sizeBelow } from "../climate/hours-against-months.ts";
import { type ManualPlane, manualPlanes } from "../climate/manual.ts";
import { drawnMemory, spreadDistance, stationMemory } from "../climate/spread.ts";
import { estimateError, leftOutPairs, nearPairs, TABLES } from "../climate/sunshine.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Case, type Comparison, nearZero } from "./comparison.ts";
import { idOf, inputReader, numberOf } from "./fields.ts";

const WH_PER_MJ = 1e6 / 3600;

/** FAO-56's own declination (eq. 24, degrees) and distance (eq. 23), with its constant of 0.0820 MJ/m2 a minute. */
const faoDeclinationDeg = (day: number): number =>
  (0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39) * 180) / Math.PI;
const faoNormalWm2 = (day: number): number =>
  (0.082e6 / 60) * (1 + 0.033 * Math.cos((2 * Math.PI * day) / 365));

const sunshineCase = (row: ReferenceRow): Case => {
  const input = inputReader(row);
  const [latitude, day] = [input("latitude_deg"), input("day_of_year")];
  const above = dailyExtraterrestrial(latitude, faoDeclinationDeg(day), faoNormalWm2(day));
  const share = input("sunshine_h") / geometricDayHours(latitude, faoDeclinationDeg(day));
  const ours = (above * clearnessOfSunshine("fao56", share, Number.NaN)) / WH_PER_MJ;
  return absolute(idOf(row), ours, numberOf(row, "expected"), numberOf(row, "tolerance"));
};

const dayShareCase = (row: ReferenceRow): Case => {
  const input = inputReader(row);
  const expected = numberOf(row, "expected");
  const tolerance = numberOf(row, "tolerance");
  if (row.quantity === "global_hour") {
    const ours = input("global_horizontal_daily_MJ_per_m2") * input("rt");
    return absolute(idOf(row), ours, expected, tolerance);
  }
  const sunset = idOf(row).startsWith("DB")
    ? sunsetHourAngleDeg(input("latitude_deg"), cooperDeclinationDeg(input("day_of_year")))
    : input("sunset_hour_angle_deg");
  const shareOf = row.quantity === "ratio_hour_to_day_diffuse_rd" ? hourOfDayDiffuse : hourOfDayGlobal;
  return absolute(idOf(row), shareOf(input("hour_angle_deg"), sunset), expected, tolerance);
};

/** Madison's months by the textbook: its mean days, Cooper's declination, Erbs's monthly share, an even sky. */
const madisonCases = (row: ReferenceRow): readonly Case[] => {
  const field = (name: string): number => numberOf(row, name);
  const latitudeDeg = field("latitude_deg");
  const day = field("day_of_year");
  const declinationDeg = cooperDeclinationDeg(day);
  const normal = 1367 * (1 + 0.033 * Math.cos((2 * Math.PI * day) / 365));
  const global = field("global_horizontal_daily_MJ_per_m2");
  const clearness = (global * WH_PER_MJ) / dailyExtraterrestrial(latitudeDeg, declinationDeg, normal);
  const tilt = field("surface_tilt_deg");
  const diffuseShare = erbsMonthly(clearness, sunsetHourAngleDeg(latitudeDeg, declinationDeg));
  const mean = { latitudeDeg, declinationDeg, global, diffuseShare, albedo: field("albedo") };
  return [
    absolute(`${idOf(row)} clearness`, clearness, field("monthly_clearness"), 0.005),
    absolute(
      `${idOf(row)} beam ratio`,
      meanBeamRatio(latitudeDeg, declinationDeg, tilt),
      field("beam_ratio_Rb"),
      0.01,
    ),
    absolute(
      idOf(row),
      meanDayOnPlane(mean, tilt),
      field("plane_total_daily_MJ_per_m2"),
      field("tolerance_MJ_per_m2"),
    ),
  ];
};

/** A quantile of Bendt's distribution with a given mean, between the paper's darkest day and its clearest. */
const bendtQuantile = (mean: number, clearest: number, share: number): number => {
  const darkest = 0.05;
  const masses = new Float64Array(ATOMS);
  addSpread("bendt", (mean - darkest) / (clearest - darkest), 1, masses);
  let below = 0;
  for (let atom = 0; atom < ATOMS; atom++) {
    if (below + masses[atom] >= share) {
      // An atom stands for its cell: half of it at either end.
      const [from, width] = atom === 0 ? [0, 0.5] : [atom - 0.5, atom === ATOMS - 1 ? 0.5 : 1];
      const place = (from + (width * (share - below)) / masses[atom]) / (ATOMS - 1);
      return darkest + (clearest - darkest) * place;
    }
    below += masses[atom];
  }
  return clearest;
};

const cloudRows = readReference("cloud-statistics.csv");

const bendtCases = (): readonly Case[] =>
  cloudRows
    .filter(({ example, quantity }) => example === "Bendt" && quantity.startsWith("daily_clearness"))
    .map((row) => {
      const mean = inputReader(row)("monthly_clearness");
      const clearest = cloudRows.find(({ case_id }) => case_id === idOf(row).replace(/-p\d+$/, "-kmax"));
      const ours = bendtQuantile(mean, Number(clearest?.expected), Number(row.quantity.split("_").at(-1)));
      return absolute(idOf(row), ours, numberOf(row, "expected"), 0.003);
    });

const planeId = ({ name, tilt }: ManualPlane): string => `${name}, ${tilt}`;
const isUpright = ({ tilt }: ManualPlane): boolean => tilt === "90";

/** Stations in the tropics take another shape, and are allowed what the published shapes leave there. */
const spreadCase = (place: HourlyYear): Case =>
  nearZero(place.name, spreadDistance(place), Math.abs(place.latitudeDeg) < 23.4 ? 0.18 : 0.08);

const memoryCase = (place: HourlyYear): Case => {
  const days = stationDays(place);
  const measured = stationMemory(days);
  return absolute(place.name, drawnMemory(place, days, dayMemory(measured)), measured.correlation, 0.1);
};

/** Stations' mean memory against that of seasons drawn with the published one. */
const publishedMemoryCase = (places: readonly HourlyYear[]): Case => {
  const mean = (of: (place: HourlyYear) => number): number =>
    places.reduce((sum, place) => sum + of(place), 0) / places.length;
  return absolute(
    `mean of ${places.length} stations`,
    mean((place) => drawnMemory(place, stationDays(place), PUBLISHED_DAY_MEMORY)),
    mean((place) => stationMemory(stationDays(place)).correlation),
    0.04,
  );
};

/** Errors of left-out stations, all together and by what they are. */
const toldCases = (): readonly Case[] => {
  const told = toldMonths();
  const all = estimateError(told);
  const of = (source: StationSource) =>
    estimateError(told.filter(({ station }) => station.source === source));
  const [typical, normal] = [of("typical year"), of("normal")];
  const warm = estimateError(told.filter(({ station }) => Math.abs(station.latitudeDeg) < 30));
  return [
    nearZero("all, month", all.monthPct, 10.5),
    nearZero("all, year", all.yearPct, 4.5),
    nearZero("all, bias", all.biasPct, 1.5),
    nearZero("typical years, month", typical.monthPct, 11),
    nearZero("typical years, year", typical.yearPct, 4.5),
    nearZero("typical years, bias", typical.biasPct, 1.5),
    nearZero("normals, month", normal.monthPct, 5.6),
    nearZero("normals, year", normal.yearPct, 3.6),
    nearZero("normals, bias", normal.biasPct, 1.5),
    nearZero("within 30 degrees of the equator, month", warm.monthPct, 10.5),
    nearZero("within 30 degrees of the equator, bias", warm.biasPct, 1.5),
  ];
};

const withoutPolarNight = TYPICAL_YEARS.filter(({ latitudeDeg }) => Math.abs(latitudeDeg) < 66);

export const climate: readonly Comparison[] = [
  {
    quantity: "daily radiation from sunshine hours, FAO-56 constants",
    reference: "FAO-56, examples 10 and 18",
    unit: "MJ/m2",
    cause: "the examples' own rounding",
    count: 2,
    cases: () => readReference("sunshine-examples.csv").map(sunshineCase),
  },
  {
    quantity: "an hour's share of its day, global and diffuse",
    reference:
      "Duffie & Beckman example 2.13.2; Collares-Pereira & Rabl 1979, Liu & Jordan 1960 evaluated apart",
    unit: "1",
    cause: "printed digits",
    count: 18,
    cases: () => readReference("day-shares.csv").map(dayShareCase),
  },
  {
    quantity: "a month on a plane of 60 degrees by the mean day: clearness, beam ratio, total",
    reference: "Duffie & Beckman, example 2.19.1 (Madison)",
    unit: "1 and MJ/m2",
    cause: "half the last printed digit; the totals carry the rounding of two factors",
    count: 24,
    cases: () => readReference("tilted-monthly.csv").flatMap(madisonCases),
  },
  {
    quantity: "points of the distribution of daily clearness",
    reference: "Bendt et al. 1981 with the printed fit of its exponent, evaluated apart",
    unit: "1",
    cause: "the printed fit misses its own mean by up to 0.002, ours meets it; 129 atoms",
    count: 15,
    cases: bendtCases,
  },
  {
    quantity: "months on planes near latitude from horizontal months alone, the worst of twelve",
    reference: "Marion & Wilcox 1994, means of 1961-1990, two places",
    unit: "%",
    cause: "the manual prints one decimal: 2 % of a winter month; the split of light is a correlation",
    count: 6,
    cases: () =>
      manualPlanes()
        .filter((plane) => !isUpright(plane))
        .map((plane) => nearZero(planeId(plane), plane.errors.worstPct, 4)),
  },
  {
    quantity: "months on planes near latitude from horizontal months alone, root-mean-square of twelve",
    reference: "Marion & Wilcox 1994, means of 1961-1990, two places",
    unit: "%",
    cause: "as above",
    count: 6,
    cases: () =>
      manualPlanes()
        .filter((plane) => !isUpright(plane))
        .map((plane) => nearZero(planeId(plane), plane.errors.rmsPct, 2.5)),
  },
  {
    quantity: "years on planes near latitude from horizontal months alone",
    reference: "Marion & Wilcox 1994, means of 1961-1990, two places",
    unit: "%",
    cause: "as above; rounding averages out",
    count: 6,
    cases: () =>
      manualPlanes()
        .filter((plane) => !isUpright(plane))
        .map((plane) => nearZero(planeId(plane), plane.errors.yearPct, 1.5)),
  },
  {
    quantity: "upright planes from horizontal months alone: worst month, and year",
    reference: "Marion & Wilcox 1994, means of 1961-1990, two places",
    unit: "%",
    cause: "an upright plane sees little of the summer sun and much of the ground",
    count: 4,
    cases: () =>
      manualPlanes()
        .filter(isUpright)
        .flatMap((plane) => [
          nearZero(`${planeId(plane)}, month`, plane.errors.worstPct, 10),
          nearZero(`${planeId(plane)}, year`, plane.errors.yearPct, 3.5),
        ]),
  },
  {
    quantity: "a year on tilted planes from twelve means against the station's own hours",
    reference: "typical years of six stations, 13 to 71 N, three tilts each",
    unit: "%",
    cause: "hours know how cloud sat in each day; months do not",
    count: 18,
    cases: () =>
      TYPICAL_YEARS.flatMap(hoursAgainstMonths).map(({ name, tiltDeg, yearPct }, index) =>
        nearZero(`${name}, ${tiltDeg} degrees, ${index}`, yearPct, 1.3),
      ),
  },
  {
    quantity: "months on tilted planes from twelve means against hours: the median, and nine in ten",
    reference: "typical years of five stations, 13 to 54 N, planes at 30 degrees and at latitude",
    unit: "%",
    cause:
      "as above; a median of sixty months is known to 0.1 by drawing them anew; Barrow's twilight is in the year's",
    count: 2,
    cases: () => {
      const errors = withoutPolarNight
        .flatMap((place) => hoursAgainstMonths(place).slice(0, 2))
        .flatMap(({ months }) => months.map(({ errorPct }) => errorPct));
      return [
        nearZero("median", sizeBelow(errors, 0.5), 0.75),
        nearZero("nine in ten", sizeBelow(errors, 0.9), 4),
      ];
    },
  },
  {
    quantity: "distribution of daily clearness, greatest distance (Kolmogorov-Smirnov) over a year",
    reference: "days of fourteen stations, from their own twelve means",
    unit: "1",
    cause: "published shapes; chance alone gives 0.07 in a year of single days (95 in 100)",
    count: 14,
    cases: () => [...TYPICAL_YEARS, ...MEASURED_YEARS].map(spreadCase),
  },
  {
    quantity: "correlation of a day's clearness with the next day's, drawn seasons against stations",
    reference: "days of fourteen stations, months' means removed",
    unit: "1",
    cause:
      "a year of days knows its memory to 0.05, two of these; so it leans halfway towards the published one",
    count: 14,
    cases: () => [...TYPICAL_YEARS, ...MEASURED_YEARS].map(memoryCase),
  },
  {
    quantity: "the same, drawn with the published memory alone",
    reference: "Graham, Hollands & Brunger 1988 against fourteen stations",
    unit: "1",
    cause: "fourteen years that each scatter by 0.08 know their mean to 0.02, two of these",
    count: 1,
    cases: () => [publishedMemoryCase([...TYPICAL_YEARS, ...MEASURED_YEARS])],
  },
  {
    quantity: "radiation from sunshine near 55 radiation stations: bias, month, year",
    reference: "typical years of Germany and the US; theirs: an independent program on places held back",
    unit: "%",
    cause: "other places than those held back: 55 here, 30 there",
    count: 6,
    cases: () => {
      const fao = estimateError(nearPairs(TABLES["sunshine, share-alike too"], "fao56"));
      const fitted = estimateError(nearPairs(TABLES["sunshine, share-alike too"], "fitted"));
      return [
        absolute("FAO-56 bias", fao.biasPct, 6.8, 1),
        absolute("FAO-56 month", fao.monthPct, 14.6, 1),
        absolute("FAO-56 year", fao.yearPct, 9.3, 1),
        absolute("fitted bias", fitted.biasPct, 2.8, 1),
        absolute("fitted month", fitted.monthPct, 11, 1),
        absolute("fitted year", fitted.yearPct, 6.4, 1),
      ];
    },
  },
  {
    quantity: "what coordinates alone are told: each radiation station left out; month, year, bias",
    reference: "305 US and German typical years, measured years and 30-year normals",
    unit: "%",
    cause:
      "a month of a typical year is one real month: the nearest other typical year is 15 % off; normals know better",
    count: 11,
    cases: toldCases,
  },
  {
    quantity: "the same, with no radiation station within 500 km, as in most of the world",
    reference: "as above",
    unit: "%",
    cause: "what sunshine hours and a field some 300 km fine can tell",
    count: 3,
    cases: () => {
      const { monthPct, yearPct, biasPct } = estimateError(toldMonths(500));
      return [
        nearZero("month", monthPct, 12),
        nearZero("year", yearPct, 5.5),
        nearZero("bias", biasPct, 1.5),
      ];
    },
  },
  {
    quantity: "left-out months within one and two of their own standard deviations, by quarter and continent",
    reference: "68 and 95 of a hundred; the stations above",
    unit: "%",
    cause:
      "errors are more peaked than normal ones: many small, a few large; in Europe most left-out years are normals, which err little",
    count: 16,
    cases: () => {
      const told = toldMonths();
      return Object.entries(CONTINENTS).flatMap(([name, on]) =>
        QUARTERS.flatMap((quarter, index) => {
          const months = ofQuarter(told, index, on);
          return [
            absolute(`${name}, ${quarter}, one`, withinPct(months, 1), 68.3, name === "Europe" ? 9 : 5.5),
            absolute(`${name}, ${quarter}, two`, withinPct(months, 2), 95.4, 6),
          ];
        }),
      );
    },
  },
  {
    quantity: "lowest and highest air of a month where nobody measures: root-mean-square, mean",
    reference: "typical and measured years of the shipped tables, each left out",
    unit: "K",
    cause: "one real month each, which is 1 to 2 K from its mean; valleys",
    count: 4,
    cases: () => {
      const { lowK, highK, lowBiasK, highBiasK } = airErrors(toldMonths());
      return [
        nearZero("lowest, rms", lowK, 2.2),
        nearZero("highest, rms", highK, 2.4),
        nearZero("lowest, mean", lowBiasK, 0.3),
        nearZero("highest, mean", highBiasK, 0.3),
      ];
    },
  },
  {
    quantity: "what the nearest places alone tell: each radiation station left out, from its neighbours",
    reference: "265 US and German typical years",
    unit: "%",
    cause:
      "the uncertainty that the library states for such places (11 % a month, 7 % a year) and the scatter of typical months",
    count: 4,
    cases: () => {
      const all = estimateError(leftOutPairs(TABLES["all shipped"], "fitted"));
      const sunshine = estimateError(leftOutPairs(TABLES["sunshine, share-alike too"], "fitted"));
      return [
        nearZero("all shipped, month", all.monthPct, 12),
        nearZero("all shipped, year", all.yearPct, 5.5),
        nearZero("sunshine only, month", sunshine.monthPct, Math.hypot(11, 8)),
        nearZero("sunshine only, year", sunshine.yearPct, Math.hypot(7, 3.5)),
      ];
    },
  },
];
