import { describe, expect, test } from "vitest";
import { parseAir, withAir } from "../../../lib/sky/weather/read/air-file.ts";
import { parseWeather } from "../../../lib/sky/weather/read/parse-weather.ts";
import type { IntervalSeries } from "../../../lib/sky/weather/read/series.ts";
import { sunVector } from "../../../lib/sun/position.ts";
import { complaintsOf } from "./problems.ts";
import { asCsv, madeRows, PLACE } from "./weather-text.ts";

const twoDays = madeRows({ from: "2021-06-01", days: 2, intervalMinutes: 60 });

const read = (text: string): IntervalSeries => {
  const series = parseWeather(text, { place: PLACE, file: "w.csv" });
  if (series.kind !== "intervals") throw new Error("expected intervals");
  return series;
};

const complaints = (text: string) => complaintsOf(() => read(text));

/** The file with further columns, worked out from the row and its number. */
const withColumns = (header: string, of: (global: number, i: number) => string): string =>
  [
    `time_utc,ghi,${header}`,
    ...twoDays.map(({ stamp, global }, i) => `${stamp},${global},${of(global, i)}`),
  ].join("\n");

describe("parseWeather: what it says of a file", () => {
  test("nothing of a file without a fault", () => {
    expect(read(asCsv(twoDays)).mending).toEqual({ filled: 0, zeroed: 0, ignoredColumns: [], remarks: [] });
  });

  test("a file without global light is asked for it by name", () => {
    expect(complaints("time_utc,cloud,dhi\n2021-06-01T00:00Z,3,1\nnever,3,1")).toEqual([
      {
        path: "w.csv row 1",
        value: "cloud",
        allowed: "must have a column of global horizontal irradiance",
        hint: "name it ghi_W_m2",
      },
      {
        path: "w.csv row 3 stamp",
        value: "never",
        allowed: "must be an ISO 8601 stamp, YYYY-MM-DDTHH:MM:SSZ",
      },
    ]);
  });

  test("columns with holes: what stands in for them; columns of nothing are not there", () => {
    const series = read(
      withColumns("dni,dhi,beam_horizontal,air,wind", (global, i) => {
        const day = i < 24;
        return `${day ? global / 2 : ""},,${day ? "" : global / 2},${day ? 12 : ""},`;
      }),
    );
    expect(series.mending.remarks).toEqual([
      "dni_W_m2 is missing in 24 of 48 intervals: there the share is worked out from GHI",
      "beam_horizontal_W_m2 is missing in 24 of 48 intervals: there the share is worked out from GHI",
      "air_degC is missing in 24 of 48 intervals: the plan's monthly values stand in",
    ]);
    expect(series.diffuse).toBeUndefined();
    expect(series.windMs).toBeUndefined();
    expect(series.beamNormal?.[12]).toBe(twoDays[12].global / 2);
    expect(series.beamHorizontal?.[36]).toBe(twoDays[36].global / 2);
    expect(series.airC?.[0]).toBe(12);
  });

  test("short holes in air and wind are bridged without a word, those in light are not", () => {
    const series = read(
      withColumns("air,wind,dhi", (global, i) => (i > 0 && i <= 3 ? ",," : `${i},${i / 2},${global / 3}`)),
    );
    expect([...(series.airC?.subarray(0, 5) ?? [])]).toEqual([0, 1, 2, 3, 4]);
    expect(series.windMs?.[2]).toBe(1);
    expect(series.diffuse?.[2]).toBeNaN();
    expect(series.mending.remarks).toEqual([
      "dhi_W_m2 is missing in 3 of 48 intervals: there the share is worked out from GHI",
    ]);
    // Four hours are too long to bridge.
    const longer = read(withColumns("air", (_, i) => (i > 0 && i <= 4 ? "" : "7")));
    expect(longer.airC?.[2]).toBeNaN();
  });

  test("mendings are counted and told in words", () => {
    const rows = twoDays.map((row, i) => (i < 2 ? { ...row, global: -2 } : row));
    const series = read(
      asCsv(
        rows.filter((_, i) => i !== 11),
        "time_utc,ghi_W_m2",
      ),
    );
    expect(series.mending).toEqual({
      filled: 1,
      zeroed: 2,
      ignoredColumns: [],
      remarks: [
        "1 of 48 intervals had no GHI and were filled in",
        "2 small negative readings were set to zero",
      ],
    });
  });

  test("parts that do not make the whole: one of the sensors reads wrong", () => {
    // Diffuse 40 % of the global, beam the rest by the sun's own height, times a fault in the sensor.
    const closing = (fault: number): readonly string[] =>
      read(
        withColumns("dni,dhi", (global, i) => {
          const startMs = Date.UTC(2021, 5, 1, i);
          const looks = [5, 15, 25, 35, 45, 55].map((minute) =>
            Math.max(0, sunVector(startMs + minute * 60_000, PLACE.latitudeDeg, PLACE.longitudeDeg).up),
          );
          // Above the air the sun is 1361 W/m2 x 0.970 in June (Spencer 1971).
          const sine = (0.97 * looks.reduce((sum, up) => sum + up, 0)) / 6;
          const beam = sine > 0.1 ? (0.6 * global * fault) / sine : 0;
          return `${beam},${0.4 * global}`;
        }),
      ).mending.remarks;
    expect(closing(1)).toEqual([]);
    expect(closing(1.05)).toEqual([]);
    // 40 + 60 x 0.8 = 88; the sun's factor is known to half a per cent.
    expect(closing(0.8).join()).toMatch(
      /^DNI and DHI together make 8[78] % of GHI over the file: one of the sensors reads wrong$/,
    );
    expect(closing(1.2).join()).toMatch(/^DNI and DHI together make 11[12] % of GHI/);
  });

  test("columns left aside are named, and the clock is looked at unless told not to", () => {
    expect(read(withColumns("cloud,rain", () => "1,2")).mending.remarks).toEqual([
      "columns left aside: cloud, rain",
    ]);
    const slow = asCsv(madeRows({ from: "2021-06-01", days: 30, intervalMinutes: 60, fastMinutes: -120 }));
    expect(complaints(slow)[0].path).toBe("w.csv stamp");
    const unnamed = complaintsOf(() => parseWeather(slow, { place: PLACE }));
    expect(unnamed.map(({ path }) => path)).toEqual(["weather file stamp"]);
    expect(complaints("time_utc,ghi\n2021-06-01T00:00Z,3\nnever,4").map(({ path }) => path)).toEqual([
      "w.csv stamp",
      "w.csv row 3 stamp",
    ]);
  });

  test("light too faint and rows that can't be read are told together", () => {
    const rows = madeRows({ from: "2021-06-01", days: 5, intervalMinutes: 60 }).map((row) => ({
      ...row,
      global: row.global / 1000,
    }));
    const text = asCsv(rows).replace(/,0\.\d+\r\n/, ",dim\r\n");
    expect(complaints(text).map(({ path }) => path)).toEqual([
      "w.csv ghi",
      expect.stringMatching(/^w\.csv row \d+ ghi_W_m2$/),
    ]);
  });
});

