import { describe, expect, test } from "vitest";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import { erbsDaily } from "../../../lib/sky/diffuse-share/erbs.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { weatherSkyColumns, weatherYears } from "../../../lib/sky/weather/lay/weather-columns.ts";
import { dailyAbove } from "../../../lib/sky/weather/read/daily.ts";
import { parseWeather } from "../../../lib/sky/weather/read/parse-weather.ts";
import type { DailySeries } from "../../../lib/sky/weather/read/series.ts";
import { sunColumns } from "../../../lib/sun/index.ts";
import { complaintsOf } from "./problems.ts";

const PLACE = { latitudeDeg: 52, longitudeDeg: 5 };

const read = (text: string): DailySeries => {
  const series = parseWeather(text, { place: PLACE, file: "d.csv" });
  if (series.kind !== "days") throw new Error("expected days");
  return series;
};

const complaints = (text: string) => complaintsOf(() => read(text));

describe("dailyAbove", () => {
  test("is what arrives above the air that day (Duffie & Beckman eq. 1.10.3)", () => {
    // FAO-56 example 8: 3 September (day 246) at 20 S, 32.2 MJ/m2 with 1367 W/m2.
    const day = Date.UTC(2027, 8, 3) / 86_400_000;
    expect((dailyAbove(day, -20) * 0.0036 * 1367) / 1361).toBeCloseTo(32.2, 0);
    // 1 January and 31 December lie next to each other.
    const newYear = Date.UTC(2027, 0, 1) / 86_400_000;
    expect(Math.abs(dailyAbove(newYear, 40) / dailyAbove(newYear - 1, 40) - 1)).toBeLessThan(0.005);
  });
});

