/** Whole years by the hour: what each station's own hours bring a tilted plane, and its days. */

import { weatherSkyColumns } from "../../../lib/sky/weather/lay/weather-columns.ts";
import type { IntervalSeries } from "../../../lib/sky/weather/read/series.ts";
import type { Aim } from "../../../lib/units/angle.ts";
import { readMeasured } from "../measured/read.ts";
import { monthSums, monthsOnPlanes, type Place, type YearOver, yearOver } from "./place.ts";

/** A station with a year of light. */
export interface HourlyYear extends Place {
  /** File under `measured/` or `data/weather/`. */
  readonly file: string;
  readonly intervalMinutes: number;
  /** Column of global light. */
  readonly column: string;
  /** What the light is. */
  readonly kind: "typical year" | "satellite year" | "measured year";
  /** Stamps name the middle of their interval rather than its end. */
  readonly centred?: true;
}

const station = (
  name: string,
  file: string,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationM: number,
  year: number,
  rest: Partial<HourlyYear> = {},
): HourlyYear => ({
  name,
  file,
  latitudeDeg,
  longitudeDeg,
  elevationM,
  year,
  ground: 0.2,
  intervalMinutes: 60,
  column: "ghi_W_m2",
  kind: "typical year",
  ...rest,
});

/** Snow from October to May and a bare wet tundra between (common knowledge of the Arctic coast, no source). */
const ARCTIC_GROUND = [0.8, 0.8, 0.8, 0.8, 0.75, 0.4, 0.2, 0.2, 0.2, 0.6, 0.8, 0.8];

/** Coordinates and heights from the sidecars. */
export const TYPICAL_YEARS: readonly HourlyYear[] = [
  station("Barrow", "barrow-typical-year.csv.gz", 71.286, -156.767, 10, 2001, { ground: ARCTIC_GROUND }),
  station("Renton", "renton-typical-year.csv.gz", 47.48, -122.22, 10, 2001),
  station("Denver", "../../../data/weather/denver-typical-year.csv", 39.83, -104.65, 1650, 2001),
  station("Las Vegas", "las-vegas-typical-year.csv.gz", 36.083, -115.15, 648, 2001),
  station("Guam", "guam-typical-year.csv.gz", 13.483, 144.8, 77, 2001),
  station("Bremerhaven", "../../../data/weather/north-sea-coast-reference-year.csv", 53.559, 8.587, 3, 2001),
];

const satellite = { kind: "satellite year", intervalMinutes: 15, centred: true } as const;

/** Modelled from satellite images; sums read low against the ground, and winter beam is strong for so little light. */
export const SATELLITE_YEARS: readonly HourlyYear[] = [
  station("Athens", "athens-satellite-2019.csv.gz", 37.98, 23.72, 100, 2019, satellite),
  station("Oslo", "oslo-satellite-2019.csv.gz", 59.93, 10.74, 118, 2019, satellite),
];

const surfrad = (name: string, latitudeDeg: number, longitudeDeg: number, elevationM: number): HourlyYear =>
  station(name, "surfrad-2018.csv.gz", latitudeDeg, longitudeDeg, elevationM, 2018, {
    column: `ghi_${name.toLowerCase().replace(", ", "_").replaceAll(" ", "_")}_W_m2`,
    kind: "measured year",
  });

/** Global light measured through a whole year. */
export const MEASURED_YEARS: readonly HourlyYear[] = [
  station("Kongens Lyngby", "lyngby-2016.csv.gz", 55.791, 12.525, 50, 2016, {
    intervalMinutes: 10,
    kind: "measured year",
  }),
  station("Aachen", "aachen-2021.csv.gz", 50.798, 6.024, 231, 2021, {
    intervalMinutes: 10,
    kind: "measured year",
  }),
  station("Heverlee", "heverlee-2021.csv.gz", 50.86, 4.679, 28, 2021, { kind: "measured year" }),
  surfrad("Bondville, IL", 40.052, -88.373, 230),
  surfrad("Boulder, CO", 40.125, -105.237, 1689),
  surfrad("Desert Rock, NV", 36.624, -116.019, 1007),
  surfrad("Fort Peck, MT", 48.308, -105.102, 634),
  surfrad("Goodwin Creek, MS", 34.255, -89.873, 98),
];

