import { describe, expect, test } from "vitest";
import { DIFFUSE_SPLITS } from "../../../lib/plan/sky.ts";
import { engererShare } from "../../../lib/sky/diffuse-share/engerer.ts";
import { erbsHourly } from "../../../lib/sky/diffuse-share/erbs.ts";
import { reindlShare } from "../../../lib/sky/diffuse-share/reindl.ts";
import { ridleyShare } from "../../../lib/sky/diffuse-share/ridley.ts";
import { type LitIntervals, SPLITS } from "../../../lib/sky/weather/lay/split.ts";

describe("splits of a season's intervals", () => {
  const intervals = (global: readonly number[]): LitIntervals => {
    const column = (value: number) => new Float64Array(global.length).fill(value);
    return {
      length: global.length,
      global: Float64Array.from(global),
      above: Float64Array.from(global, (_, i) => (i === 0 ? 0 : 1000)),
      clear: column(760),
      sine: column(0.75),
      solarHour: column(12),
      day: Int32Array.from(global, (_, i) => (i < 4 ? 0 : 1)),
    };
  };

  test("agree with the model of one interval", () => {
    const lit = intervals([0, 300, 500, 700, 600, 200]);
    const sharesBy = (split: (typeof DIFFUSE_SPLITS)[number]): number[] => {
      const shares = new Float64Array(lit.length);
      SPLITS[split](lit, shares);
      return Array.from(shares);
    };
    const altitudeDeg = (Math.asin(0.75) * 180) / Math.PI;
    expect(sharesBy("erbs")[2]).toBe(erbsHourly(0.5));
    expect(sharesBy("reindl")[2]).toBe(reindlShare(0.5, 0.75));
    expect(sharesBy("engerer")[2]).toBeCloseTo(engererShare(0.5, 0.76, 12, 90 - altitudeDeg), 12);
    // Ridley: the day's clearness is 0.5; the neighbours of 0.5 are 0.3 and 0.7; at the day's ends the one there is.
    expect(sharesBy("ridley")[2]).toBeCloseTo(ridleyShare(0.5, 0.5, 0.5, 12, altitudeDeg), 12);
    expect(sharesBy("ridley")[3]).toBeCloseTo(ridleyShare(0.7, 0.5, 0.5, 12, altitudeDeg), 12);
    expect(sharesBy("ridley")[4]).toBeCloseTo(ridleyShare(0.6, 0.4, 0.2, 12, altitudeDeg), 12);
  });

  test("give shares without NaN for every model, dark intervals too", () => {
    const lit = intervals([0, 0, 1500, 700, 0, 10]);
    expect(DIFFUSE_SPLITS.length).toBeGreaterThanOrEqual(3);
    for (const split of DIFFUSE_SPLITS) {
      const shares = new Float64Array(lit.length);
      SPLITS[split](lit, shares);
      for (const share of shares) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
    }
  });

  test("clearness is held between 0 and 1, and a dark interval is all diffuse", () => {
    const lit = intervals([0, 1200, 500, 700, 600, 200]);
    const sharesBy = (split: (typeof DIFFUSE_SPLITS)[number]): readonly number[] => {
      const shares = new Float64Array(lit.length);
      SPLITS[split](lit, shares);
      return [...shares];
    };
    const altitudeDeg = (Math.asin(0.75) * 180) / Math.PI;
    expect(sharesBy("erbs")[1]).toBe(erbsHourly(1));
    expect(sharesBy("reindl")[1]).toBe(reindlShare(1, 0.75));
    expect(sharesBy("engerer")[1]).toBeCloseTo(engererShare(1, 0.76, 12, 90 - altitudeDeg), 12);
    // The first interval has no sun: no clearness, no neighbour.
    expect(sharesBy("erbs")[0]).toBe(1);
    expect(sharesBy("engerer")[0]).toBe(1);
    expect(sharesBy("ridley")[0]).toBe(1);
    expect(sharesBy("ridley")[1]).toBeCloseTo(ridleyShare(1, 0.8, 0.5, 12, altitudeDeg), 12);
    // The last of its day has one neighbour, before it.
    expect(sharesBy("ridley")[5]).toBeCloseTo(ridleyShare(0.2, 0.4, 0.6, 12, altitudeDeg), 12);
  });

  test("a day of one lit interval is its own neighbour", () => {
    const one = { ...intervals([0, 400]), day: Int32Array.of(0, 0) };
    const shares = new Float64Array(2);
    SPLITS.ridley(one, shares);
    expect(shares[1]).toBeCloseTo(ridleyShare(0.4, 0.4, 0.4, 12, (Math.asin(0.75) * 180) / Math.PI), 12);
  });
});
