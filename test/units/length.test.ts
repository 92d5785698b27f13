import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inchesText, millimetresOf, millimetresText } from "../../lib/plan/index.ts";
import { metresOf } from "../../lib/units/length.ts";

describe("millimetresOf", () => {
  // The inch of 1959 is 25.4 mm exactly.
  test.each([
    ["21.5 in", 546.1],
    ["21 1/2 in", 546.1],
    ['1/16"', 1.5875],
    ["12 inches", 304.8],
    ["540 mm", 540],
    ["34 cm", 340],
    ["33.5cm", 335],
  ])("%s is %d mm", (text, mm) => {
    expect(millimetresOf(text)).toBeCloseTo(mm, 9);
  });

  test.each(["", "21.5", "five in", "-3 in", "1/0 in", "3 ft"])("%j is no length", (text) => {
    expect(millimetresOf(text)).toBeNull();
  });
});

describe("metresOf", () => {
  // The foot of 1959 is 0.3048 m exactly.
  test.each([
    ["20 ft", 6.096],
    ["1 foot", 0.3048],
    ["5.5 m", 5.5],
  ])("%s is %d m", (text, metres) => {
    expect(metresOf(text)).toBeCloseTo(metres, 12);
  });

  test.each(["", "5", "12 yd", "-1 m", "5 mm"])("%j is no length of cable", (text) => {
    expect(metresOf(text)).toBeNull();
  });
});

describe("inchesText", () => {
  test.each([
    [546.1, "21 1/2 in"],
    [1.5875, "1/16 in"],
    [25.4, "1 in"],
    [25.3, "1 in"],
    [0, "0 in"],
    [-12.7, "-1/2 in"],
    [-0.1, "0 in"],
    // 4/16 and 6/16 are a quarter and three eighths.
    [6.35, "1/4 in"],
    [9.525, "3/8 in"],
  ])("%d mm reads %s", (mm, text) => {
    expect(inchesText(mm)).toBe(text);
  });

  test("reads back within half of 1/16 inch", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3000, noNaN: true }), (mm) => {
        expect(Math.abs((millimetresOf(inchesText(mm)) ?? Number.NaN) - mm)).toBeLessThanOrEqual(
          25.4 / 32 + 1e-9,
        );
      }),
    );
  });
});

test("millimetresText rounds to whole millimetres", () => {
  expect(millimetresText(546.1)).toBe("546 mm");
});
