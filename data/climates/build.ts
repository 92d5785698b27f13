/**
 * Makes the climate tables beside this file from the raw open data. Run by hand; the output is committed:
 *
 *   PANEL_SEASON_DATASETS=/folder/of/the/raw/files npx tsx data/climates/build.ts
 *
 * The raw files are the open data sets that the sidecars name. Columns and rounding are ours.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";
import Papa from "papaparse";
import { type MeasuredMemory, measuredDayMemory } from "../../lib/sky/climate/day-memory.ts";
import { MEAN_SHARE, warmthAt } from "../../lib/sky/climate/day-temperature.ts";
import { dailyExtraterrestrial, extraterrestrialNormal } from "../../lib/sky/extraterrestrial.ts";
import { spencerDeclinationDeg } from "../../lib/sun/orbit.ts";

const raw = process.env.PANEL_SEASON_DATASETS;
if (raw === undefined) throw new Error("PANEL_SEASON_DATASETS must name the folder of the raw data sets");
const here = fileURLToPath(new URL(".", import.meta.url));

type Row = Readonly<Record<string, string>>;

const read = (file: string): readonly Row[] => {
  const bytes = readFileSync(join(raw, file));
  const text = (file.endsWith(".gz") ? gunzipSync(bytes) : bytes).toString("utf8");
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
};

const MONTHS = Array.from({ length: 12 }, (_, index) => index);
const two = (month: number): string => String(month + 1).padStart(2, "0");
const round = (value: number, digits: number): string =>
  Number.isFinite(value) ? String(Number(value.toFixed(digits))) : "";
const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

interface Station {
  readonly id: string;
  readonly place: string;
  readonly country: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevation: number;
  readonly source: string;
  readonly global: readonly number[];
  readonly airLow: readonly number[];
  readonly airHigh: readonly number[];
  readonly wind: readonly number[];
  /** `null` where only monthly means are at hand. */
  readonly memory: MeasuredMemory | null;
}

/** What a station is called and where it lies. */
type About = Omit<Station, "global" | "airLow" | "airHigh" | "wind" | "memory">;

/** Names that come in capitals, put into ordinary writing; the abbreviations of the trade are spelt out. */
const WORDS: Readonly<Record<string, string>> = {
  arpt: "Airport",
  ap: "Airport",
  apt: "Airport",
  arp: "Airport",
  ai: "Airport",
  intl: "International",
  "int'l": "International",
  int: "International",
  muni: "Municipal",
  municip: "Municipal",
  reg: "Regional",
  rgnl: "Regional",
  rgn: "Regional",
  fld: "Field",
  fiel: "Field",
  fd: "Field",
  co: "County",
  "co.": "County",
  cnty: "County",
  mem: "Memorial",
  cnyn: "Canyon",
  afb: "AFB",
  nas: "NAS",
  naf: "NAF",
  mcas: "MCAS",
  ns: "NS",
  nf: "NF",
  angb: "ANGB",
  faa: "FAA",
  wfo: "WFO",
  usaf: "USAF",
  naas: "NAAS",
  ky: "KY",
  wv: "WV",
};