describe("air from a file of its own", () => {
  const light = read(asCsv(twoDays));
  const at = (hour: number): string => new Date(Date.UTC(2021, 5, 1) + hour * 3_600_000).toISOString();
  const airOf = (
    rows: readonly (readonly [hour: number, airC: number | string])[],
    header = "time_utc,air",
  ) =>
    parseAir([header, ...rows.map(([hour, airC]) => `${at(hour)},${airC}`)].join("\n"), { file: "air.csv" });
  const laid = (rows: readonly (readonly [number, number | string])[]): Float64Array =>
    withAir(light, airOf(rows)).airC ?? new Float64Array();

  test("the nearest reading holds for an hour and a half beyond either end, and no longer", () => {
    // Middles of the hours are at half past.
    const air = laid([
      [6.2, 10],
      [7.2, 12],
      [8.2, 16],
    ]);
    expect([...air.subarray(3, 11)].map((degrees) => Math.round(degrees * 10) / 10)).toEqual([
      Number.NaN,
      Number.NaN,
      10,
      10.6,
      13.2,
      16,
      16,
      Number.NaN,
    ]);
  });

  test("readings up to three hours apart are joined, further apart they leave a hole", () => {
    const air = laid([
      [6, 10],
      [9, 16],
      [13, 20],
      [14, 22],
    ]);
    expect([...air.subarray(6, 14)]).toEqual([
      11,
      13,
      15,
      Number.NaN,
      Number.NaN,
      Number.NaN,
      Number.NaN,
      21,
    ]);
  });

  test("beyond half the longest step nothing holds: a few hours of air leave the rest of the day open", () => {
    const air = laid([
      [20, 5],
      [21, 5],
    ]);
    expect(air.filter((value) => value === 5)).toHaveLength(4);
    expect([air[17], air[23]]).toEqual([Number.NaN, Number.NaN]);
  });

  test("a single reading holds around itself", () => {
    const air = laid([[12, 18]]);
    expect([...air.subarray(10, 14)]).toEqual([18, 18, 18, Number.NaN].slice(0, 3).concat(Number.NaN));
    expect(air.filter((value) => value === 18)).toHaveLength(3);
  });

  test("takes the place of the light file's own air, leaves its wind, and says what is missing", () => {
    const own = read(withColumns("air,wind", () => "1,2"));
    const series = withAir(
      own,
      airOf([
        [0, 20],
        [3, 20],
        [6, 20],
      ]),
    );
    expect(series.airC?.[2]).toBe(20);
    expect(series.windMs?.[40]).toBe(2);
    expect(series.global).toBe(own.global);
    expect(series.mending.remarks).toEqual([
      "the file of air has no air temperature for 41 of 48 intervals: the plan's monthly values stand in",
    ]);
    const windy = withAir(own, parseAir(`time_utc,wind\n${at(0)},4\n${at(1)},4`));
    expect(windy.airC?.[40]).toBe(1);
    expect(windy.mending.remarks).toEqual([
      "the file of air has no wind for 46 of 48 intervals: the plan's monthly values stand in",
    ]);
  });

  test("daily means may lie two days apart, on files of days as on hours", () => {
    const air = parseAir("date,air\n2021-06-01,10\n2021-06-03,14\n2021-06-06,20");
    expect(air.longestStepMs).toBe(48 * 3_600_000);
    const days = withAir(
      parseWeather(
        ["date,ghi_Wh_m2", ...[1, 2, 3, 4, 5, 6, 7, 8].map((day) => `2021-06-0${day},5000`)].join("\n"),
        { place: PLACE },
      ),
      air,
    );
    // The third of June is read on its own day, though the next reading is too far away to be joined to it.
    expect([...(days.airC ?? [])]).toEqual([10, 12, 14, Number.NaN, Number.NaN, 20, Number.NaN, Number.NaN]);
  });

  test("refusals: no air, rows out of order or doubled, values that were never measured", () => {
    const refused = (text: string) => complaintsOf(() => parseAir(text, { file: "air.csv" }));
    expect(refused("time_utc,cloud\n2021-06-01T00:00Z,3")).toEqual([
      {
        path: "air.csv row 1",
        value: "cloud",
        allowed: "must have a column of air temperature or wind",
        hint: "name it air_degC or wind_m_s",
      },
    ]);
    expect(refused("time_utc,air\n2021-06-01T01:00Z,3\n2021-06-01T01:00Z,4\n2021-06-01T00:00Z,99")).toEqual([
      {
        path: "air.csv rows 3-4 stamp",
        value: "2021-06-01T01:00:00.000Z",
        allowed: "must come after the row before",
        hint: "sort the rows by time, and leave out doubled ones",
      },
      {
        path: "air.csv row 4 air",
        value: 99,
        allowed: "must be -90 to 60 degC",
        hint: "kelvin needs a header that says so: air_K",
      },
    ]);
    expect(refused("date,wind\n2021-06-02,3\n2021-06-01,4")).toMatchObject([
      { path: "air.csv row 3 stamp", value: "a date" },
    ]);
    expect(complaintsOf(() => parseAir("time_utc,cloud\n2021-06-01T00:00Z,3"))[0].path).toBe(
      "air file row 1",
    );
    const named = parseAir("when,mast\n2021-06-01T00:00Z,3", { columns: { time: "when", airC: "mast" } });
    expect(named.airC?.[0]).toBe(3);
    expect(named.windMs).toBeUndefined();
  });
});
