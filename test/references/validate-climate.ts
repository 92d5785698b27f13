/**
 * Prints how the cloud climate does, station by station. `npm run validate:climate`. The tests hold the same numbers to
 * limits (`comparisons/climate.ts`).
 *
 * With PANEL_SEASON_DATASETS naming a folder of the raw data sets, stations whose data may not travel are added.
 */

import { dayMemory, PUBLISHED_DAY_MEMORY } from "../../lib/sky/climate/day-memory.ts";
import { airErrors, CONTINENTS, ofQuarter, QUARTERS, toldMonths, withinPct } from "./climate/anywhere.ts";
import {
  type HourlyYear,
  MEASURED_YEARS,
  SATELLITE_YEARS,
  stationDays,
  TYPICAL_YEARS,
} from "./climate/hourly-year.ts";
import { hoursAgainstMonths, levelMonths, sizeBelow } from "./climate/hours-against-months.ts";
import { manualPlanes } from "./climate/manual.ts";
import { monthKept, sequencesKept } from "./climate/means-kept.ts";
import { notTravelling } from "./climate/not-travelling.ts";
import { drawnMemory, spreadDistance, stationMemory } from "./climate/spread.ts";
import { estimateError, leftOutPairs, type MonthPair, nearPairs, TABLES } from "./climate/sunshine.ts";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

const signed = (value: number, digits = 1): string =>
  `${value < 0 ? "-" : "+"}${Math.abs(value).toFixed(digits)}`;
const cell = (text: string, width = 7): string => text.padStart(width);
const title = (text: string): void => console.log(`\n${text}\n${"-".repeat(Math.min(110, text.length))}`);

title("Tilted planes from horizontal months alone, against the 30-year manual (Marion & Wilcox 1994), %");
console.log(`${"".padEnd(32)}${cell("worst")}${cell("rms")}${cell("year")}`);
for (const { name, tilt, errors } of manualPlanes()) {
  console.log(
    `${`${name}, ${tilt}`.padEnd(32)}${cell(errors.worstPct.toFixed(1))}${cell(errors.rmsPct.toFixed(1))}${cell(signed(errors.yearPct))}`,
  );
}

title("Tilted planes from a station's twelve means, against its own hours, % (a dash: no light to speak of)");
console.log(`${"".padEnd(22)}${MONTHS.map((month) => cell(month, 6)).join("")}${cell("year")}`);
for (const [kind, places] of [
  ["typical years", TYPICAL_YEARS],
  ["satellite years (low sums, strong winter beam; shown, not held to a limit)", SATELLITE_YEARS],
] as const) {
  console.log(kind);
  const all: number[] = [];
  for (const place of places) {
    for (const { name, tiltDeg, months, yearPct } of hoursAgainstMonths(place)) {
      all.push(...months.map(({ errorPct }) => errorPct));
      const cells = MONTHS.map((_, month) => {
        const found = months.find((each) => each.month === month);
        return cell(found === undefined ? "-" : signed(found.errorPct), 6);
      });
      console.log(`  ${`${name}, ${tiltDeg} deg`.padEnd(20)}${cells.join("")}${cell(signed(yearPct, 2))}`);
    }
  }
  console.log(
    `  median month ${sizeBelow(all, 0.5).toFixed(2)}, nine in ten below ${sizeBelow(all, 0.9).toFixed(2)}`,
  );
}
const limited = TYPICAL_YEARS.filter(({ latitudeDeg }) => Math.abs(latitudeDeg) < 66)
  .flatMap((place) => hoursAgainstMonths(place).slice(0, 2))
  .flatMap(({ months }) => months.map(({ errorPct }) => errorPct));
console.log(
  `typical years without polar night, planes at 30 degrees and at latitude (what the tests hold to limits)\n` +
    `  median month ${sizeBelow(limited, 0.5).toFixed(2)}, nine in ten below ${sizeBelow(limited, 0.9).toFixed(2)}`,
);

title(
  "Why: one month's global light hides different beams. Share of the clear sky's, by hours and from the means",
);
for (const place of TYPICAL_YEARS) {
  const level = levelMonths(place);
  const line = (name: string, value: (month: (typeof level)[number]) => number, digits: number): void =>
    console.log(
      `  ${name.padEnd(20)}${level.map((month) => cell(value(month).toFixed(digits), 6)).join("")}`,
    );
  console.log(place.name);
  line("noon sun, deg", ({ noonDeg }) => noonDeg, 0);
  line("global", ({ globalRatio }) => globalRatio, 2);
  line("beam, hours", ({ beamRatio }) => beamRatio, 2);
  line("beam, from the means", ({ expectedBeamRatio }) => expectedBeamRatio, 2);
}

title("Months of polar twilight in absolute terms, Wh/m2 a day");
for (const place of TYPICAL_YEARS.filter(({ latitudeDeg }) => Math.abs(latitudeDeg) > 66)) {
  for (const { name, tiltDeg, months } of hoursAgainstMonths(place)) {
    const row = (what: string, value: (month: (typeof months)[number]) => number): void => {
      const cells = MONTHS.map((_, month) => {
        const found = months.find((each) => each.month === month);
        return cell(found === undefined ? "-" : value(found).toFixed(0), 6);
      });
      console.log(`  ${what.padEnd(20)}${cells.join("")}`);
    };
    row(`${name}, ${tiltDeg} deg, hours`.slice(0, 20), ({ hoursWhM2Day }) => hoursWhM2Day);
    row("  from the means", ({ expectedWhM2Day }) => expectedWhM2Day);
  }
}

