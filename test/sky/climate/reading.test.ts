import { describe, expect, test } from "vitest";
import { joinTables, parseClimateTable } from "../../../lib/sky/climate/table/climate-table.ts";
import { complaintsOf, counted, twelve } from "./stations.ts";

const MONTHS = Array.from({ length: 12 }, (_, month) => String(month + 1).padStart(2, "0"));

type Cells = Readonly<Record<string, string | number>>;

const monthly = (before: string, values: readonly (string | number)[], after = ""): Cells =>
  Object.fromEntries(values.map((value, month) => [`${before}${MONTHS[month]}${after}`, value]));

/** A table of rows, all with the columns of the first. */
const csv = (...rows: readonly Cells[]): string => {
  const columns = Object.keys(rows[0]);
  return [columns.join(","), ...rows.map((row) => columns.map((column) => row[column] ?? "").join(","))].join(
    "\n",
  );
};

const PLACE: Cells = { latitude_deg: 50, longitude_deg: 8 };
const LIGHT = monthly("clearness_", twelve(0.5));

const read = (row: Cells) => parseClimateTable(csv({ ...PLACE, ...LIGHT, ...row })).stations[0];
const complaints = (text: string) => complaintsOf(() => parseClimateTable(text, "my.csv"));

describe("parseClimateTable reads", () => {
  test("the least that a place needs", () => {
    expect(read({})).toEqual({
      id: "a place of the table",
      place: "a place of the table",
      country: "",
      latitudeDeg: 50,
      longitudeDeg: 8,
      elevationM: null,
      source: "own table",
      light: { kind: "clearness", index: twelve(0.5) },
      air: null,
      wind: null,
      dayMemory: null,
    });
  });

  test("and what else may be known of it", () => {
    const full = read({
      id: " n1 ",
      place: " Hut ",
      country: " Land ",
      elevation_m: 1234,
      source: "measured year",
      ...monthly("air_low_", counted(-3), "_degC"),
      ...monthly("air_high_", counted(5), "_degC"),
      ...monthly("wind_", counted(1), "_m_s"),
      wind_height_m: 10,
      day_memory: 0.3,
      day_memory_years: 4,
      remark: "of one's own",
    });
    expect(full).toMatchObject({
      id: "n1",
      place: "Hut",
      country: "Land",
      elevationM: 1234,
      source: "measured year",
      air: { kind: "range", lowC: counted(-3), highC: counted(5) },
      wind: { ms: counted(1), heightM: 10 },
      dayMemory: { correlation: 0.3, years: 4 },
    });
    expect(read({ place: "Hut" }).id).toBe("Hut");
    expect(read({ source: "hearsay" }).source).toBe("own table");
    expect(read({ source: "sunshine" }).source).toBe("sunshine");
  });

  test("a mean of the air where there is no range; months missing are no air and no wind; stations measure wind at 10 m", () => {
    const mean = monthly("air_mean_", counted(2), "_degC");
    const low = monthly("air_low_", counted(-3), "_degC");
    const high = monthly("air_high_", counted(5), "_degC");
    expect(read(mean).air).toEqual({ kind: "mean", meanC: counted(2) });
    expect(read({ ...mean, ...low, ...high }).air?.kind).toBe("range");
    expect(read({ ...mean, ...low, ...high, air_high_07_degC: "" }).air?.kind).toBe("mean");
    expect(read({ ...mean, ...low, ...high, air_low_07_degC: " " }).air?.kind).toBe("mean");
    expect(read({ ...low, ...high, air_low_07_degC: "" }).air).toBeNull();
    expect(read({ ...mean, air_mean_12_degC: "" }).air).toBeNull();
    const wind = monthly("wind_", counted(1), "_m_s");
    expect(read(wind).wind?.heightM).toBe(10);
    expect(read({ ...wind, wind_height_m: 2, wind_03_m_s: "" }).wind).toBeNull();
  });

  test("light in kWh, MJ, clearness or sunshine", () => {
    const kWh = [0.8, 1.5, 2.7, 4.2, 5.1, 5.5, 5.3, 4.6, 3.2, 1.8, 0.9, 0.7];
    const lightOf = (cells: Cells) => parseClimateTable(csv({ ...PLACE, ...cells })).stations[0].light;
    expect(lightOf(monthly("global_", kWh, "_kWh_m2_day"))).toEqual({ kind: "global", kWhM2Day: kWh });
    const mega = lightOf(
      monthly(
        "global_",
        kWh.map((value) => value * 3.6),
        "_MJ_m2_day",
      ),
    );
    expect(mega.kind === "global" && mega.kWhM2Day[5]).toBeCloseTo(5.5, 12);
    const hours = [40, 70, 120, 180, 230, 220, 220, 200, 150, 100, 50, 30];
    expect(lightOf(monthly("sunshine_", hours, "_h"))).toEqual({ kind: "sunshine", hours });
  });

  test("semicolons, tabs, blank lines and blanks round the headers", () => {
    const text = csv({ ...PLACE, ...LIGHT });
    expect(parseClimateTable(text.replaceAll(",", " ;")).stations).toHaveLength(1);
    expect(parseClimateTable(text.replaceAll(",", "\t")).stations).toHaveLength(1);
    expect(parseClimateTable(`\n${text}\n,,\n\n`).stations).toHaveLength(1);
  });

  test("tables are joined in the order given", () => {
    const one = parseClimateTable(csv({ ...PLACE, ...LIGHT, place: "One" }));
    const two = parseClimateTable(csv({ ...PLACE, ...LIGHT, place: "Two" }));
    expect(joinTables([two, one]).stations.map(({ place }) => place)).toEqual(["Two", "One"]);
  });
});

