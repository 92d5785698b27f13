import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DIFFUSE_SPLITS } from "../../lib/plan/sky.ts";
import { engererShare } from "../../lib/sky/diffuse-share/engerer.ts";
import { erbsDaily, erbsHourly, erbsMonthly } from "../../lib/sky/diffuse-share/erbs.ts";
import { reindlShare } from "../../lib/sky/diffuse-share/reindl.ts";
import { ridleyShare } from "../../lib/sky/diffuse-share/ridley.ts";
import { type LitIntervals, SPLITS } from "../../lib/sky/weather/split.ts";

const unit = fc.double({ min: 0, max: 1, noNaN: true });

describe("diffuse share", () => {
  test("is a share, whatever the sky", () => {
    fc.assert(
      fc.property(unit, unit, unit, fc.double({ min: 0, max: 24, noNaN: true }), (k, day, sine, hour) => {
        const altitudeDeg = 90 * sine;
        for (const share of [
          erbsHourly(k),
          erbsMonthly(k, 180 * day),
          reindlShare(k, sine),
          engererShare(k, day, hour, 90 - altitudeDeg),
          ridleyShare(k, day, k, hour, altitudeDeg),
        ]) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1);
        }
        // As published the daily form goes over 1 by up to 0.8 % for the darkest days.
        expect(erbsDaily(k, 180 * day)).toBeLessThanOrEqual(1.008);
        expect(erbsDaily(k, 180 * day)).toBeGreaterThan(0.14);
      }),
    );
  });

  test("branches of Erbs meet as published: 0.0003 at 0.22 and 0.80, 0.001 in winter, a step of 0.015 else", () => {
    const step = (of: (k: number) => number, at: number): number => Math.abs(of(at + 1e-9) - of(at - 1e-9));
    expect(step(erbsHourly, 0.22)).toBeLessThan(0.0003);
    expect(step(erbsHourly, 0.8)).toBeLessThan(0.0003);
    expect(step((k) => erbsDaily(k, 70), 0.715)).toBeLessThan(0.001);
    expect(step((k) => erbsDaily(k, 100), 0.722)).toBeCloseTo(0.015, 3);
  });

  test("an overcast sky is all diffuse, a clear one mostly beam, by every model", () => {
    expect(erbsHourly(0.05)).toBeGreaterThan(0.99);
    expect(engererShare(0.05, 0.75, 12, 30)).toBeGreaterThan(0.97);
    expect(ridleyShare(0.05, 0.05, 0.05, 12, 60)).toBeGreaterThan(0.97);
    expect(reindlShare(0.05, 0.87)).toBeGreaterThan(0.97);
    for (const share of [
      erbsHourly(0.75),
      engererShare(0.75, 0.76, 12, 30),
      ridleyShare(0.75, 0.75, 0.75, 12, 60),
    ]) {
      expect(share).toBeLessThan(0.3);
    }
  });

  test("light brighter than the clear sky's is light from clouds", () => {
    expect(engererShare(0.9, 0.75, 12, 30)).toBeGreaterThan(engererShare(0.76, 0.75, 12, 30) + 0.15);
  });

  test("NaN stays NaN, no light is all diffuse", () => {
    for (const share of [erbsHourly, (k: number) => erbsDaily(k, 100), (k: number) => reindlShare(k, 0.5)]) {
      expect(share(Number.NaN)).toBeNaN();
    }
    expect(engererShare(Number.NaN, 0.7, 12, 30)).toBeNaN();
    expect(engererShare(0, 0.7, 12, 30)).toBe(1);
  });

  test("examples", () => {
    expect(erbsHourly(0.445)).toBeCloseTo(0.766, 3);
    expect(erbsDaily(0.69, 95.6)).toBeCloseTo(0.256, 3);
    expect(erbsMonthly(0.5, 100)).toBeCloseTo(0.429, 3);
    expect(engererShare(0.7, 0.74, 12, 30)).toBeCloseTo(0.255, 3);
    expect(ridleyShare(0.6, 0.6, 0.6, 12, 45)).toBeCloseTo(0.452, 3);
    expect(reindlShare(0.6, 0.7)).toBeCloseTo(0.4745, 4);
  });
});

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
});
