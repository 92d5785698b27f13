/**
 * Makes the world grids and the tables of 30-year normals beside this file from the raw open data. Run by hand; the output is
 * committed:
 *
 *   PANEL_SEASON_DATASETS=/folder/of/the/raw/files npx tsx data/climates/build-world.ts
 *
 * Each source makes a file of its own, so that one can be taken out again. The raw files are those that the sidecars name.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";
import { group } from "d3";
import Papa from "papaparse";
import { monthSuns } from "../../lib/sky/climate/month-sun.ts";
import { distanceKm } from "../../lib/sky/climate/spot.ts";

const raw = process.env.PANEL_SEASON_DATASETS;
if (raw === undefined) throw new Error("PANEL_SEASON_DATASETS must name the folder of the raw data sets");
const here = fileURLToPath(new URL(".", import.meta.url));

type Row = Readonly<Record<string, string>>;

const read = (file: string): readonly Row[] => {
  const bytes = readFileSync(join(raw, file));
  const text = (file.endsWith(".gz") ? gunzipSync(bytes) : bytes).toString("utf8");
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
};

const write = (file: string, rows: readonly Readonly<Record<string, string>>[]): void => {
  writeFileSync(join(here, file), `${Papa.unparse([...rows], { newline: "\r\n" })}\r\n`);
  console.log(`${file}: ${rows.length} rows`);
};

const MONTHS = Array.from({ length: 12 }, (_, index) => index);
const two = (month: number): string => String(month + 1).padStart(2, "0");
const twelve = (row: Row, before: string): number[] =>
  MONTHS.map((month) => {
    const cell = row[`${before}${two(month)}`];
    return cell === undefined || cell === "" ? Number.NaN : Number(cell);
  });
const monthsOf = (before: string, after: string, values: readonly number[], digits: number) =>
  Object.fromEntries(
    values.map((value, month) => [
      `${before}_${two(month)}_${after}`,
      Number.isFinite(value) ? String(Number(value.toFixed(digits))) : "",
    ]),
  );
const spotOf = (row: Row) => ({
  latitudeDeg: Number(row.latitude_deg),
  longitudeDeg: Number(row.longitude_deg),
});

// The raw field's cells, 6 x 32 x 32 of a cubed sphere.
const cells = read("world_radiation_grid/core_forcing_cs32_monthly.csv.gz").map((row) => {
  const spot = spotOf(row);
  const suns = monthSuns(spot.latitudeDeg);
  return {
    ...spot,
    // In twilight the field's rounding to 0.1 W/m2 tells nothing.
    clearness: twelve(row, "sw_down_W_m2_").map((watts, month) => {
      const top = suns[month].extraterrestrialKWhM2;
      return top > 0.3 ? (watts * 24) / 1000 / top : Number.NaN;
    }),
    air: twelve(row, "temp_air_degC_"),
    wind: twelve(row, "wind_10m_m_s_"),
  };
});

/** Inverse-distance mean of the four nearest cells; the nearest lit month stands in for dark ones. */
const gridded = (stepDeg: number, of: (cell: (typeof cells)[number]) => readonly number[]) => {
  const latitudes = Array.from({ length: 180 / stepDeg }, (_, row) => -90 + stepDeg * (row + 0.5));
  const longitudes = Array.from({ length: 360 / stepDeg }, (_, column) => -180 + stepDeg * (column + 0.5));
  const values = latitudes.map((latitudeDeg) =>
    longitudes.map((longitudeDeg) => {
      const near = cells
        .filter((cell) => Math.abs(cell.latitudeDeg - latitudeDeg) < 8)
        .map((cell) => ({ cell, km: Math.max(1, distanceKm(cell, { latitudeDeg, longitudeDeg })) }))
        .sort((a, b) => a.km - b.km)
        .slice(0, 4);
      const months = MONTHS.map((month) => {
        let [sum, weights] = [0, 0];
        for (const { cell, km } of near) {
          const value = of(cell)[month] ?? Number.NaN;
          if (!Number.isFinite(value)) continue;
          sum += value / km;
          weights += 1 / km;
        }
        return sum / weights;
      });
      return months.map((value, month) => {
        for (let away = 0; away <= 6; away++) {
          for (const other of [(month + away) % 12, (month + 12 - away) % 12]) {
            if (Number.isFinite(months[other])) return months[other] ?? value;
          }
        }
        return value;
      });
    }),
  );
  return { latitudes, longitudes, values };
};

const gridRows = (
  quantity: string,
  stepDeg: number,
  scale: number,
  of: (cell: (typeof cells)[number]) => readonly number[],
) => {
  const { latitudes, longitudes, values } = gridded(stepDeg, of);
  return MONTHS.flatMap((month) =>
    latitudes.map((latitudeDeg, row) => ({
      quantity,
      month: String(month + 1),
      latitude_deg: String(latitudeDeg),
      ...Object.fromEntries(
        longitudes.map((longitudeDeg, column) => [
          `at_${longitudeDeg}`,
          String(Math.round((values[row]?.[column]?.[month] ?? Number.NaN) / scale)),
        ]),
      ),
    })),
  );
};

write(
  "world-clearness.csv",
  gridRows("clearness_percent", 3, 0.01, ({ clearness }) => clearness),
);
write("world-air.csv", [
  ...gridRows("air_degC", 9, 1, ({ air }) => air),
  ...gridRows("wind_half_m_s", 9, 0.5, ({ wind }) => wind),
]);

