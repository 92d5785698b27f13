import { describe, expect, test } from "vitest";
import { meaningOf, type Quantity, unitBehind } from "../../../lib/sky/weather/read/headers.ts";
import { type ColumnNames, layoutOf } from "../../../lib/sky/weather/read/layout.ts";
import { RowProblems } from "../../../lib/sky/weather/read/row-problems.ts";
import { dateDay, stampMs } from "../../../lib/sky/weather/read/stamp.ts";
import { readWeatherTable } from "../../../lib/sky/weather/read/table.ts";
import type { Problem } from "../../../lib/units/problem.ts";
import { complaintsOf } from "./problems.ts";

describe("RowProblems", () => {
  const low = { column: "ghi", allowed: "must not be below 0", hint: "leave it empty" };
  const odd = { column: "air", allowed: "must be a number" };

  test("neighbouring rows with the same fault are one complaint, with the first one's value", () => {
    const faults = new RowProblems("w.csv");
    faults.add(2, -1, low);
    faults.add(3, -2, low);
    faults.add(3, "x", odd);
    faults.add(4, -3, low);
    expect(faults.problems()).toEqual([
      { path: "w.csv rows 2-4 ghi", value: -1, allowed: "must not be below 0", hint: "leave it empty" },
      { path: "w.csv row 3 air", value: "x", allowed: "must be a number" },
    ]);
  });

  test("a row between, another wording or another column makes another complaint, told in the order of rows", () => {
    const faults = new RowProblems("w.csv");
    faults.add(7, -1, low);
    faults.add(9, -2, low);
    faults.add(10, -3, { ...low, allowed: "must not be below -4" });
    faults.add(2, "x", odd);
    expect(faults.problems().map(({ path }) => path)).toEqual([
      "w.csv row 2 air",
      "w.csv row 7 ghi",
      "w.csv row 9 ghi",
      "w.csv row 10 ghi",
    ]);
  });

  test("a kind joins faults whose wording differs from row to row, and a fault of no column names none", () => {
    const faults = new RowProblems("w.csv");
    faults.add(5, 900, { column: "ghi", kind: "most", allowed: "must be at most 800" });
    faults.add(6, 910, { column: "ghi", kind: "most", allowed: "must be at most 810" });
    faults.add(6, "quotes", { column: "", allowed: "must be in pairs" });
    expect(faults.problems()).toEqual([
      { path: "w.csv rows 5-6 ghi", value: 900, allowed: "must be at most 800" },
      { path: "w.csv row 6", value: "quotes", allowed: "must be in pairs" },
    ]);
    // No hint is no hint, not an empty one.
    expect(faults.problems().some((problem) => "hint" in problem)).toBe(false);
    expect(new RowProblems("w.csv").problems()).toEqual([]);
  });
});

describe("stamps", () => {
  test.each([
    [" 2027-06-21T12:00Z ", Date.UTC(2027, 5, 21, 12)],
    ["2027-06-21T12:00:00.123456789Z", Date.UTC(2027, 5, 21, 12)],
    ["2027-06-21T120030Z", Date.UTC(2027, 5, 21, 12, 0, 30)],
    ["2027-06-21T12:00 +0545", Date.UTC(2027, 5, 21, 6, 15)],
    ["2027-06-21T12:00-03", Date.UTC(2027, 5, 21, 15)],
    ["2027-06-21T12:00z", Date.UTC(2027, 5, 21, 12)],
    ["2027-06-21T23:59:59Z", Date.UTC(2027, 5, 21, 23, 59, 59)],
    ["2028-02-29T00:00Z", Date.UTC(2028, 1, 29)],
    ["2027-01-31T00:00Z", Date.UTC(2027, 0, 31)],
    ["2027-12-01T00:00Z", Date.UTC(2027, 11, 1)],
    ["2027-02-29T00:00Z", Number.NaN],
    ["2027-04-31T00:00Z", Number.NaN],
    ["2027-01-32T00:00Z", Number.NaN],
    ["2027-13-01T00:00Z", Number.NaN],
    ["2027-13-31T00:00Z", Number.NaN],
    ["2027-00-10T00:00Z", Number.NaN],
    ["2027-00-31T00:00Z", Number.NaN],
    ["2027-06-00T00:00Z", Number.NaN],
    ["2027-06-21T24:00Z", Date.UTC(2027, 5, 22)],
    ["2027-06-21T12:60Z", Number.NaN],
    ["2027-06-21T24:01Z", Number.NaN],
    ["2027-06-21T24:00:01Z", Number.NaN],
    ["2027-06-21T12:59:60Z", Number.NaN],
    ["2027-06-21T12:00 UTC", Number.NaN],
    ["2027-06-21", Number.NaN],
    ["about 2027-06-21T12:00Z", Number.NaN],
    ["2027-06-21T12:00Zulu", Number.NaN],
  ])("%s", (text, ms) => expect(stampMs(text)).toBe(ms));

  test.each([
    ["1970-01-02", 1],
    [" 1970-01-02 ", 1],
    ["2027-02-29", Number.NaN],
    ["2027-02-28T00:00Z", Number.NaN],
    ["on 2027-02-28", Number.NaN],
    ["yesterday", Number.NaN],
  ])("date %s", (text, day) => expect(dateDay(text)).toBe(day));
});

