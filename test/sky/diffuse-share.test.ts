import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { engererShare } from "../../lib/sky/diffuse-share/engerer.ts";
import { erbsDaily, erbsHourly, erbsMonthly } from "../../lib/sky/diffuse-share/erbs.ts";
import { reindlShare } from "../../lib/sky/diffuse-share/reindl.ts";
import { ridleyShare } from "../../lib/sky/diffuse-share/ridley.ts";

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

describe("the published formulas by hand", () => {
  test("Erbs, hourly: 1 - 0.09 k, the quartic, 0.165", () => {
    expect(erbsHourly(0.1)).toBeCloseTo(0.991, 12);
    // 0.9511 - 0.0802 + 1.097 - 2.07975 + 0.771
    expect(erbsHourly(0.5)).toBeCloseTo(0.65915, 12);
    expect(erbsHourly(0.9)).toBe(0.165);
    expect(erbsHourly(-0.2)).toBe(1);
  });

  test("Erbs, daily: winter up to a sunset of 81.4 degrees, then the rest", () => {
    // 1 - 0.13635 + 0.612375 - 1.493925 + 0.58674375; 1 + 0.1416 - 0.638925 + 0.1056
    expect(erbsDaily(0.5, 81.4)).toBeCloseTo(0.56884375, 12);
    expect(erbsDaily(0.5, 81.5)).toBeCloseTo(0.608275, 12);
    expect([erbsDaily(0.9, 70), erbsDaily(0.9, 100)]).toEqual([0.143, 0.175]);
    expect([erbsDaily(-1, 70), erbsDaily(-1, 100)]).toEqual([1, 1]);
  });

  test("Erbs, monthly: the ends hold beyond 0.3 and 0.8", () => {
    // 1.391 - 1.78 + 1.04725 - 0.267125; 1.311 - 1.511 + 0.85675 - 0.227625
    expect(erbsMonthly(0.5, 81.4)).toBeCloseTo(0.391125, 12);
    expect(erbsMonthly(0.5, 81.5)).toBeCloseTo(0.429125, 12);
    // 1.311 - 0.9066 + 0.30843 - 0.049167; 1.311 - 2.4176 + 2.19328 - 0.932352
    expect(erbsMonthly(0.1, 100)).toBeCloseTo(0.663663, 12);
    expect(erbsMonthly(0.9, 100)).toBeCloseTo(0.154328, 12);
  });

  test("Reindl: three stretches, each held in its bounds", () => {
    // 1.02 - 0.0508 + 0.00615; 1.02 - 0.0762 + 0.00615; 1.4 - 0.8745 + 0.0885; 0.3888 - 0.091
    expect(reindlShare(0.2, 0.5)).toBeCloseTo(0.97535, 12);
    expect(reindlShare(0.3, 0.5)).toBeCloseTo(0.94995, 12);
    expect(reindlShare(0.5, 0.5)).toBeCloseTo(0.614, 12);
    expect(reindlShare(0.8, 0.5)).toBeCloseTo(0.2978, 12);
    // 0.37908 - 0.182 at 0.78, where the last stretch begins
    expect(reindlShare(0.78, 1)).toBeCloseTo(0.19708, 12);
    expect(reindlShare(0, 1)).toBe(1);
    expect(reindlShare(-0.4, 0)).toBe(1);
    expect(reindlShare(0.31, 1)).toBe(0.97);
    expect(reindlShare(0.77, 0)).toBe(0.1);
    expect(reindlShare(0.5, 5)).toBe(0.97);
    expect(reindlShare(0.8, 5)).toBe(0.1);
  });

  test("Ridley: -5.38 + 3.315 + 0.06 - 0.21 + 0.7 + 0.786 = -0.729", () => {
    expect(ridleyShare(0.5, 0.4, 0.6, 10, 30)).toBeCloseTo(1 / (1 + Math.exp(-0.729)), 12);
  });

  test("Engerer: below and above the clear sky's light", () => {
    // -3.7912 + 4.52874 - 0.10036 + 0.12592 - 0.53146 = 0.23164
    expect(engererShare(0.6, 0.7, 10, 40)).toBeCloseTo(0.042336 + 0.957664 / (1 + Math.exp(0.23164)), 9);
    // -3.7912 + 6.03832 - 0.120432 + 0.09444 + 0.53146 = 2.752588; 1 - 0.7 / 0.8 = 0.125
    expect(engererShare(0.8, 0.7, 12, 30)).toBeCloseTo(
      0.042336 + 0.957664 / (1 + Math.exp(2.752588)) + 1.7073 * 0.125,
      9,
    );
    // Far above the clear sky the sum passes 1: 1.7073 x 0.9 alone does.
    expect(engererShare(1, 0.1, 12, 30)).toBe(1);
  });
});