/** `MAASTRICHT_AACHEN_AP` in ordinary writing: Maastricht Aachen Airport. */
const ordinary = (name: string): string => {
  const words = name.replaceAll("_", " ").trim();
  const written = /\p{Ll}/u.test(words)
    ? words
    : words.toLowerCase().replace(/(^|[^\p{L}'])\p{L}/gu, (first) => first.toUpperCase());
  return written.replace(/\b(?:Ap|Aero|Aeropuerto)$/u, "Airport");
};

const head = (row: Row, source: string) => ({
  id: `${source === "normal" ? "normal" : "wmo"}-${row.wmo_id}`,
  place: ordinary(row.name ?? ""),
  country: ordinary(row.country ?? "").replace(/^The Netherlands$/u, "Netherlands"),
  latitude_deg: String(Number(Number(row.latitude_deg).toFixed(2))),
  longitude_deg: String(Number(Number(row.longitude_deg).toFixed(2))),
  elevation_m: row.elevation_m ?? "",
  source,
});

// Where the monthly reports tell a place's sunshine already, its normal is left out: the two agree within 5 %.
const reported = new Set(read("E_world_sunshine_monthly.csv").map(({ id }) => id));
write(
  "sunshine-normals.csv",
  read("E_wmo_normals_sunshine_1991-2020.csv")
    .filter(({ wmo_id }) => !reported.has(wmo_id))
    .map((row) => ({
      ...head(row, "sunshine"),
      ...monthsOf("sunshine", "h", twelve(row, "sun_h_"), 0),
      ...monthsOf("air_mean", "degC", twelve(row, "temp_mean_degC_"), 0),
    })),
);
write(
  "radiation-normals.csv",
  read("E_wmo_normals_radiation_1991-2020.csv").map((row, index, all) => ({
    ...head(row, "normal"),
    // Two places share a number there.
    ...(all.findIndex(({ wmo_id }) => wmo_id === row.wmo_id) === index
      ? {}
      : { id: `normal-${row.wmo_id}-2` }),
    ...monthsOf("global", "kWh_m2_day", twelve(row, "ghi_kWh_m2_day_"), 2),
  })),
);

/** Dew point over water, degC, of a vapour pressure in hPa: the inverse of FAO-56 eq. 11 (Tetens 1930). */
const dewPointC = (vapourHPa: number): number => {
  const log = Math.log(vapourHPa / 6.108);
  return (237.3 * log) / (17.27 - log);
};

const airRow = (row: Row, lows: readonly number[], highs: readonly number[], dews: readonly number[]) => ({
  latitude_deg: String(Number(Number(row.latitude_deg).toFixed(2))),
  longitude_deg: String(Number(Number(row.longitude_deg).toFixed(2))),
  elevation_m: String(Math.round(Number(row.elevation_m))),
  ...monthsOf("low", "degC", lows, 0),
  ...monthsOf("high", "degC", highs, 0),
  ...monthsOf("dew", "degC", dews, 0),
});

/** Places that add something: none kept lies within 90 km and 250 m of height. */
const thinned = (rows: readonly Row[]): readonly Row[] => {
  const kept: Row[] = [];
  for (const row of rows) {
    const like = kept.some(
      (other) =>
        Math.abs(Number(other.latitude_deg) - Number(row.latitude_deg)) < 0.9 &&
        distanceKm(spotOf(other), spotOf(row)) < 90 &&
        Math.abs(Number(other.elevation_m) - Number(row.elevation_m)) < 250,
    );
    if (!like) kept.push(row);
  }
  return kept;
};

const byPlace = (a: Row, b: Row): number =>
  Math.floor(Number(a.latitude_deg) / 5) - Math.floor(Number(b.latitude_deg) / 5) ||
  Number(a.longitude_deg) - Number(b.longitude_deg);

write(
  "air-normals.csv",
  thinned(
    read("E_wmo_normals_temperature_vapour_1991-2020.csv.gz").filter(({ elevation_m }) => elevation_m !== ""),
  )
    .toSorted(byPlace)
    .map((row) =>
      airRow(
        row,
        twelve(row, "temp_min_degC_"),
        twelve(row, "temp_max_degC_"),
        twelve(row, "vapour_pressure_hPa_").map(dewPointC),
      ),
    ),
);

const typical = group(read("E_tmy3_water_aerosol_monthly_117stations.csv"), ({ station_id }) => station_id);
write(
  "air-typical-years.csv",
  [...typical.values()]
    .map((rows) => rows.toSorted((a, b) => Number(a.month) - Number(b.month)))
    .flatMap((rows) => {
      const [first] = rows;
      const of = (column: string): number[] =>
        rows.map((row) => (row[column] === "" ? Number.NaN : Number(row[column])));
      if (first === undefined || rows.length !== 12 || of("dew_point_mean_degC").some(Number.isNaN))
        return [];
      return [
        {
          latitude_deg: String(Number(first.latitude_deg)),
          longitude_deg: String(Number(first.longitude_deg)),
          elevation_m: first.elevation_m ?? "",
          ...monthsOf("mean", "degC", of("temp_mean_degC"), 0),
          ...monthsOf("dew", "degC", of("dew_point_mean_degC"), 0),
          ...monthsOf("haze", "broadband", of("aod_broadband_mean"), 3),
        },
      ];
    }),
);
