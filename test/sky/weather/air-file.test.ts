import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseAir, withAir } from "../../../lib/sky/weather/read/air-file.ts";
import { parseWeather } from "../../../lib/sky/weather/read/parse-weather.ts";
import { asCsv, madeRows, PLACE } from "./weather-text.ts";

const light = parseWeather(asCsv(madeRows({ from: "2021-06-01", days: 10, intervalMinutes: 60 })), {
  place: PLACE,
});

/** Readings every so many hours of a temperature that rises a degree an hour from 1 June. */
const rising = (year: number, days: number, everyHours: number): string => {
  const startMs = Date.UTC(year, 5, 1);
  const rows = Array.from({ length: (24 * days) / everyHours + 1 }, (_, i) => {
    const hour = i * everyHours;
    return `${new Date(startMs + hour * 3_600_000).toISOString()},${-50 + hour * 0.1}`;
  });
  return ["time_utc,air_degC", ...rows].join("\n");
};

describe("withAir", () => {
  test("reads straight between readings, at the middle of each interval", () => {
    fc.assert(
      fc.property(fc.constantFrom(1, 2, 3), fc.constantFrom(2021, 2019), (everyHours, year) => {
        const series = withAir(light, parseAir(rising(year, 10, everyHours)));
        for (const [i, value] of (series.airC ?? []).entries())
          expect(value).toBeCloseTo(-50 + (i + 0.5) * 0.1, 9);
        expect(series.airC).toHaveLength(240);
        expect(series.mending.remarks).toEqual(light.mending.remarks);
      }),
    );
  });

  test("daily means belong to midday", () => {
    const lines = Array.from(
      { length: 10 },
      (_, i) => `2021-06-${String(i + 1).padStart(2, "0")},${10 + i},${2}`,
    );
    const series = withAir(light, parseAir(["date,air_degC,wind_m_s", ...lines].join("\n")));
    expect(series.airC?.[36]).toBeCloseTo(11 + 0.5 / 24, 9);
    expect(series.airC?.[0]).toBe(10);
    expect(series.windMs?.every((value) => value === 2)).toBe(true);
  });

  test("leaves holes where readings are missing, and says so", () => {
    const series = withAir(light, parseAir(rising(2021, 5, 1)));
    expect(series.airC?.filter(Number.isNaN).length).toBe(119);
    expect(series.mending.remarks.join()).toContain("no air temperature for 119 of 240 intervals");
  });
});

describe("parseAir refuses", () => {
  const message = (text: string): string => {
    try {
      parseAir(text, { file: "air.csv" });
      return "";
    } catch (error) {
      return String(error);
    }
  };

  test("files without air, rows out of order, kelvin under a bare name", () => {
    expect(message("time_utc,ghi\n2021-06-01T00:00Z,3")).toContain("name it air_degC or wind_m_s");
    expect(message("time_utc,t_amb\n2021-06-01T01:00Z,3\n2021-06-01T00:00Z,4")).toContain(
      "air.csv row 3 stamp",
    );
    expect(message("time_utc,t_amb\n2021-06-01T01:00Z,293")).toContain("kelvin");
    expect(message("time_utc,t_amb\n2021-06-01T01:00Z,12")).toBe("");
  });
});
