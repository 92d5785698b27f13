import { DIFFUSE_SPLITS, type DiffuseSplit, skySchema } from "../../../lib/plan/sky.ts";
import { domeColumns, martinRuizGlass, planeColumns } from "../../../lib/plane/index.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { readMeasured } from "../measured/read.ts";
import { absolute, type Comparison, nearZero } from "./comparison.ts";
import {
  type DailyError,
  dailyError,
  measuredSky,
  planeDays,
  type Station,
  splitDiffuse,
  sunAt,
  sunnySteps,
} from "./station.ts";

/** A station where global and diffuse light were measured side by side. */
interface SplitStation extends Station {
  readonly name: string;
  readonly file: string;
  /** Interval of the file, and of the means that the splits are given. */
  readonly fileMinutes: number;
  readonly intervalMinutes: number;
  /** What a shadow band's missing correction is worth; 1 for a tracked ball. */
  readonly diffuseFactor: number;
  /** Whether direct normal light was measured too, by a sensor that agrees with the other two. */
  readonly hasBeam: boolean;
}

const station = (
  name: string,
  file: string,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM: number,
  fileMinutes: number,
  { diffuseFactor = 1, hasBeam = false, intervalMinutes = fileMinutes } = {},
): SplitStation => ({
  name,
  file,
  latitudeDeg,
  longitudeDeg,
  fileMinutes,
  intervalMinutes,
  diffuseFactor,
  hasBeam,
  air: clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, elevationM),
  clearSkyAlbedo: 0.2,
});

/** Coordinates and heights from the sidecars. Holzkirchen's shadow band wants 1.09 (its sidecar says why). */
export const SPLIT_STATIONS: readonly SplitStation[] = [
  station("Lyngby 2016", "lyngby-2016.csv.gz", 55.79064, 12.52505, 50, 10, { hasBeam: true }),
  station("Lyngby 2016, hourly", "lyngby-2016.csv.gz", 55.79064, 12.52505, 50, 10, {
    hasBeam: true,
    intervalMinutes: 60,
  }),
  station("Aachen 2021", "aachen-2021.csv.gz", 50.798, 6.024, 231, 10),
  station("Aachen 2021, hourly", "aachen-2021.csv.gz", 50.798, 6.024, 231, 10, { intervalMinutes: 60 }),
  station("Heverlee 2021", "heverlee-2021.csv.gz", 50.8599, 4.679, 28, 60),
  station("Holzkirchen", "holzkirchen.csv", 47.874, 11.728, 690, 10, { diffuseFactor: 1.09 }),
  station("Golden, June 2012", "golden-2012-06.csv.gz", 39.742, -105.179, 1829, 60, { hasBeam: true }),
];

/** A panel set for spring and autumn: 45 degrees, facing south, where the split matters most. */
const PANEL = { tiltDeg: 45, bearingDeg: 180 } as const;
const ALBEDO = 0.2;
const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** What one split makes of a station's global light. */
export interface SplitResult {
  readonly steps: number;
  /** Diffuse light of single steps against the measured: mean difference and root-mean-square, % of the mean diffuse. */
  readonly diffuseBiasPct: number;
  readonly diffuseRmsePct: number;
  /** Day sums on the tilted panel against those from the measured diffuse. */
  readonly panel: DailyError;
}

/** Means over whole intervals by their end stamps; NaN where a step is missing. */
const meansBy = (stampMs: Float64Array, values: Float64Array, endsMs: Float64Array, place: SplitStation) => {
  const at = new Map(Array.from(stampMs, (stamp, i) => [stamp, i]));
  const parts = place.intervalMinutes / place.fileMinutes;
  return endsMs.map((endMs) => {
    let sum = 0;
    for (let part = 0; part < parts; part += 1) {
      sum += values[at.get(endMs - part * place.fileMinutes * MINUTE_MS) ?? -1] ?? Number.NaN;
    }
    return sum / parts;
  });
};