describe("parseClimateTable refuses", () => {
  test("a header without light, without a place, or with months missing", () => {
    expect(complaints("a,b\n1,2")).toEqual([
      {
        path: "my.csv header",
        value: "a,b",
        allowed:
          "must have twelve columns global_01_kWh_m2_day .. _12_, or global_.._MJ_m2_day, clearness_.., sunshine_.._h",
      },
      ...["latitude_deg", "longitude_deg"].map((column) => ({
        path: `my.csv header ${column}`,
        value: undefined,
        allowed: "must be there, in degrees",
        hint: "south and west are negative",
      })),
    ]);
    const { clearness_03: _, ...holed } = LIGHT;
    expect(complaints(csv({ ...holed, longitude_deg: 8 }))).toEqual([
      {
        path: "my.csv header clearness_03",
        value: undefined,
        allowed: "must be there: twelve months are needed, 01 to 12",
      },
      {
        path: "my.csv header latitude_deg",
        value: undefined,
        allowed: "must be there, in degrees",
        hint: "south and west are negative",
      },
    ]);
  });

  test("air in degF, wind that blows backwards, a height in words, a slip of the pen: each cell by its name", () => {
    const row = {
      ...PLACE,
      ...LIGHT,
      elevation_m: "high up",
      ...monthly("air_low_", twelve(40), "_degC"),
      ...monthly("air_high_", twelve(45), "_degC"),
      ...monthly("wind_", twelve(3), "_m_s"),
      air_low_02_degC: "4O",
      air_high_07_degC: 72,
      wind_03_m_s: -3,
    };
    const air = "a table in degF? (degF - 32) / 1.8 is degC";
    expect(complaints(csv(row))).toEqual([
      { path: "my.csv row 2 elevation_m", value: "high up", allowed: "must be -430 to 6000 m above the sea" },
      { path: "my.csv row 2 air_low_02_degC", value: "4O", allowed: "must be -80 to 50 degC", hint: air },
      { path: "my.csv row 2 air_high_07_degC", value: "72", allowed: "must be -80 to 60 degC", hint: air },
      { path: "my.csv row 2 wind_03_m_s", value: "-3", allowed: "must be 0 to 40 m/s" },
    ]);
  });

  test("rows are counted as in the file, blank lines too", () => {
    const [header, row] = csv({ ...PLACE, ...LIGHT }).split("\n");
    const text = `${header}\n${row}\n\n,,\n${row.replace("50,8", "99,8")}`;
    expect(complaints(text)).toMatchObject([{ path: "my.csv row 5 latitude_deg", value: "99" }]);
  });

  test("a header that lacks only a month, or only a place", () => {
    const { clearness_03: _, ...holed } = LIGHT;
    expect(complaints(csv({ ...holed, ...PLACE })).map(({ path }) => path)).toEqual([
      "my.csv header clearness_03",
    ]);
    expect(complaints(csv({ ...LIGHT, longitude_deg: 8 })).map(({ path }) => path)).toEqual([
      "my.csv header latitude_deg",
    ]);
  });

  test("no rows", () => {
    expect(complaints(Object.keys({ ...PLACE, ...LIGHT }).join(","))).toEqual([
      { path: "my.csv", value: "no rows", allowed: "must have at least one place below its header" },
    ]);
    expect(complaintsOf(() => parseClimateTable("a"))[0].path).toBe("climate table header");
  });

  test("places off the map, with their rows; their light is then not judged", () => {
    const far = { ...PLACE, ...LIGHT, latitude_deg: -90.1, longitude_deg: "east" };
    expect(complaints(csv({ ...PLACE, ...LIGHT }, far))).toEqual([
      { path: "my.csv row 3 latitude_deg", value: "-90.1", allowed: "must be -90 to 90 degrees" },
      { path: "my.csv row 3 longitude_deg", value: "east", allowed: "must be -180 to 180 degrees" },
    ]);
    expect(complaints(csv({ ...PLACE, ...LIGHT, latitude_deg: 95, clearness_04: 7 }))).toHaveLength(1);
    expect(complaints(csv({ ...PLACE, ...LIGHT, latitude_deg: 90, longitude_deg: -180 }))).toEqual([]);
  });

  test("light that can't be, by its column", () => {
    expect(complaints(csv({ ...PLACE, ...LIGHT, clearness_04: 1.2 }))).toEqual([
      {
        path: "my.csv row 2 clearness_04",
        value: 1.2,
        allowed: "must be a clearness index, 0 to 0.9: no more light than above the air",
      },
    ]);
    expect(complaints(csv({ ...PLACE, ...LIGHT, clearness_12: "" }))[0].path).toBe(
      "my.csv row 2 clearness_12",
    );
  });

  test("a low above its high, and anemometers or memories out of range", () => {
    const air = { ...monthly("air_low_", counted(0), "_degC"), ...monthly("air_high_", counted(8), "_degC") };
    expect(complaints(csv({ ...PLACE, ...LIGHT, ...air, air_low_05_degC: 13 }))).toEqual([
      { path: "my.csv row 2 air_low_05_degC", value: 13, allowed: "must not exceed the high, 12 degC" },
    ]);
    expect(complaints(csv({ ...PLACE, ...LIGHT, ...air, air_low_05_degC: 12 }))).toEqual([]);
    const wind = monthly("wind_", counted(1), "_m_s");
    expect(complaints(csv({ ...PLACE, ...LIGHT, ...wind, wind_height_m: 0.1 }))).toEqual([
      { path: "my.csv row 2 wind_height_m", value: "0.1", allowed: "must be 0.2 to 300 m above ground" },
    ]);
    expect(complaints(csv({ ...PLACE, ...LIGHT, day_memory: 0.9, day_memory_years: 0.1 }))).toEqual([
      {
        path: "my.csv row 2 day_memory",
        value: "0.9",
        allowed: "must be -0.2 to 0.8 (correlation of a day's clearness with the next day's)",
      },
      {
        path: "my.csv row 2 day_memory_years",
        value: "0.1",
        allowed: "must be 0.2 to 150 years of days that day_memory was measured on",
      },
    ]);
    expect(complaints(csv({ ...PLACE, ...LIGHT, day_memory: "", day_memory_years: 4 }))).toHaveLength(1);
  });
});
