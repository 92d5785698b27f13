import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { meaningOf, unitBehind } from "../../../lib/sky/weather/read/headers.ts";
import { parseWeather, type WeatherOptions } from "../../../lib/sky/weather/read/parse-weather.ts";
import type { IntervalSeries } from "../../../lib/sky/weather/read/series.ts";
import { dateDay, stampMs } from "../../../lib/sky/weather/read/stamp.ts";
import { PlanError, type Problem } from "../../../lib/units/problem.ts";
import { asCsv, madeRows, PLACE } from "./weather-text.ts";

const read = (text: string, options: Partial<WeatherOptions> = {}): IntervalSeries => {
  const series = parseWeather(text, { place: PLACE, file: "w.csv", ...options });
  if (series.kind !== "intervals") throw new Error("expected intervals");
  return series;
};

const problemsOf = (text: string, options: Partial<WeatherOptions> = {}): readonly Problem[] => {
  try {
    parseWeather(text, { place: PLACE, file: "w.csv", ...options });
  } catch (error) {
    if (error instanceof PlanError) return error.problems;
    throw error;
  }
  return [];
};

const pathsOf = (text: string, options: Partial<WeatherOptions> = {}): string[] =>
  problemsOf(text, options).map(({ path }) => path);

const JUNE = { from: "2021-06-01", days: 30, intervalMinutes: 60 } as const;
const june = madeRows(JUNE);

describe("stampMs and dateDay", () => {
  test.each([
    ["2027-06-21T12:00:00Z", Date.UTC(2027, 5, 21, 12)],
    ["2027-06-21 12:00", Date.UTC(2027, 5, 21, 12)],
    ["2027-06-21T12:00:30.000Z", Date.UTC(2027, 5, 21, 12, 0, 30)],
    ["2027-06-21T12:00:00+02:00", Date.UTC(2027, 5, 21, 10)],
    ["2027-06-21T12:00:00-0330", Date.UTC(2027, 5, 21, 15, 30)],
    ["20270621T12:00Z", Number.NaN],
    ["2027-06-21T24:00Z", Date.UTC(2027, 5, 22)],
    ["2027-02-30T12:00Z", Number.NaN],
    ["2027-06-21T25:00Z", Number.NaN],
    ["2027-06-21T12:60Z", Number.NaN],
    ["21.06.2027 12:00", Number.NaN],
  ])("%s", (text, ms) => expect(stampMs(text)).toBe(ms));

  test("every instant of every minute comes back", () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date("1900-01-01"), max: new Date("2199-12-31"), noInvalidDate: true }),
        (date) => {
          const whole = Math.floor(date.valueOf() / 1000) * 1000;
          expect(stampMs(new Date(whole).toISOString())).toBe(whole);
          expect(dateDay(date.toISOString().slice(0, 10))).toBe(Math.floor(date.valueOf() / 86_400_000));
        },
      ),
    );
  });
});

describe("headers", () => {
  test.each([
    ["ghi_W_m2", "global", 1],
    ["GHI", "global", 1],
    ["GHI [W/m2]", "global", 1],
    ["ghi_kWh_m2", "global", 1000],
    ["surface_downwelling_shortwave_flux_in_air", "global", 1],
    ["DNI (W/m²)", "beamNormal", 1],
    ["beam_horizontal_W_m2", "beamHorizontal", 1],
    ["dhi_W_m2", "diffuse", 1],
    ["air_degC", "airC", 1],
    ["air_temperature_K", "airC", 1],
    ["wind_m_s", "windMs", 1],
    ["wind speed km/h", "windMs", 1 / 3.6],
  ] as const)("%s", (header, quantity, scale) => {
    expect(meaningOf(header)).toMatchObject({ quantity, unit: { scale } });
  });

  test("a name that is not known, or a unit that does not fit, is left aside", () => {
    expect(meaningOf("humidity")).toBeNull();
    expect(meaningOf("ghi_degC")).toBeNull();
    expect(meaningOf("source_year")).toBeNull();
    expect(unitBehind("hall roof, kWh/m2", "global")).toEqual({ of: "energy", scale: 1000, offset: 0 });
  });
});