describe("headers and their units", () => {
  // One kilojoule is 1 / 3.6 Wh, a joule on a square centimetre 10 000 on a square metre; 0 degC is 273.15 K.
  test.each([
    ["ghi_W_m2", "global", "irradiance", 1, 0],
    ["ghi W m-2", "global", "irradiance", 1, 0],
    ["dni kW/m2", "beamNormal", "irradiance", 1000, 0],
    ["dhi Wh/m2", "diffuse", "energy", 1, 0],
    ["dhi Wh m-2", "diffuse", "energy", 1, 0],
    ["ghi kWh/m2", "global", "energy", 1000, 0],
    ["ghi kJ/m2", "global", "energy", 1 / 3.6, 0],
    ["ghi J/cm2", "global", "energy", 1e4 / 3600, 0],
    ["ghi MJ/m2", "global", "energy", 1000 / 3.6, 0],
    ["air_degC", "airC", "temperature", 1, 0],
    ["air °C", "airC", "temperature", 1, 0],
    ["t_amb (C)", "airC", "temperature", 1, 0],
    ["air_temperature [K]", "airC", "temperature", 1, -273.15],
    ["wind m/s", "windMs", "speed", 1, 0],
    ["ws m s-1", "windMs", "speed", 1, 0],
    ["wind_speed km/h", "windMs", "speed", 1 / 3.6, 0],
    ["direct_horizontal_irradiance", "beamHorizontal", "irradiance", 1, 0],
    ["timestamp", "time", "text", 1, 0],
    ["Date", "date", "text", 1, 0],
    ["__GHI__", "global", "irradiance", 1, 0],
    ["GHI (W/m²)", "global", "irradiance", 1, 0],
  ] as const)("%s", (header, quantity, of, scale, offset) => {
    const meaning = meaningOf(header);
    expect(meaning?.quantity).toBe(quantity);
    expect(meaning?.unit).toMatchObject({ of, offset });
    expect(meaning?.unit.scale).toBeCloseTo(scale, 9);
  });

  test.each(["air_W_m2", "wind_K", "ghi_m_s", "air_kWh_m2", "time_W_m2", "W_m2", "", "ghi_north"])(
    "%s is none of ours",
    (header) => expect(meaningOf(header)).toBeNull(),
  );

  test.each<[string, Quantity, string, number]>([
    ["mast K", "airC", "temperature", -273.15],
    ["mast", "airC", "temperature", 0],
    ["mast W/m2", "airC", "temperature", 0],
    ["shed", "windMs", "speed", 0],
    ["when", "time", "text", 0],
  ])("the unit behind %s, known to be %s", (header, quantity, of, offset) => {
    expect(unitBehind(header, quantity)).toEqual({ of, scale: 1, offset });
  });
});

describe("layoutOf", () => {
  const laid = (headers: readonly string[], named?: ColumnNames) => layoutOf(headers, "w.csv", named);

  test("says what each column holds, and which it leaves aside", () => {
    const { meanings, ignored } = laid(["time_utc", "cloud", "ghi_W_m2", "air"]);
    expect(meanings.map((meaning) => meaning?.quantity ?? null)).toEqual(["time", null, "global", "airC"]);
    expect(ignored).toEqual(["cloud"]);
  });

  test("a name it is told takes the place of the known ones", () => {
    const { meanings, ignored } = laid(["time_utc", "ghi", "roof kWh/m2"], { global: "roof kWh/m2" });
    expect(meanings[1]).toBeNull();
    expect(meanings[2]).toEqual({ quantity: "global", unit: { of: "energy", scale: 1000, offset: 0 } });
    expect(ignored).toEqual(["ghi"]);
  });

  test("all that is wrong, each with what would mend it", () => {
    expect(complaintsOf(() => laid(["hour", "ghi"]))).toEqual([
      {
        path: "w.csv row 1",
        value: "hour, ghi",
        allowed: "must have a column of time stamps",
        hint: "name it time_utc, or date for sums of whole days",
      },
    ]);
    expect(complaintsOf(() => laid(["time", "GHI", "ghi_W_m2"], { airC: "mast", windMs: "vane" }))).toEqual([
      {
        path: "w.csv row 1",
        value: "mast",
        allowed: "must be one of the file's columns: time, GHI, ghi_W_m2",
      },
      {
        path: "w.csv row 1",
        value: "vane",
        allowed: "must be one of the file's columns: time, GHI, ghi_W_m2",
      },
      {
        path: "w.csv row 1",
        value: "ghi_W_m2",
        allowed: "must be the only column of its kind",
        hint: "rename or remove the one that is not wanted",
      },
    ]);
    // A date alone is stamp enough.
    expect(complaintsOf(() => laid(["date", "ghi"]))).toEqual([]);
  });
});