const ordinaryName = (name: string): string =>
  name
    .replace(/\s*[([](?:awos|uo|[a-z ]+ - (?:uo|arm))[)\]]/i, "")
    .replace(/\(/g, " (")
    .toLowerCase()
    .split(/\s+/)
    .map(
      (word) =>
        WORDS[word] ??
        word.replace(/(^|[-/.])([a-z])/g, (_, before, letter) => before + letter.toUpperCase()),
    )
    .join(" ")
    .replace("/", " / ")
    .trim();

/**
 * Mean daily low and high from the mean of all hours and the mean of the daylight hours, which is all the monthly
 * tables give: the span that makes the published daily curve meet both. Day length from the middle of the month.
 */
const lowAndHigh = (meanC: number, daylightC: number, latitude: number, month: number): [number, number] => {
  const declination = ((23.45 * Math.PI) / 180) * Math.sin((2 * Math.PI * (284 + 15 + 30.4 * month)) / 365);
  const sunset = Math.acos(
    Math.max(-1, Math.min(1, -Math.tan((latitude * Math.PI) / 180) * Math.tan(declination))),
  );
  const half = (sunset * 12) / Math.PI;
  const steps = 96;
  const daylight = mean(
    Array.from({ length: steps }, (_, i) => warmthAt(12 - half + (2 * half * (i + 0.5)) / steps)),
  );
  const span = Math.max(2, (daylightC - meanC) / (daylight - MEAN_SHARE));
  return [meanC - MEAN_SHARE * span, meanC + (1 - MEAN_SHARE) * span];
};

/** Twelve means of a monthly table with one row a month. */
const fromMonths = (rows: readonly Row[], about: About, windName: string): Station => {
  const at = (month: number, column: string): number => Number(rows[month]?.[column]);
  const air = MONTHS.map((m) =>
    lowAndHigh(at(m, "temp_mean_degC"), at(m, "temp_daylight_mean_degC"), about.latitude, m),
  );
  return {
    ...about,
    global: MONTHS.map((m) => at(m, "ghi_kWh_m2_day")),
    airLow: air.map(([low]) => low),
    airHigh: air.map(([, high]) => high),
    wind: MONTHS.map((m) => at(m, windName)),
    memory: null,
  };
};

/** Days with less light above the air (kWh/m2) are twilight: their clearness tells nothing of cloud. */
const TWILIGHT_KWH_M2 = 0.1;

/** Day-to-day memory of dated daily sums of global light, kWh/m2. */
const memoryOf = (
  days: readonly { readonly date: string; readonly globalKWhM2: number }[],
  latitude: number,
): MeasuredMemory => {
  const cleared = days.flatMap(({ date, globalKWhM2 }) => {
    const dayMs = Date.parse(date);
    const dayOfYear = 1 + (dayMs - Date.UTC(new Date(dayMs).getUTCFullYear(), 0, 1)) / 86_400_000;
    const normal = extraterrestrialNormal(dayOfYear);
    const above = dailyExtraterrestrial(latitude, spencerDeclinationDeg(dayOfYear), normal) / 1000;
    if (above < TWILIGHT_KWH_M2) return [];
    const month = Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7));
    return [{ day: dayMs / 86_400_000, month, clearness: globalKWhM2 / above }];
  });
  return measuredDayMemory(cleared);
};

/** Twelve means of a file of readings, days cut in the place's own sun time; stamps end their interval. */
const fromReadings = (
  rows: readonly Row[],
  about: About,
  columns: { readonly global: string; readonly air?: string; readonly wind?: string },
): Station => {
  const stepMs = Date.parse(rows[1]?.time_utc ?? "") - Date.parse(rows[0]?.time_utc ?? "");
  interface Day {
    date: string;
    month: number;
    global: number[];
    air: number[];
    wind: number[];
  }
  const days = new Map<string, Day>();
  for (const row of rows) {
    const local = new Date(Date.parse(row.time_utc ?? "") - stepMs / 2 + (about.longitude / 15) * 3_600_000);
    const key = local.toISOString().slice(0, 10);
    const day = days.get(key) ?? { date: key, month: local.getUTCMonth(), global: [], air: [], wind: [] };
    days.set(key, day);
    const put = (list: number[], column: string | undefined): void => {
      const text = column === undefined ? "" : (row[column] ?? "");
      if (text !== "") list.push(Number(text));
    };
    put(day.global, columns.global);
    put(day.air, columns.air);
    put(day.wind, columns.wind);
  }
  // A day needs 95 % of its readings; the ends of a year cut in another zone fall away here.
  const full = [...days.values()].filter((day) => day.global.length >= 0.95 * (86_400_000 / stepMs));
  const monthly = (of: (day: Day) => number): number[] =>
    MONTHS.map((month) => mean(full.filter((day) => day.month === month).map(of)));
  return {
    ...about,
    global: monthly((day) => (mean(day.global) * 24) / 1000),
    airLow: monthly((day) => (day.air.length > 0 ? Math.min(...day.air) : Number.NaN)),
    airHigh: monthly((day) => (day.air.length > 0 ? Math.max(...day.air) : Number.NaN)),
    wind: monthly((day) => (day.wind.length > 0 ? mean(day.wind) : Number.NaN)),
    memory: memoryOf(
      full.map(({ date, global }) => ({ date, globalKWhM2: (mean(global) * 24) / 1000 })),
      about.latitude,
    ),
  };
};

