import { describe, expect, test } from "vitest";
import { z } from "zod";
import { civilDate, count, lengthMm, monthly, quantity, shortName } from "../../lib/plan/field.ts";
import { pathText, problemsOf } from "../../lib/plan/issues.ts";
import { checkPlan } from "../../lib/plan/read-plan.ts";
import { linesOf } from "./plan-with.ts";

const said = (schema: z.ZodType, value: unknown) => {
  const parsed = schema.safeParse(value);
  return parsed.success ? [] : problemsOf(schema, value, parsed.error.issues);
};

test("a path reads as a person writes it", () => {
  expect(pathText(["stand", "legs", 1, "lengthMm"])).toBe("stand.legs[1].lengthMm");
  expect(pathText([])).toBe("plan");
});

describe("the words of a complaint", () => {
  test("say the kind and the range where a number is missing or is none", () => {
    const watts = z.strictObject({ watts: quantity(0, 10, { unit: "W" }) });
    expect(said(watts, {})).toEqual([
      { path: "watts", value: undefined, allowed: "must be a number, 0 to 10 W" },
    ]);
    expect(said(watts, { watts: "5" })).toEqual([
      { path: "watts", value: "5", allowed: "must be a number, 0 to 10 W" },
    ]);
    expect(said(z.strictObject({ pieces: count(1, 4, {}) }), { pieces: 1.5 })).toEqual([
      { path: "pieces", value: 1.5, allowed: "must be a whole number, 1 to 4" },
    ]);
    expect(said(z.strictObject({ free: z.number() }), { free: null })).toEqual([
      { path: "free", value: null, allowed: "must be a number" },
    ]);
  });

  test.each([
    [z.boolean(), 3, "must be true or false"],
    [z.string(), 3, "must be text in quotes"],
    [z.strictObject({}), 3, "must be an object { }"],
    [z.array(z.number()), 3, "must be a list [ ]"],
    [z.literal("one"), "two", 'must be "one"'],
    [z.enum(["a", "b"]), "c", 'must be one of "a", "b"'],
    [shortName, "", "must not be empty"],
    [shortName, "x".repeat(61), "must be at most 60 characters"],
    [shortName, "a\u0007b", "must be one line of plain text"],
    [z.array(z.number()).min(2), [1], "must have at least 2 entries"],
    [z.array(z.number()).max(1), [1, 2], "must have at most 1 entries"],
    [monthly(0, 1, {}), [1], "must have exactly 12 entries"],
    [monthly(0, 1, {}), Array(13).fill(1), "must have exactly 12 entries"],
    [z.number().min(2), 1, "Too small: expected number to be >=2"],
    [civilDate, "1 April", "must be a date"],
    [lengthMm(1, 9), 10, "must be 1 to 9 mm"],
  ])("case %#", (schema, value, allowed) => {
    expect(said(schema, value).map((problem) => problem.allowed)).toEqual([allowed]);
  });

  test("give the range of each end that was passed, and the hint where there is one", () => {
    const field = z.strictObject({ turn: quantity(-90, 90, { unit: "degrees", hint: "left is negative" }) });
    for (const turn of [-91, 91]) {
      expect(said(field, { turn })).toEqual([
        { path: "turn", value: turn, allowed: "must be -90 to 90 degrees", hint: "left is negative" },
      ]);
    }
  });

  test("reach into lists, defaults and options", () => {
    const deep = z.strictObject({
      points: z.array(z.strictObject({ height: quantity(0, 9, { unit: "m" }).default(1) })).default([]),
    });
    expect(said(deep, { points: [{ height: 4 }, { height: 10 }] })).toEqual([
      { path: "points[1].height", value: 10, allowed: "must be 0 to 9 m" },
    ]);
  });

  test("name the nearest key, or all keys where none is near", () => {
    const schema = z.strictObject({ tiltDeg: z.number().optional(), name: z.string().optional() });
    expect(said(schema, { tilt: 3 })).toEqual([
      { path: "tilt", value: 3, allowed: "is not a key of a plan here", hint: 'did you mean "tiltDeg"?' },
    ]);
    expect(said(schema, { colourOfPaint: null })).toEqual([
      {
        path: "colourOfPaint",
        value: null,
        allowed: "is not a key of a plan here",
        hint: "known here: tiltDeg, name",
      },
    ]);
  });
});

describe("of several forms, the complaint is about the one that was meant", () => {
  test("the one whose inside is wrong in the fewest places", () => {
    expect(linesOf({ stand: { legs: [{ name: "long", tiltDeg: 99, readFrom: "ground" }] } })).toEqual([
      "stand.legs[0].tiltDeg 99: must be 0 to 90 degrees",
    ]);
    expect(linesOf({ stand: { legs: [{ name: "long", lengthMm: 500, length: 3 }] } })).toEqual([
      'stand.legs[0].length 3: is not a key of a plan here; did you mean "lengthMm"?',
    ]);
  });

  test("the number out of range rather than the list it might have been", () => {
    expect(linesOf({ air: { windMs: 50 } })).toEqual([
      "air.windMs 50: must be 0 to 40 m/s; one number for the whole year or twelve, January first, each 0 to 40 m/s",
    ]);
    expect(linesOf({ air: { windMs: -1 } })).toEqual([
      "air.windMs -1: must be 0 to 40 m/s; one number for the whole year or twelve, January first, each 0 to 40 m/s",
    ]);
    expect(linesOf({ air: { windMs: [1, 2] } })).toEqual([
      "air.windMs [1,2]: must have exactly 12 entries; one number for the whole year or twelve, January first, each 0 to 40 m/s",
    ]);
  });

  test("none in particular where it is like none of them", () => {
    expect(linesOf({ air: { windMs: "breezy" } })).toEqual([
      'air.windMs "breezy": is none of the forms it may take; one number for the whole year or twelve, January first, each 0 to 40 m/s',
    ]);
  });

  test("told by its kind, where it has one", () => {
    expect(linesOf({ sky: { source: "moon" } })).toEqual([
      'sky.source "moon": must be one of "clear", "weather", "climate"',
    ]);
    expect(linesOf({ battery: { chemistry: "potato" } })).toEqual([
      'battery.chemistry "potato": must be one of "LiFePO4", "AGM", "gel", "flooded"',
    ]);
  });
});

test("what is no plan at all is quoted whole", () => {
  const reading = checkPlan(null);
  expect(reading.ok ? [] : reading.problems).toEqual([
    { path: "plan", value: null, allowed: "must be an object { }" },
  ]);
});