const years: readonly HourlyYear[] = [
  ...TYPICAL_YEARS,
  ...MEASURED_YEARS,
  ...SATELLITE_YEARS,
  ...notTravelling(),
];

title(
  "Days about their month: distance of the distribution (Kolmogorov-Smirnov), and memory from day to day",
);
console.log(
  "Memory: as measured; of seasons drawn with the published one (the station left out); of seasons drawn with its own, which\n" +
    "leans towards the published one by half for a year of days. A year of days knows its own to 0.05.",
);
console.log(
  `${"".padEnd(24)}${cell("days")}${cell("KS")}${cell("measured", 10)}${cell("published", 11)}${cell("own")}`,
);
for (const place of years) {
  const days = stationDays(place);
  const measured = stationMemory(days);
  console.log(
    `${place.name.padEnd(24)}${cell(String(days.length))}${cell(spreadDistance(place, days).toFixed(3))}` +
      `${cell(measured.correlation.toFixed(2), 10)}` +
      `${cell(drawnMemory(place, days, PUBLISHED_DAY_MEMORY).toFixed(2), 11)}` +
      `${cell(drawnMemory(place, days, dayMemory(measured)).toFixed(2))}`,
  );
}

title(
  "Monthly means kept: worst month of the year, % off, by the equally likely skies and by 200 drawn seasons",
);
console.log(`${"".padEnd(24)}${cell("skies", 10)}${cell("drawn", 10)}`);
for (const place of TYPICAL_YEARS) {
  console.log(
    `${place.name.padEnd(24)}${cell(monthKept(place).toFixed(4), 10)}${cell(sequencesKept(place).toFixed(3), 10)}`,
  );
}

const errorLine = (name: string, pairs: readonly MonthPair[]): void => {
  const { places, biasPct, rmsPct, monthPct, p95Pct, yearPct } = estimateError(pairs);
  console.log(
    `${name.padEnd(44)}${cell(String(places))}${cell(signed(biasPct))}${cell(rmsPct.toFixed(1))}${cell(monthPct.toFixed(1))}${cell(p95Pct.toFixed(1))}${cell(yearPct.toFixed(1))}`,
  );
};

const errorHead = (): void =>
  console.log(
    `${"".padEnd(44)}${cell("places")}${cell("bias")}${cell("rms")}${cell("month")}${cell("p95")}${cell("year")}`,
  );

title("Radiation from sunshine at stations within 60 km of a radiation station, %");
errorHead();
for (const relation of ["fao56", "fitted"] as const) {
  const pairs = nearPairs(TABLES["sunshine, share-alike too"], relation);
  errorLine(relation, pairs);
  for (const country of ["Germany", "United States"]) {
    errorLine(
      `  ${country}`,
      pairs.filter(({ station }) => station.country === country),
    );
  }
  for (const [month, name] of MONTHS.entries()) {
    errorLine(
      `  ${name}`,
      pairs.filter((pair) => pair.month === month),
    );
  }
}

title("What a newcomer is told: each radiation station left out in turn, from its nearest places, %");
errorHead();
for (const [name, table] of Object.entries(TABLES)) {
  for (const places of [1, 4]) {
    errorLine(
      `${name}, ${places === 1 ? "the nearest" : `${places} places`}`,
      leftOutPairs(table, "fitted", places),
    );
  }
}
console.log("by month, all shipped, 4 places");
const told = leftOutPairs(TABLES["all shipped"], "fitted");
for (const [month, name] of MONTHS.entries()) {
  errorLine(
    `  ${name}`,
    told.filter((pair) => pair.month === month),
  );
}

title("What coordinates alone are told: each radiation station left out in turn, %");
errorHead();
const anywhere = toldMonths();
for (const [name, months] of [
  ["alone in its place", anywhere],
  ["  typical years", anywhere.filter(({ station }) => station.source === "typical year")],
  ["  30-year normals", anywhere.filter(({ station }) => station.source === "normal")],
  ["  measured years", anywhere.filter(({ station }) => station.source === "measured year")],
  [
    "  within 30 degrees of the equator",
    anywhere.filter(({ station }) => Math.abs(station.latitudeDeg) < 30),
  ],
  ["  above 1000 m", anywhere.filter(({ station }) => (station.elevationM ?? 0) > 1000)],
  ["no radiation station within 500 km", toldMonths(500)],
] as const) {
  errorLine(name, months);
}
for (const [month, name] of MONTHS.entries()) {
  errorLine(
    `  ${name}`,
    anywhere.filter((pair) => pair.month === month),
  );
}

title("Is the uncertainty honest? Left-out months within one and two of their own standard deviations, %");
for (const [continent, on] of Object.entries(CONTINENTS)) {
  for (const [index, quarter] of QUARTERS.entries()) {
    const months = ofQuarter(anywhere, index, on);
    console.log(
      `${`${continent}, ${quarter}`.padEnd(32)}${cell(String(months.length))}${cell(withinPct(months, 1).toFixed(0))}${cell(withinPct(months, 2).toFixed(0))}`,
    );
  }
}
const air = airErrors(anywhere);
console.log(
  `\nAir of a left-out place: lowest ${air.lowK.toFixed(1)} K (mean ${signed(air.lowBiasK)}), highest ${air.highK.toFixed(1)} K (mean ${signed(air.highBiasK)})`,
);
