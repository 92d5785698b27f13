import { expect, test } from "vitest";
import { PlanError, problemLine, rangeProblem } from "../../lib/units/problem.ts";

test("rangeProblem lets the ends of a range pass and words what lies outside", () => {
  const check = (value: number, hint?: string) => rangeProblem("here", value, [-5, 5], "mm", hint);
  expect([-5, 0, 5].map((value) => check(value))).toEqual([null, null, null]);
  expect(check(5.1)).toEqual({ path: "here", value: 5.1, allowed: "must be -5 to 5 mm" });
  expect(check(-6, "up is positive")).toEqual({
    path: "here",
    value: -6,
    allowed: "must be -5 to 5 mm",
    hint: "up is positive",
  });
  expect(check(Number.NaN)?.value).toBeNaN();
});

test("a problem is one line, its value cut after sixty characters", () => {
  const line = (value: unknown) => problemLine({ path: "here", value, allowed: "must be less" });
  expect(line(undefined)).toBe("here missing: must be less");
  expect(line(Number.POSITIVE_INFINITY)).toBe("here Infinity: must be less");
  expect(line(Number.NaN)).toBe("here NaN: must be less");
  expect(line("a\nb")).toBe('here "a\\nb": must be less');
  expect(line("x".repeat(58))).toBe(`here "${"x".repeat(58)}": must be less`);
  expect(line("x".repeat(59))).toBe(`here "${"x".repeat(59)}...: must be less`);
});

test("a PlanError carries every problem, a line each, under its own name", () => {
  const error = new PlanError([
    { path: "a", value: 1, allowed: "must be 2" },
    { path: "b", value: 3, allowed: "must be 4", hint: "even" },
  ]);
  expect(error.name).toBe("PlanError");
  expect(error.message).toBe("a 1: must be 2\nb 3: must be 4; even");
  expect(error).toBeInstanceOf(Error);
});