/** Twilight days tell nothing of cloud. */
const LEAST_TOP_KWH_M2 = 0.1;
const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** Start of the interval that a stamp names. */
const startOf = (stampMs: number, { intervalMinutes, centred }: HourlyYear): number =>
  stampMs - intervalMinutes * MINUTE_MS * (centred === true ? 0.5 : 1);

const optional = (series: ReturnType<typeof readMeasured>, header: string): Float64Array | null => {
  try {
    return series.column(header);
  } catch {
    return null;
  }
};

/** A station's light on an even grid, dark where the file leaves the night out. */
const intervalSeries = (place: HourlyYear): IntervalSeries => {
  const file = readMeasured(place.file);
  const starts = file.stampMs.map((stamp) => startOf(stamp, place));
  const intervalMs = place.intervalMinutes * MINUTE_MS;
  // Two days more on either side: the year of solar days does not end with that of the clock.
  const startMs = Date.UTC(place.year, 0, 1) - 2 * DAY_MS + (starts[0] % intervalMs);
  const length = Math.ceil((370 * DAY_MS) / intervalMs);
  const yearMs = Date.UTC(place.year + 1, 0, 1) - Date.UTC(place.year, 0, 1);
  const laid = (values: Float64Array): Float64Array => {
    const out = new Float64Array(length);
    // Typical years are rings: what lies beyond one end belongs to the other.
    for (const turn of [-yearMs, yearMs, 0]) {
      for (const [row, start] of starts.entries()) {
        const index = Math.round((start + turn - startMs) / intervalMs);
        if (index >= 0 && index < length) out[index] = values[row];
      }
    }
    return out;
  };
  const beamNormal = optional(file, "dni_W_m2");
  const beamHorizontal = optional(file, "beam_horizontal_W_m2");
  const diffuse = optional(file, "dhi_W_m2");
  return {
    kind: "intervals",
    intervalMinutes: place.intervalMinutes,
    startMs,
    length,
    global: laid(file.column(place.column)),
    ...(beamNormal === null ? {} : { beamNormal: laid(beamNormal) }),
    ...(beamHorizontal === null ? {} : { beamHorizontal: laid(beamHorizontal) }),
    ...(diffuse === null ? {} : { diffuse: laid(diffuse) }),
    mending: { filled: 0, zeroed: 0, ignoredColumns: [], remarks: [] },
  };
};

/** A station's year: its own hours on the level and on planes, kWh/m2 by month. */
export const hoursOnPlanes = (place: HourlyYear, aims: readonly Aim[]) => {
  const over = yearOver(place);
  const sky = weatherSkyColumns(over.sun, intervalSeries(place), over.clear, {
    latitudeDeg: place.latitudeDeg,
  });
  return { over, sky, global: monthSums(over.sun, sky.global), planes: monthsOnPlanes(over.sun, sky, aims) };
};

/** One day at a station. */
export interface StationDay {
  /** Index of the day in its year. */
  readonly day: number;
  readonly month: number;
  /** Global light of the day, of the clear day, and above the air; kWh/m2. */
  readonly global: number;
  readonly clear: number;
  readonly top: number;
}

/** Days of a station with light worth the name above the air, in order; days without any reading left out. */
export const stationDays = (place: HourlyYear): readonly StationDay[] => {
  const { sun, clear }: YearOver = yearOver(place);
  const sky = weatherSkyColumns(sun, intervalSeries(place), clear, { latitudeDeg: place.latitudeDeg });
  return sun.days.flatMap(({ month, first, end }, day): StationDay[] => {
    let [global, clearSum, top] = [0, 0, 0];
    for (let row = first; row < end; row++) {
      const kilohours = sun.hours[row] / 1000;
      global += sky.global[row] * kilohours;
      clearSum += clear.global[row] * kilohours;
      top += clear.extraterrestrial[row] * sun.up[row] * kilohours;
    }
    return top > LEAST_TOP_KWH_M2 && global > 0 ? [{ day, month, global, clear: clearSum, top }] : [];
  });
};
