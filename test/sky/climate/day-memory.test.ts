import { describe, expect, test } from "vitest";
import { NO_UNCERTAINTY } from "../../../lib/sky/climate/climate.ts";
import { dayMemory, measuredDayMemory, PUBLISHED_DAY_MEMORY } from "../../../lib/sky/climate/day-memory.ts";
import { skySequences } from "../../../lib/sky/climate/days/sequences.ts";
import { chosenClimate } from "../../../lib/sky/climate/place/plan-climate.ts";
import { parseClimateTable } from "../../../lib/sky/climate/table/climate-table.ts";
import { PlanError } from "../../../lib/units/problem.ts";

const record = (clearness: readonly number[], month = 1) =>
  clearness.map((value, day) => ({ day, month, clearness: value }));

describe("measuredDayMemory", () => {
  test("is the mean product of neighbours over the mean square, worked by hand", () => {
    // Departures from 4: -3, -1, 1, 3; products 3 - 1 + 3 over 3 pairs; squares 20 over 4 days.
    const { correlation, years } = measuredDayMemory(record([1, 3, 5, 7]));
    expect(correlation).toBeCloseTo(5 / 3 / 5, 12);
    expect(years).toBeCloseTo(4 / 365, 12);
  });

  test("takes out each month's own mean", () => {
    const two = [
      ...record([0, 1, 0, 1]),
      ...record([10, 11, 10, 11], 2).map((d) => ({ ...d, day: d.day + 4 })),
    ];
    // Every neighbour is on the other side of its month's mean, the two months apart or not.
    expect(measuredDayMemory(two).correlation).toBeCloseTo(-1, 12);
  });

  test("does not pair days across a gap", () => {
    const whole = measuredDayMemory(record([1, 3, 5, 7]));
    const gapped = measuredDayMemory(
      record([1, 3, 5, 7]).map((d) => ({ ...d, day: d.day > 1 ? d.day + 1 : d.day })),
    );
    // Pairs 1-3 and 5-7 alone: products 3 and 3.
    expect(gapped.correlation).toBeCloseTo(3 / 5, 12);
    expect(gapped.years).toBe(whole.years);
  });

  test("a single day says nothing", () => {
    expect(measuredDayMemory(record([0.5])).correlation).toBeNaN();
  });
});

describe("dayMemory", () => {
  test("is the published value where nothing was measured", () => {
    expect(dayMemory(null)).toBe(0.29);
  });

  test("lies between the published value and the place's own, nearer to its own with every year", () => {
    const own = 0.04 + 1.09 * 0.45;
    const afterYears = [0.5, 1, 5, 30].map((years) => dayMemory({ correlation: 0.45, years }));
    expect(afterYears).toEqual(afterYears.toSorted((a, b) => a - b));
    expect(afterYears[0]).toBeGreaterThan(PUBLISHED_DAY_MEMORY);
    expect(afterYears[1]).toBeCloseTo((PUBLISHED_DAY_MEMORY + own) / 2, 12);
    expect(afterYears[3]).toBeGreaterThan(own - 0.01);
    expect(afterYears[3]).toBeLessThan(own);
  });

  test("undoes what measuring hides: seasons drawn with it show the correlation that was measured", () => {
    const calendar = Array.from({ length: 360 }, (_, index) => ({
      date: "2027-01-01",
      month: 1 + Math.floor(index / 30),
      dayOfYear: index + 1,
      startMs: 0,
      noonMs: 0,
      noonAltitudeDeg: 40,
      first: 0,
      end: 1,
      sunHours: 12,
    }));
    const days = calendar.map(() => ({ latitudeDeg: 47, clearClearness: 0.75, ratio: 0.6, uncertainty: 0 }));
    for (const correlation of [0.1, 0.25, 0.4, 0.6]) {
      // A thousand years of days leave the published value no say.
      const memory = dayMemory({ correlation, years: 1000 });
      const drawn = skySequences(calendar, { latitudeDeg: 47, days }, NO_UNCERTAINTY, {
        seasons: 100,
        seed: 4,
        memory,
      });
      let sum = 0;
      for (let season = 0; season < 100; season++) {
        sum += measuredDayMemory(
          calendar.map(({ month }, day) => ({ day, month, clearness: drawn.ratio[season * 360 + day] })),
        ).correlation;
      }
      // 0.05 a year by chance, a tenth of it over a hundred years, two of these; the straight line holds to 0.01.
      expect(Math.abs(sum / 100 - correlation)).toBeLessThan(0.02);
    }
  });
});

describe("skySequences with a memory", () => {
  test("refuses one that no series can have", () => {
    for (const memory of [1, -1, Number.NaN]) {
      expect(() => skySequences([], { latitudeDeg: 47, days: [] }, NO_UNCERTAINTY, { memory })).toThrow(
        "skySequences: expected a memory between -1 and 1",
      );
    }
  });
});

describe("a climate's memory", () => {
  const site = { latitudeDeg: 50.8, longitudeDeg: 6.02, elevationM: 231 };

  test("may be stated with twelve months of one's own", () => {
    const from = { kind: "months", windHeightM: 10, clearness: Array<number>(12).fill(0.5) } as const;
    expect(chosenClimate(from, { stations: [] }, site).climate.dayMemory).toBe(PUBLISHED_DAY_MEMORY);
    const stated = { ...from, dayMemory: 0.4, dayMemoryYears: 9 };
    expect(chosenClimate(stated, { stations: [] }, site).climate.dayMemory).toBeCloseTo(
      0.1 * 0.29 + 0.9 * (0.04 + 1.09 * 0.4),
      12,
    );
  });
});

describe("a table's memory", () => {
  const months = Array.from({ length: 12 }, (_, month) => String(month + 1).padStart(2, "0"));
  const table = (memory: string, years: string): string =>
    `latitude_deg,longitude_deg,${months.map((month) => `clearness_${month}`).join(",")},day_memory,day_memory_years\n` +
    `47,11,${months.map(() => "0.5").join(",")},${memory},${years}\n`;
  const problemsOf = (csv: string): string => {
    try {
      parseClimateTable(csv, "my.csv");
    } catch (error) {
      if (error instanceof PlanError) return error.message;
      throw error;
    }
    return "";
  };

  test("is read with its years", () => {
    expect(parseClimateTable(table("0.31", "4")).stations[0].dayMemory).toEqual({
      correlation: 0.31,
      years: 4,
    });
    expect(parseClimateTable(table("", " ")).stations[0].dayMemory).toBeNull();
  });

  test.each([
    ["0.31", "", "my.csv row 2 day_memory_years"],
    ["", "4", "my.csv row 2 day_memory"],
    ["31", "4", 'my.csv row 2 day_memory "31": must be -0.2 to 0.8'],
    ["much", "", 'my.csv row 2 day_memory "much": must be -0.2 to 0.8'],
    ["0.3", "0", 'my.csv row 2 day_memory_years "0": must be 0.2 to 150 years of days'],
  ])("%s over %s years is named", (memory, years, complaint) => {
    expect(problemsOf(table(memory, years))).toContain(complaint);
  });
});