describe("parseWeather reads", () => {
  test("hours at their end, in UTC", () => {
    const series = read(asCsv(june));
    expect(series).toMatchObject({ intervalMinutes: 60, startMs: Date.UTC(2021, 5, 1), length: 720 });
    expect(series.global[12]).toBe(june[12].global);
    expect(series.beamNormal).toBeUndefined();
  });

  test.each([
    ["start", 0],
    ["centre", 0.5],
    ["end", 1],
  ] as const)("stamps at the interval's %s", (stamps, stampAt) => {
    expect(read(asCsv(madeRows({ ...JUNE, stampAt })), { stamps }).startMs).toBe(Date.UTC(2021, 5, 1));
  });

  test.each([1, 5, 10, 15, 20, 30])("intervals of %i minutes", (intervalMinutes) => {
    const series = read(asCsv(madeRows({ from: "2021-06-01", days: 2, intervalMinutes })));
    expect(series.length).toBe(2880 / intervalMinutes);
  });

  test("semicolons, a byte order mark, blank lines and other columns", () => {
    const text = `\uFEFF${asCsv(june, "time_utc;ghi_W_m2;cloud").replaceAll(",", ";")}\r\n\r\n`;
    const series = read(text);
    expect(series.length).toBe(720);
    expect(series.mending.ignoredColumns).toEqual(["cloud"]);
    expect(series.mending.remarks).toEqual(["columns left aside: cloud"]);
  });

  test("energies in the interval as its mean power, kelvin as degrees Celsius", () => {
    const rows = madeRows({ ...JUNE, intervalMinutes: 30 });
    const text = [
      "time_utc,ghi_Wh_m2,air_K",
      ...rows.map(({ stamp, global }) => `${stamp},${global / 2},293.15`),
    ];
    const series = read(text.join("\n"));
    expect(series.global[24]).toBeCloseTo(rows[24].global, 9);
    expect(series.airC?.[24]).toBeCloseTo(20, 9);
  });

  test("a date column and a time column together", () => {
    const text = [
      "date,time,ghi",
      ...june.map(({ stamp, global }) => `${stamp.slice(0, 10)},${stamp.slice(11, 16)},${global}`),
    ];
    expect(read(text.join("\n")).startMs).toBe(Date.UTC(2021, 5, 1));
  });

  test("columns by the names it is told", () => {
    const text = asCsv(june, "when,roof W/m2");
    expect(read(text, { columns: { time: "when", global: "roof W/m2" } }).length).toBe(720);
    expect(pathsOf(text, { columns: { time: "when", global: "attic" } })).toEqual(["w.csv row 1"]);
  });

  test("small negative night readings as zero, counted", () => {
    const rows = june.map((row) => (row.global === 0 ? { ...row, global: -1.5 } : row));
    const series = read(asCsv(rows));
    expect(Math.min(...series.global)).toBe(0);
    expect(series.mending.zeroed).toBe(rows.filter(({ global }) => global < 0).length);
  });
});

describe("a typical year of months from different years", () => {
  const year = madeRows({ from: "2021-01-01", days: 365, intervalMinutes: 60 });
  /** Gives each month, by a clock some hours behind UTC, its own year. */
  const strewn = (hoursBehind: number): string =>
    asCsv(
      year.map(({ stamp, global }, i) => {
        const local = new Date(Date.UTC(2021, 0, 1) + i * 3_600_000);
        const of = 1990 + ((7 * local.getUTCMonth()) % 12);
        const utc = new Date(Date.parse(stamp) + hoursBehind * 3_600_000);
        const turn = utc.getUTCFullYear() - local.getUTCFullYear();
        return { stamp: `${of + turn}${utc.toISOString().slice(4)}`, global };
      }),
    );

  test("is read as one year", () => {
    const series = read(strewn(0));
    expect(series.length).toBe(8760);
    expect(series.mending.remarks).toEqual([
      "its months come from different years: read as one typical year",
    ]);
    expect(series.global[4000]).toBe(year[4000].global);
  });

  test("also where a zone puts its last hours into the next year", () => {
    const series = read(strewn(7), { checkClock: false, place: { latitudeDeg: 52, longitudeDeg: -100 } });
    expect(series.length).toBe(8760);
  });

  test("a file with a fault among its stamps is not bent into one", () => {
    const rows = strewn(0).split("\r\n");
    rows.splice(5000, 1);
    expect(problemsOf(rows.join("\n")).length).toBeGreaterThan(0);
  });
});