/** Measured light of a station with the sun above 3 degrees and both sensors reading. */
const measuredAt = (place: SplitStation) => {
  const series = readMeasured(place.file);
  const intervalMs = place.intervalMinutes * MINUTE_MS;
  const endsMs = series.stampMs.filter((stamp) => stamp % intervalMs === 0);
  const means = (header: string) => meansBy(series.stampMs, series.column(header), endsMs, place);
  // Stamps mark the end of the interval: the sun belongs to its middle.
  const middleMs = endsMs.map((ms) => ms - intervalMs / 2);
  const global = means("ghi_W_m2");
  const diffuse = means("dhi_W_m2").map((value) => Math.max(0, value) * place.diffuseFactor);
  const beam = place.hasBeam ? means("dni_W_m2") : diffuse.map(() => Number.NaN);
  const steps = sunnySteps(place, middleMs).filter((step) => global[step] >= 0 && diffuse[step] >= 0);
  const pick = (column: Float64Array): Float64Array => Float64Array.from(steps, (step) => column[step]);
  const timeMs = pick(middleMs);
  const solarDay = (ms: number): number => Math.floor(ms / DAY_MS + place.longitudeDeg / 360);
  const sun = {
    ...sunAt(place, timeMs),
    day: Uint16Array.from(timeMs, (ms) => solarDay(ms) - solarDay(timeMs[0])),
  };
  const light = pick(global);
  return {
    sun,
    level: { timeMs, global: light, albedo: new Float64Array(sun.length).fill(ALBEDO) },
    diffuse: pick(diffuse).map((value, i) => Math.min(light[i], value)),
    beam: pick(beam),
  };
};

const sumOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0);

/** Every split at a station, over the same steps. */
export const splitResults = (
  place: SplitStation,
  splits: readonly DiffuseSplit[],
): readonly (readonly [DiffuseSplit, SplitResult])[] => {
  const { sun, level, diffuse, beam } = measuredAt(place);
  const glass = martinRuizGlass();
  const bySubtraction = measuredSky(sun, level, diffuse);
  const measured = {
    ...bySubtraction,
    beamNormal: bySubtraction.beamNormal.map((value, i) => (beam[i] >= 0 ? beam[i] : value)),
  };
  const truth = planeColumns(sun, domeColumns(sun, measured, "perez"), PANEL, glass).plane;
  return splits.map((split) => {
    const computed = splitDiffuse(place, sun, level, split);
    const errors = computed.map((value, i) => value - diffuse[i]);
    const mean = sumOf(diffuse) / sun.length;
    return [
      split,
      {
        steps: sun.length,
        diffuseBiasPct: (100 * sumOf(errors)) / sun.length / mean,
        diffuseRmsePct: (100 * Math.sqrt(sumOf(errors.map((error) => error ** 2)) / sun.length)) / mean,
        panel: dailyError(planeDays(sun, measuredSky(sun, level, computed), PANEL, truth, "perez")),
      },
    ];
  });
};

/** Mean error of day sums on the panel over all stations, by split, least first: how the default is chosen. */
export const rankedSplits = (): readonly (readonly [DiffuseSplit, number])[] => {
  const byStation = SPLIT_STATIONS.map((place) => new Map(splitResults(place, DIFFUSE_SPLITS)));
  const meanOf = (split: DiffuseSplit): number =>
    byStation.reduce((sum, results) => sum + (results.get(split)?.panel.rmsePct ?? Number.NaN), 0) /
    byStation.length;
  return DIFFUSE_SPLITS.map((split) => [split, meanOf(split)] as const).toSorted(([, a], [, b]) => a - b);
};

const atLyngby = (split: DiffuseSplit): number =>
  splitResults(SPLIT_STATIONS[0], [split])[0][1].panel.rmsePct;

export const diffuseSplits: readonly Comparison[] = [
  {
    quantity: "day sums on a panel at 45 degrees from global alone, root-mean-square",
    reference: "measured at Lyngby 2016, 366 days; theirs: an independent program",
    unit: "% of the mean day",
    cause: "the clear air that one split looks at, and which low sun is left out",
    count: 2,
    cases: () => [
      absolute("Engerer 2015", atLyngby("engerer"), 3.8, 0.3),
      absolute("Erbs 1982", atLyngby("erbs"), 6.5, 0.3),
    ],
  },
  {
    quantity: "error of the default split above that of the best",
    reference: "measured at Lyngby, Aachen, Heverlee, Holzkirchen and Golden",
    unit: "points",
    cause: "the default is the best by measurement",
    identity: "our own ranking of our own splits",
    count: 1,
    cases: () => {
      const ranked = rankedSplits();
      const sky = skySchema.parse({ source: "weather", file: "any.csv" });
      const standard = ranked.find(([split]) => sky.source === "weather" && split === sky.diffuseSplit);
      return [nearZero("default", (standard?.[1] ?? Number.NaN) - ranked[0][1], 1e-9)];
    },
  },
];