describe("files of whole days", () => {
  test("sums in any unit of energy; a mean power is 24 hours of it", () => {
    const first = (header: string, value: number): number =>
      read(`date,${header}\n2027-06-01,${value}`).globalWh[0];
    expect(first("ghi_Wh_m2", 5000)).toBeCloseTo(5000, 6);
    expect(first("ghi_kWh_m2", 5)).toBeCloseTo(5000, 6);
    expect(first("ghi_MJ_m2", 18)).toBeCloseTo(5000, 6);
    expect(first("ghi_W_m2", 5000 / 24)).toBeCloseTo(5000, 6);
  });

  test("air and wind come along where the file has them, short holes bridged", () => {
    const series = read(
      "date,ghi_Wh_m2,air,wind\n2027-06-01,5000,10,\n2027-06-02,5000,,\n2027-06-03,5000,14,",
    );
    expect([...(series.airC ?? [])]).toEqual([10, 12, 14]);
    expect(series.windMs).toBeUndefined();
    expect(series).toMatchObject({ kind: "days", length: 3, firstDay: Date.UTC(2027, 5, 1) / 86_400_000 });
    expect(series.mending).toEqual({ filled: 0, zeroed: 0, ignoredColumns: [], remarks: [] });
    const windy = read("date,ghi_Wh_m2,wind,cloud\n2027-06-01,5000,3,7");
    expect(windy.windMs?.[0]).toBe(3);
    expect(windy.airC).toBeUndefined();
    expect(windy.mending.ignoredColumns).toEqual(["cloud"]);
  });

  test("holes of up to three days are filled by the clearness around them, and counted", () => {
    const series = read("date,ghi_Wh_m2\n2027-03-01,1000\n2027-03-05,2000");
    const above = [0, 1, 2, 3, 4].map((day) => dailyAbove(series.firstDay + day, 52));
    const [low, high] = [1000 / above[0], 2000 / above[4]];
    above.forEach((sun, day) => {
      expect(series.globalWh[day]).toBeCloseTo((low + ((high - low) * day) / 4) * sun, 6);
    });
    expect(series.mending).toMatchObject({
      filled: 3,
      remarks: ["3 of 5 days had no sum and were filled in"],
    });
    expect(complaints("date,ghi_Wh_m2\n2027-03-01,1000\n2027-03-06,2000")).toEqual([
      {
        path: "d.csv ghi",
        value: "missing from 2027-03-02 to 2027-03-05",
        allowed: "must have no hole of more than 3 days",
        hint: "take another year or station, or put its days in for that time",
      },
    ]);
  });

  test("doubled and unordered dates, and sums that no sun gives, each with its row", () => {
    const found = complaints(
      "date,ghi_Wh_m2\n2027-06-01,5000\n2027-06-03,5000\n2027-06-02,5000\n2027-06-01,5000\n2027-06-04,-1\n2027-06-05,14000",
    );
    const most = Math.round(1.05 * dailyAbove(Date.UTC(2027, 5, 4) / 86_400_000, 52) + 100);
    const mostAfter = Math.round(1.05 * dailyAbove(Date.UTC(2027, 5, 5) / 86_400_000, 52) + 100);
    const hint = "is the unit in the header right: ghi_Wh_m2, ghi_kWh_m2 or ghi_MJ_m2?";
    expect(found).toEqual([
      {
        path: "d.csv row 4 date",
        value: "2027-06-02",
        allowed: "must come after the row before",
        hint: "sort the rows by date",
      },
      {
        path: "d.csv row 5 date",
        value: "2027-06-01",
        allowed: "must not stand twice",
        hint: "it stands in row 2 too",
      },
      {
        path: "d.csv row 6 ghi",
        value: -1,
        allowed: `must be 0 to ${most} Wh/m2, what the sun gives that day`,
        hint,
      },
      {
        path: "d.csv row 7 ghi",
        value: 14000,
        allowed: `must be 0 to ${mostAfter} Wh/m2, what the sun gives that day`,
        hint,
      },
    ]);
  });

  test("dates that do not follow each other, or none at all", () => {
    expect(complaints("date,ghi_Wh_m2\n2027-06-01,5000\n2007-06-01,5000")).toEqual([
      {
        path: "d.csv date",
        value: "2007-06-01 to 2027-06-01",
        allowed: "must be dates that follow each other",
      },
    ]);
    // A year for each two rows, and some: 406 days are still laid out, and their hole told.
    expect(complaints("date,ghi_Wh_m2\n2027-06-01,5000\n2028-07-10,5000")[0].value).toBe(
      "missing from 2027-06-02 to 2028-07-09",
    );
    expect(complaints("date,ghi_Wh_m2\n2027-06-01,5000\n2028-07-12,5000")[0].allowed).toBe(
      "must be dates that follow each other",
    );
  });

  test("a date that can't be read is told, and the others are read on", () => {
    expect(complaints("date,ghi_Wh_m2\n2027-06-01,5000\n2 June,5000\n2027-06-03,5000")).toEqual([
      { path: "d.csv row 3 stamp", value: "2 June", allowed: "must be a date, YYYY-MM-DD" },
    ]);
  });

  test("a dark winter day takes nothing, where there is no sun to tell clearness by", () => {
    const series = parseWeather("date,ghi_Wh_m2\n2027-12-20,0\n2027-12-21,0\n2027-12-22,50", {
      place: { latitudeDeg: 80, longitudeDeg: 0 },
      file: "d.csv",
    });
    expect(series.kind === "days" && [...series.globalWh]).toEqual([0, 0, 50]);
  });
});