describe("parseWeather mends", () => {
  test("short holes, by the clearness beside them, and counts them", () => {
    const rows = june.filter((_, i) => i !== 36 && i !== 37);
    const series = read(asCsv(rows));
    expect(series.mending.filled).toBe(2);
    expect(series.mending.remarks).toContain("2 of 720 intervals had no GHI and were filled in");
    // The file's sky is evenly clear, so the light that was there comes back within the rounding of clearness by the hour.
    expect(Math.abs(series.global[36] - june[36].global)).toBeLessThan(0.02 * june[36].global);
  });

  test("whole nights without rows", () => {
    const series = read(asCsv(june.filter(({ global }) => global > 0)));
    expect(series.mending.filled).toBeGreaterThan(100);
    const midnight = (Date.UTC(2021, 5, 15) - series.startMs) / 3_600_000;
    expect(series.global[midnight]).toBe(0);
  });

  test("an optional column with holes stays, and says so", () => {
    const text = [
      "time_utc,ghi,air,wind",
      ...june.map(({ stamp, global }, i) => `${stamp},${global},${i === 5 ? "" : 20},${i > 100 ? "" : 3}`),
    ];
    const series = read(text.join("\n"));
    expect(series.airC?.[5]).toBe(20);
    expect(series.windMs?.[200]).toBeNaN();
    expect(series.mending.remarks.join()).toContain("wind_m_s is missing in 619 of 720 intervals");
  });
});

