/**
 * Everything in `comparisons/` against its source: each case within its own tolerance, none dropped. `npm run accuracy`
 * prints the same outcomes.
 */
import { describe, expect, test } from "vitest";
import { sections } from "./comparisons/all.ts";
import { outcomeOf } from "./comparisons/comparison.ts";

describe.each(sections)("$room against published and measured values", ({ comparisons }) => {
  test("has comparisons", () => {
    expect(comparisons.length).toBeGreaterThan(0);
  });

  test.each(comparisons.map((each) => [`${each.quantity}: ${each.reference}`, each] as const))(
    "%s",
    (_, comparison) => {
      const { cases, misses } = outcomeOf(comparison);
      expect(misses).toEqual([]);
      expect(cases).toHaveLength(comparison.count);
      expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length);
    },
  );
});