const writeTable = (file: string, records: readonly Readonly<Record<string, string>>[]): void => {
  writeFileSync(join(here, file), `${Papa.unparse([...records], { newline: "\r\n" })}\r\n`);
  console.log(`${file}: ${records.length} stations`);
};

const head = (station: About): Record<string, string> => ({
  id: station.id,
  place: station.place,
  country: station.country,
  latitude_deg: round(station.latitude, 3),
  longitude_deg: round(station.longitude, 3),
  elevation_m: round(station.elevation, 0),
  source: station.source,
});

const monthsOf = (
  prefix: string,
  unit: string,
  values: readonly number[],
  digits: number,
): Record<string, string> =>
  Object.fromEntries(
    MONTHS.map((m) => [`${prefix}_${two(m)}_${unit}`, round(values[m] ?? Number.NaN, digits)]),
  );

const radiationRecord = (station: Station): Record<string, string> => ({
  ...head(station),
  wind_height_m: station.wind.some(Number.isFinite) ? "10" : "",
  day_memory: station.memory === null ? "" : round(station.memory.correlation, 2),
  day_memory_years: station.memory === null ? "" : round(station.memory.years, 1),
  ...monthsOf("global", "kWh_m2_day", station.global, 2),
  ...monthsOf("air_low", "degC", station.airLow, 1),
  ...monthsOf("air_high", "degC", station.airHigh, 1),
  ...monthsOf("wind", "m_s", station.wind, 1),
});

const groupBy = (rows: readonly Row[], column: string): ReadonlyMap<string, readonly Row[]> => {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = row[column] ?? "";
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
};

const american = [...groupBy(read("E_tmy3_monthly_253stations.csv"), "station_id").values()].map((rows) => {
  const first = rows[0] ?? {};
  const place = ordinaryName(first.name ?? "");
  return fromMonths(
    rows,
    {
      id: `tmy3-${first.station_id}`,
      place: `${place}, ${first.state}`,
      country: first.state === "GU" ? "Guam" : "United States",
      latitude: Number(first.latitude_deg),
      longitude: Number(first.longitude_deg),
      elevation: Number(first.elevation_m),
      source: "typical year",
    },
    "wind_speed_mean_m_s",
  );
});

const german = [...groupBy(read("E_try2015_monthly_10regions.csv"), "region").values()].map((rows) => {
  const first = rows[0] ?? {};
  return fromMonths(
    rows,
    {
      id: (first.region ?? "").toLowerCase(),
      place: first.name ?? "",
      country: "Germany",
      latitude: Number(first.latitude_deg),
      longitude: Number(first.longitude_deg),
      elevation: Number(first.elevation_m),
      source: "typical year",
    },
    "wind_speed_10m_mean_m_s",
  );
});

const weatherColumns = { global: "ghi_W_m2", air: "temp_air_degC", wind: "wind_speed_m_s" };

const hourly = ([file, id, place, country, latitude, longitude, elevation, source]: readonly [
  string,
  string,
  string,
  string,
  number,
  number,
  number,
  string,
]): Station =>
  fromReadings(read(file), { id, place, country, latitude, longitude, elevation, source }, weatherColumns);