describe("parseWeather refuses, with every fault and its row", () => {
  test("no columns, no rows", () => {
    expect(problemsOf("")[0]).toMatchObject({
      path: "w.csv",
      allowed: expect.stringContaining("a header row"),
    });
    expect(problemsOf("time_utc,ghi\n")[0]?.path).toBe("w.csv");
    expect(problemsOf("hour,ghi\n1,2")[0]?.hint).toContain("time_utc");
    expect(problemsOf("time_utc,air\n2021-06-01T00:00Z,3")[0]?.hint).toContain("ghi_W_m2");
    expect(problemsOf("time_utc,ghi,GHI\n2021-06-01T00:00Z,3,3")[0]?.allowed).toContain("only column");
  });

  test("cells that are no numbers, and stamps that are no instants", () => {
    const rows = asCsv(june).split("\r\n");
    rows[10] = "2021-06-01T10:00:00Z,much";
    rows[20] = "1 June,5";
    rows[30] = '2021-06-02T06:00:00Z,"12,5"';
    const problems = problemsOf(rows.join("\n"));
    expect(problems.map(({ path }) => path)).toEqual([
      "w.csv row 11 ghi_W_m2",
      "w.csv row 21 stamp",
      "w.csv row 31 ghi_W_m2",
    ]);
    expect(problems[2]?.hint).toBe("the decimal sign is a point");
  });

  test("a quotation mark without its pair", () => {
    const rows = asCsv(june).split("\r\n");
    rows[700] = `"${rows[700]}`;
    expect(problemsOf(rows.join("\n")).map(({ allowed }) => allowed)).toContain(
      "must have its quotation marks in pairs",
    );
  });

  test("any text at all: a complaint, never another error", () => {
    const line = fc.array(
      fc.oneof(fc.string(), fc.constantFrom("2021-06-01T00:00Z", "ghi", "time_utc", "12", "")),
      {
        maxLength: 4,
      },
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), fc.boolean(), (lines, headed) => {
        const text = [
          ...(headed ? ["time_utc,ghi_W_m2,air"] : []),
          ...lines.map((each) => each.join(",")),
        ].join("\n");
        expect(Array.isArray(problemsOf(text))).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test("doubled, unordered and stray stamps", () => {
    const rows = asCsv(june).split("\r\n");
    rows.splice(100, 0, rows[50]);
    rows.push("2021-07-02T00:30:00Z,0");
    const problems = problemsOf(rows.join("\n"));
    expect(problems.map(({ path, allowed }) => `${path}: ${allowed}`)).toEqual([
      "w.csv row 101 stamp: must not stand twice",
      "w.csv row 723 stamp: must be whole steps of 60 min from the other stamps",
    ]);
    const swapped = asCsv(june).split("\r\n");
    [swapped[10], swapped[11]] = [swapped[11], swapped[10]];
    expect(problemsOf(swapped.join("\n"))).toMatchObject([
      { path: "w.csv row 12 stamp", hint: "sort the rows by time" },
    ]);
  });

  test("long holes", () => {
    const problems = problemsOf(asCsv(june.filter((_, i) => i < 30 || i > 40)));
    expect(problems).toMatchObject([
      {
        path: "w.csv rows 31-32 ghi",
        value: "missing from 2021-06-02T06:00Z to 2021-06-02T17:00Z",
      },
    ]);
  });

  test("intervals that do not make up an hour", () => {
    const rows = madeRows({ from: "2021-06-01", days: 3, intervalMinutes: 60 }).filter((_, i) => i % 3 === 0);
    expect(problemsOf(asCsv(rows))).toMatchObject([{ value: "180 min apart" }]);
  });

  test("stamps centuries apart, without laying out the time between", () => {
    const rows = [...june.slice(0, 5), { stamp: "1421-06-01T00:00:00Z", global: 0 }];
    expect(problemsOf(asCsv(rows))[0]?.hint).toBe("is the year of every stamp right?");
  });

  test("light that can't be: negative, above the limit, at night", () => {
    const rows = june.map((row, i) => {
      if (i === 60) return { ...row, global: -999 };
      if (i === 84 || i === 85) return { ...row, global: 2500 };
      return i === 96 ? { ...row, global: 80 } : row;
    });
    const problems = problemsOf(asCsv(rows));
    expect(problems.map(({ path }) => path)).toEqual([
      "w.csv row 62 ghi",
      "w.csv rows 86-87 ghi",
      "w.csv row 98 ghi",
    ]);
    expect(problems[0]?.allowed).toBe("must not be below -4 W/m2");
    expect(problems[2]?.allowed).toContain("with the sun down");
  });

  test("kilowatts under a header that says watts", () => {
    const rows = june.map((row) => ({ ...row, global: row.global / 1000 }));
    expect(problemsOf(asCsv(rows))).toMatchObject([
      { path: "w.csv ghi", hint: expect.stringContaining("ghi_kW_m2") },
    ]);
    expect(problemsOf(asCsv(rows, "time_utc,ghi_kW_m2"))).toEqual([]);
  });

  test("air and wind that can't be", () => {
    const text = ["time_utc,ghi,air,wind", ...june.map(({ stamp, global }) => `${stamp},${global},293,-1`)];
    const problems = problemsOf(text.join("\n"));
    expect(problems.map(({ path }) => path).sort()).toEqual([
      "w.csv rows 2-721 air",
      "w.csv rows 2-721 wind",
    ]);
    expect(problems.map(({ hint }) => hint).join()).toContain("kelvin needs a header that says so");
  });

  test("any bad rows, wherever they stand, each with its row", () => {
    const bad = fc.uniqueArray(fc.integer({ min: 1, max: 238 }), { maxLength: 8, selector: (n) => n });
    fc.assert(
      fc.property(
        bad,
        fc.array(fc.constantFrom(-50, 5000, "x", "2e9"), { minLength: 8, maxLength: 8 }),
        (at, values) => {
          // Every third row, so that no two neighbours join into one complaint.
          const rows = asCsv(june).split("\r\n");
          at.forEach((n, i) => {
            rows[3 * n] = `${rows[3 * n].split(",")[0]},${values[i]}`;
          });
          const found = pathsOf(rows.join("\n"), { checkClock: false }).map((path) =>
            Number(/rows? (\d+)/.exec(path)?.[1]),
          );
          for (const n of at) expect(found).toContain(3 * n + 1);
          expect(found.length).toBe(at.length);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe("parseWeather notices a clock that slips", () => {
  const hints = (fastMinutes: number, options: Partial<WeatherOptions> = {}): string =>
    problemsOf(asCsv(madeRows({ ...JUNE, fastMinutes })), options)
      .map(({ hint }) => hint ?? "")
      .join("|");

  test("none where it is right", () => expect(hints(0)).toBe(""));

  test("interval starts", () => {
    expect(hints(-60)).toContain('stamps look like interval starts: set stamps to "start"');
    expect(hints(-30)).toContain('interval centres: set stamps to "centre"');
    expect(hints(0, { stamps: "start" })).toContain('set stamps to "end"');
  });

  test.each([
    [120, "UTC+2"],
    [-300, "UTC-5"],
    [570, "UTC+9.5"],
  ])("local time, %i min fast", (minutes, zone) => expect(hints(minutes)).toContain(`local time, ${zone}:`));

  test("a longitude with the wrong sign", () => {
    const place = { latitudeDeg: 40, longitudeDeg: -105 };
    const text = asCsv(madeRows({ ...JUNE, place }));
    expect(problemsOf(text, { place })).toEqual([]);
    const problems = problemsOf(text, { place: { ...place, longitudeDeg: 105 } });
    expect(problems).toHaveLength(1);
    expect(problems[0]?.hint).toContain("west is negative");
  });

  test("and takes the stamps as they are where told to, while its limits still hold", () => {
    expect(hints(-30, { checkClock: false })).toBe("");
    expect(hints(300, { checkClock: false })).toContain("UTC");
  });
});

describe("files of whole days", () => {
  const days = Array.from(
    { length: 30 },
    (_, i) => `2021-06-${String(i + 1).padStart(2, "0")},${5 + (i % 3)}`,
  );
  const readDays = (lines: readonly string[], header = "date,ghi_kWh_m2") =>
    parseWeather([header, ...lines].join("\n"), { place: PLACE, file: "d.csv" });
  const faults = (lines: readonly string[], header?: string) => {
    try {
      readDays(lines, header);
      return [];
    } catch (error) {
      if (error instanceof PlanError) return error.problems;
      throw error;
    }
  };

  test("are read as sums", () => {
    const series = readDays(days);
    expect(series).toMatchObject({ kind: "days", length: 30, firstDay: Date.UTC(2021, 5, 1) / 86_400_000 });
    expect(series.kind === "days" && Array.from(series.globalWh.slice(0, 3), Math.round)).toEqual([
      5000, 6000, 7000,
    ]);
  });

  test("fill short holes and refuse long ones, doubled dates and other units", () => {
    expect(readDays(days.filter((_, i) => i !== 10 && i !== 11)).mending.filled).toBe(2);
    expect(faults(days.filter((_, i) => i < 10 || i > 20))[0]?.value).toBe(
      "missing from 2021-06-11 to 2021-06-21",
    );
    expect(faults([...days, days[3]])[0]?.path).toBe("d.csv row 32 date");
    // MJ under a kWh header.
    expect(faults(days.map((line) => line.replace(/,\d/, ",22")))[0]).toMatchObject({
      path: "d.csv rows 2-31 ghi",
      hint: expect.stringContaining("ghi_MJ_m2"),
    });
  });
});