describe("days laid onto a season", () => {
  const sunOf = (from: string, to: string, latitudeDeg = 52) =>
    sunColumns({ latitudeDeg, longitudeDeg: 5, timeZone: "Etc/UTC" }, { from, to }, 30);
  const clearOf = (sun: ReturnType<typeof sunOf>) =>
    clearSkyColumns(sun, clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, 0), 0.2, {
      airC: 15,
      windMs: 2,
    });
  const seriesOf = (
    from: string,
    globalWh: readonly number[],
    over: Partial<DailySeries> = {},
  ): DailySeries => ({
    kind: "days",
    firstDay: Date.parse(from) / 86_400_000,
    length: globalWh.length,
    globalWh: Float64Array.from(globalWh),
    mending: { filled: 0, zeroed: 0, ignoredColumns: [], remarks: [] },
    ...over,
  });

  test("global goes with the clear sky, diffuse with the light above the air, by Erbs's daily share", () => {
    const sun = sunOf("2027-06-01", "2027-06-02");
    const clear = clearOf(sun);
    const sky = weatherSkyColumns(sun, seriesOf("2027-06-01", [4000, 6000]), clear, { latitudeDeg: 52 });
    sun.days.forEach(({ first, end }, day) => {
      let [clearWh, aboveWh, diffuseWh] = [0, 0, 0];
      for (let row = first; row < end; row += 1) {
        clearWh += clear.global[row] * sun.hours[row];
        aboveWh += clear.extraterrestrial[row] * sun.up[row] * sun.hours[row];
        diffuseWh += sky.diffuse[row] * sun.hours[row];
      }
      const sumWh = [4000, 6000][day];
      // Summer days at 52 N: the sun sets beyond 81.4 degrees.
      expect(diffuseWh / sumWh).toBeCloseTo(erbsDaily(sumWh / aboveWh, 120), 3);
      for (let row = first; row < end; row += 1) {
        expect(sky.global[row]).toBeCloseTo((sumWh / clearWh) * clear.global[row], 9);
        expect(sky.beamNormal[row] * sun.up[row]).toBeCloseTo(sky.global[row] - sky.diffuse[row], 6);
      }
    });
  });

  test("a winter day takes the winter branch, and a day of nothing is dark", () => {
    const sun = sunOf("2027-12-20", "2027-12-21");
    const clear = clearOf(sun);
    const sky = weatherSkyColumns(sun, seriesOf("2027-12-20", [700, 0]), clear, { latitudeDeg: 52 });
    const [{ first, end }, dark] = sun.days;
    let [aboveWh, diffuseWh] = [0, 0];
    for (let row = first; row < end; row += 1) {
      aboveWh += clear.extraterrestrial[row] * sun.up[row] * sun.hours[row];
      diffuseWh += sky.diffuse[row] * sun.hours[row];
    }
    expect(diffuseWh / 700).toBeCloseTo(erbsDaily(700 / aboveWh, 60), 3);
    for (const column of [sky.global, sky.diffuse, sky.beamNormal])
      expect(Math.max(...column.subarray(dark.first, dark.end))).toBe(0);
  });

  test("air and wind are the file's, wind brought down to the panel, holes those of the clear columns", () => {
    const sun = sunOf("2027-06-01", "2027-06-02");
    const series = seriesOf("2027-06-01", [4000, 4000], {
      airC: Float64Array.of(21, Number.NaN),
      windMs: Float64Array.of(Number.NaN, 6),
    });
    const sky = weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg: 52, windHeightM: 10 });
    const [a, b] = sun.days;
    // FAO-56 eq. 47: ln(67.8 x 0.5 - 5.42) / ln(67.8 x 10 - 5.42) of the wind at 10 m.
    const down = Math.log(28.48) / Math.log(672.58);
    expect([sky.airC[a.first], sky.airC[b.first]]).toEqual([21, 15]);
    expect(sky.windMs[a.end - 1]).toBe(2);
    expect(sky.windMs[b.end - 1]).toBeCloseTo(6 * down, 9);
  });

  test("days missing from the file are told with what it holds; polar nights ask for none", () => {
    const sun = sunOf("2027-05-30", "2027-06-03");
    const series = seriesOf("2020-06-01", [4000, 4000]);
    expect(complaintsOf(() => weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg: 52 }))).toEqual([
      {
        path: "weather file",
        value: "no sums for 2027-05-30 to 2027-06-03",
        allowed: "must hold every day of the season; it runs from 2020-06-01 to 2020-06-02",
        hint: "shorten the season, or take a file of a whole year",
      },
    ]);
    const night = sunOf("2027-11-10", "2027-11-22", 72);
    const lit = night.days.filter(({ first, end }) => end > first).length;
    expect(lit).toBeGreaterThan(0);
    expect(lit).toBeLessThan(night.days.length);
    const some = seriesOf("2027-11-10", new Array<number>(lit).fill(20));
    expect(weatherYears(some, night)).toEqual([2027]);
    expect(weatherSkyColumns(night, some, clearOf(night), { latitudeDeg: 72 }).length).toBe(night.length);
  });

  test("columns of another length are refused by name", () => {
    const sun = sunOf("2027-06-01", "2027-06-01");
    const short = clearOf(sunOf("2027-12-20", "2027-12-20"));
    const series = seriesOf("2027-06-01", [4000]);
    const lay = (clear: typeof short, out: typeof short) => () =>
      weatherSkyColumns(sun, series, clear, { latitudeDeg: 52 }, out);
    expect(lay(short, clearOf(sun))).toThrow(
      `weatherSkyColumns: expected clear of ${sun.length} rows, received ${short.length}`,
    );
    expect(lay(clearOf(sun), short)).toThrow(
      `weatherSkyColumns: expected out of ${sun.length} rows, received ${short.length}`,
    );
  });
});
