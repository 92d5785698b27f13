import { mean, sum } from "d3";
import { totalWh } from "../../lib/season/light/day-sums.ts";
import { panelUnits } from "../../lib/season/light/panel-unit.ts";
import { seasonClearSky, seasonSun } from "../../lib/season/light/season-skies.ts";
import { seasonYield } from "../../lib/season/light/season-yield.ts";
import type { Setting } from "../../lib/season/light/settings.ts";
import { readySkies, type SeasonSkies } from "../../lib/season/light/skies.ts";
import { demoYear } from "./demo-year.ts";
import { measure } from "./measure.ts";

/** Slope of log cost against log size, by least squares: 1 is cost in step with size. */
const slope = (sizes: readonly number[], costs: readonly number[]): number => {
  const [x, y] = [sizes.map(Math.log), costs.map(Math.log)];
  const [meanX = 0, meanY = 0] = [mean(x), mean(y)];
  return sum(x, (value, i) => (value - meanX) * (y[i] - meanY)) / sum(x, (value) => (value - meanX) ** 2);
};

const settings = (count: number): readonly Setting[] =>
  Array.from({ length: count }, (_, index) => ({
    name: `${index}`,
    legMm: null,
    tiltDeg: (index * 90) / count,
    bearingDeg: 180,
  }));

interface Case {
  readonly size: number;
  readonly skies: SeasonSkies;
  readonly settings: readonly Setting[];
}

const skiesOf = (from: string, to: string, stepMinutes: 5 | 10 | 20 | 30, copies = 0): SeasonSkies => {
  const plan = demoYear({ season: { from, to, stepMinutes } });
  const sun = seasonSun(plan);
  const clear = seasonClearSky(plan, sun);
  return readySkies(
    sun,
    clear,
    Array.from({ length: copies }, () => ({ weight: 1 / copies, sky: clear })),
  );
};

const growthLine = (against: string, cases: readonly Case[]): string => {
  const units = panelUnits(demoYear().panels);
  const runs = measure(
    cases.map(({ size, skies, settings: ways }) => ({
      name: `${size}`,
      run: () => sum(seasonYield(skies, units, ways).settings, ({ clearWh }) => totalWh(clearWh)),
    })),
    15,
    5,
  );
  const grows = slope(
    cases.map(({ size }) => size),
    runs.map(({ leastMs }) => leastMs),
  );
  const met = grows <= 1.05 ? "met" : "NOT MET";
  return `  growth against ${against.padEnd(43)}${grows.toFixed(2).padStart(9)}      (at most 1.05: ${met})`;
};

/** How the season's cost grows with days, steps, aims and skies. */
export const benchGrowth = (): readonly string[] => {
  const whole = skiesOf("2027-01-01", "2027-12-31", 10);
  // Days of the same length each, round the equinox, so that the rows grow as the days do.
  const spans = [
    ["2027-03-15", "2027-03-28", 14],
    ["2027-03-08", "2027-04-04", 28],
    ["2027-02-22", "2027-04-18", 56],
    ["2027-01-26", "2027-05-16", 111],
    ["2027-01-01", "2027-12-31", 365],
  ] as const;
  const bytes = sum(
    [whole.sun.timeMs, whole.sun.east, whole.sun.north, whole.sun.up, whole.sun.hours, whole.sun.day],
    ({ byteLength }) => byteLength,
  );
  const skyBytes = sum([...Object.values(whole.clear.sky), ...Object.values(whole.clear.dome)], (column) =>
    column instanceof Float64Array ? column.byteLength : 0,
  );
  return [
    "Growth of the season's cost (slope of log cost against log size):",
    growthLine(
      "days",
      spans.map(([from, to, size]) => ({ size, skies: skiesOf(from, to, 10), settings: settings(9) })),
    ),
    growthLine(
      "steps a day",
      ([30, 20, 10, 5] as const).map((step) => ({
        size: 1440 / step,
        skies: skiesOf("2027-01-01", "2027-12-31", step),
        settings: settings(3),
      })),
    ),
    growthLine(
      "aims",
      [4, 8, 16, 32, 64].map((size) => ({ size, skies: whole, settings: settings(size) })),
    ),
    growthLine(
      "seasons (skies)",
      [2, 4, 8, 16].map((copies) => ({
        size: copies + 1,
        skies: skiesOf("2027-01-01", "2027-12-31", 10, copies),
        settings: settings(3),
      })),
    ),
    `  memory of a year at 10 minutes: sun ${(bytes / 1e6).toFixed(1)} MB, each sky ${(skyBytes / 1e6).toFixed(1)} MB`,
  ];
};