describe("readWeatherTable", () => {
  const read = (text: string, named?: ColumnNames) => {
    const faults = new RowProblems("w.csv");
    const table = readWeatherTable(text, "w.csv", faults, named);
    return { table, problems: faults.problems() };
  };
  const complaints = (text: string): readonly Problem[] => complaintsOf(() => read(text));

  test("rows and columns of numbers, empty and missing cells as holes", () => {
    const { table, problems } = read(
      "time_utc,cloud,ghi_kW_m2,air\n2027-06-01T01:00Z,x,0.5, 12.5\n\n , ,\n2027-06-01T02:00Z,x,NaN,n/a\n2027-06-01T03:00Z,x,null\n2027-06-01T04:00Z,x,NA,-",
    );
    expect(table).toMatchObject({ length: 4, stampedBy: "time", ignoredColumns: ["cloud"] });
    // The header is row 1; blank rows are passed over and still counted.
    expect([...table.row]).toEqual([2, 5, 6, 7]);
    expect([...table.stamp]).toEqual([1, 2, 3, 4].map((hour) => Date.UTC(2027, 5, 1, hour)));
    expect(table.columns.get("global")).toEqual({
      header: "ghi_kW_m2",
      of: "irradiance",
      values: Float64Array.of(500, Number.NaN, Number.NaN, Number.NaN),
    });
    expect([...(table.columns.get("airC")?.values ?? [])]).toEqual([
      12.5,
      Number.NaN,
      Number.NaN,
      Number.NaN,
    ]);
    expect(problems).toEqual([
      {
        path: "w.csv row 7 air",
        value: "-",
        allowed: "must be a number or empty",
        hint: "leave the field empty where nothing was measured",
      },
    ]);
  });

  test("dates make days; a date and a time together an instant", () => {
    const days = read("date,ghi_Wh_m2\n1970-01-03,5\n1970-01-04,6");
    expect(days.table.stampedBy).toBe("date");
    expect([...days.table.stamp]).toEqual([2, 3]);
    expect(days.table.columns.get("global")?.of).toBe("energy");
    const both = read("time,date,ghi\n12:00,1970-01-02,5");
    expect(both.table.stampedBy).toBe("time");
    expect([...both.table.stamp]).toEqual([36 * 3_600_000]);
  });

  test("stamps that can't be read are told by the form that the first one has", () => {
    expect(read("date,ghi\n1970-01-03,5\n4 January,6").problems).toEqual([
      { path: "w.csv row 3 stamp", value: "4 January", allowed: "must be a date, YYYY-MM-DD" },
    ]);
    expect(read("time,ghi\n1970-01-03T00:00Z,5\n1970-01-03,6").problems).toEqual([
      {
        path: "w.csv row 3 stamp",
        value: "1970-01-03",
        allowed: "must be an ISO 8601 stamp, YYYY-MM-DDTHH:MM:SSZ",
      },
    ]);
  });

  test("kelvin lose 273.15", () => {
    expect(read("time,ghi,air_K\n1970-01-03T00:00Z,5,273.15").table.columns.get("airC")?.values[0]).toBe(0);
  });

  test("a number that is too large to be one, and a decimal comma", () => {
    const { problems } = read(
      'time;ghi\n1970-01-03T00:00Z;1e999\n1970-01-03T01:00Z;5\n1970-01-03T02:00Z;"5,5"',
    );
    expect(problems.map(({ path, hint }) => [path, hint])).toEqual([
      ["w.csv row 2 ghi", "leave the field empty where nothing was measured"],
      ["w.csv row 4 ghi", "the decimal sign is a point"],
    ]);
  });

  test("nothing to read is told with an example", () => {
    const nothing = {
      path: "w.csv",
      allowed: "must have a header row and at least one row of values",
      hint: "for example time_utc,ghi_W_m2",
    };
    expect(complaints("")).toMatchObject([nothing]);
    expect(complaints("time_utc,ghi\n\n")).toMatchObject([nothing]);
  });

  test("quotation marks that are not in pairs", () => {
    const { problems } = read('time,ghi\n1970-01-03T00:00Z,5\n"1970-01-03T01:00Z,6');
    expect(problems.map(({ path, allowed }) => `${path}: ${allowed}`)).toContain(
      "w.csv row 3: must have its quotation marks in pairs",
    );
  });

  test("headers are read without the blanks around them", () => {
    expect(read(" time , ghi \n1970-01-03T00:00Z,5").table.columns.get("global")?.header).toBe("ghi");
    expect(read("when,roof\n1970-01-03T00:00Z,5", { time: "when", global: "roof" }).table.length).toBe(1);
  });
});