const hourlyStations = (
  [
    [
      "D_tmy3_barrow_ak_hourly.csv",
      "tmy3-700260",
      "Barrow, AK",
      "United States",
      71.286,
      -156.767,
      10,
      "typical year",
    ],
    [
      "D_tmy3_renton_wa_hourly.csv",
      "tmy3-727934",
      "Renton, WA",
      "United States",
      47.48,
      -122.22,
      10,
      "typical year",
    ],
    [
      "D_tmy3_denver_co_hourly.csv",
      "tmy3-725650",
      "Denver, CO",
      "United States",
      39.83,
      -104.65,
      1650,
      "typical year",
    ],
    [
      "D_tmy3_lasvegas_nv_hourly.csv",
      "tmy3-723860",
      "Las Vegas, NV",
      "United States",
      36.083,
      -115.15,
      648,
      "typical year",
    ],
    ["D_tmy3_guam_hourly.csv", "tmy3-912120", "Guam", "Guam", 13.483, 144.8, 77, "typical year"],
    [
      "D_try2015_bremerhaven_hourly.csv",
      "try-01",
      "Bremerhaven",
      "Germany",
      53.559,
      8.587,
      3,
      "typical year",
    ],
    [
      "C_lyngby_dtu_2016_10min.csv.gz",
      "lyngby-2016",
      "Kongens Lyngby",
      "Denmark",
      55.791,
      12.525,
      50,
      "measured year",
    ],
    [
      "C_aachen_dwd_2021_10min.csv.gz",
      "aachen-2021",
      "Aachen",
      "Germany",
      50.798,
      6.024,
      231,
      "measured year",
    ],
    [
      "C_heverlee_kuleuven_2021_hourly.csv",
      "heverlee-2021",
      "Heverlee",
      "Belgium",
      50.86,
      4.679,
      28,
      "measured year",
    ],
  ] as const
).map(hourly);

const surfradRows = read("C_surfrad_2018_ghi_hourly_5sites.csv");
const surfrad = (
  [
    ["bondville_il", "Bondville, IL", 40.052, -88.373, 230],
    ["boulder_co", "Boulder, CO", 40.125, -105.237, 1689],
    ["desert_rock_nv", "Desert Rock, NV", 36.624, -116.019, 1007],
    ["fort_peck_mt", "Fort Peck, MT", 48.308, -105.102, 634],
    ["goodwin_creek_ms", "Goodwin Creek, MS", 34.255, -89.873, 98],
  ] as const
).map(([column, place, latitude, longitude, elevation]) =>
  fromReadings(
    surfradRows,
    {
      id: `${column.replaceAll("_", "-")}-2018`,
      place,
      country: "United States",
      latitude,
      longitude,
      elevation,
      source: "measured year",
    },
    { global: `ghi_${column}_W_m2` },
  ),
);

// Where a station has hours as well, its own daily lows and highs replace those from the curve.
const byHours = new Set(hourlyStations.map((station) => station.id));
writeTable(
  "radiation-stations.csv",
  [...american, ...german]
    .filter((station) => !byHours.has(station.id))
    .concat(hourlyStations, surfrad)
    .map(radiationRecord),
);

/** Whole hours and degrees: recorders differ by 5 to 10 %, and a month's mean by more than half a degree from year to year. */
const whole = (cell: string | undefined): string =>
  cell === undefined || cell === "" ? "" : String(Math.round(Number(cell)) || 0);

const sunshine = (file: string, prefix: string): Record<string, string>[] =>
  read(file).map((row) => ({
    ...head({
      id: `${prefix}${row.id}`,
      place: row.name ?? "",
      country: row.country ?? "",
      latitude: Number(row.latitude_deg),
      longitude: Number(row.longitude_deg),
      elevation: row.elevation_m === "" ? Number.NaN : Number(row.elevation_m),
      source: "sunshine",
    }),
    years: row.years_min ?? "",
    ...Object.fromEntries(MONTHS.map((m) => [`sunshine_${two(m)}_h`, whole(row[`sun_h_${two(m)}`])])),
    ...Object.fromEntries(
      MONTHS.map((m) => [`air_mean_${two(m)}_degC`, whole(row[`temp_mean_degC_${two(m)}`])]),
    ),
  }));

writeTable("sunshine-stations.csv", sunshine("E_world_sunshine_monthly.csv", "wmo-"));
writeTable("sunshine-stations-share-alike.csv", sunshine("E_world_sunshine_monthly_extra_ccbysa.csv", ""));
