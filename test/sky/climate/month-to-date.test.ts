import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  COMMON_YEAR,
  calendarIndex,
  holdMeansWithin,
  smoothYear,
} from "../../../lib/sky/climate/month-to-date.ts";

const twelve = (least: number, most: number) =>
  fc.array(fc.double({ min: least, max: most, noNaN: true }), { minLength: 12, maxLength: 12 });

const meansOf = (values: Float64Array, weights: ArrayLike<number>): readonly number[] =>
  Array.from({ length: 12 }, (_, month) => {
    let [sum, weight] = [0, 0];
    for (const [day, { month: own }] of COMMON_YEAR.entries()) {
      if (own !== month + 1) continue;
      sum += values[day] * weights[day];
      weight += weights[day];
    }
    return sum / weight;
  });

const even = new Float64Array(365).fill(1);

describe("calendarIndex", () => {
  test("counts the days of a common year, the leap day with the one before", () => {
    expect(calendarIndex("2027-01-01")).toBe(0);
    expect(calendarIndex("2027-12-31")).toBe(364);
    expect(calendarIndex("2028-02-29")).toBe(calendarIndex("2028-02-28"));
    expect(calendarIndex("2028-03-01")).toBe(calendarIndex("2027-03-01"));
  });
});

describe("smoothYear", () => {
  test("keeps every month's mean", () => {
    fc.assert(
      fc.property(twelve(-30, 40), (means) => {
        for (const [month, mean] of meansOf(smoothYear(means), even).entries()) {
          expect(mean).toBeCloseTo(means[month], 9);
        }
      }),
    );
  });

  test("keeps weighted means, and leads through months without weight", () => {
    const weights = Float64Array.from(COMMON_YEAR, ({ month }, day) =>
      month === 12 || month === 1 ? 0 : 1 + (day % 7),
    );
    const means = [99, 1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 99];
    const values = smoothYear(means, weights);
    const found = meansOf(values, weights);
    for (let month = 1; month < 11; month++) expect(found[month]).toBeCloseTo(means[month], 6);
    // The months that weigh nothing follow their neighbours, not their own idle numbers.
    expect(Math.max(...values)).toBeLessThan(7);
  });

  test("is smooth: no step between months is larger than those within", () => {
    const values = smoothYear([1, 2, 3, 4, 5, 6, 6, 5, 4, 3, 2, 1]);
    const steps = Array.from(values, (value, day) => Math.abs(value - values[(day + 364) % 365]));
    expect(Math.max(...steps)).toBeLessThan(0.06);
  });

  test("of equal months is flat", () => {
    expect(Math.max(...smoothYear(Array(12).fill(5)).map((value) => Math.abs(value - 5)))).toBeLessThan(
      1e-12,
    );
  });
});

describe("holdMeansWithin", () => {
  test("puts every day between its bounds and keeps the mean where the bounds have room", () => {
    fc.assert(
      fc.property(twelve(0.2, 0.9), (means) => {
        const values = smoothYear(means);
        holdMeansWithin(values, means, even, new Float64Array(365).fill(0.1), new Float64Array(365).fill(1));
        expect(Math.min(...values)).toBeGreaterThanOrEqual(0.1);
        expect(Math.max(...values)).toBeLessThanOrEqual(1);
        for (const [month, mean] of meansOf(values, even).entries())
          expect(mean).toBeCloseTo(means[month], 9);
      }),
    );
  });
});
