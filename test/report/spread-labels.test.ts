import fc from "fast-check";
import { expect, test } from "vitest";
import { spreadLabels } from "../../lib/report/chart/spread-labels.ts";

test("the example", () => {
  expect(spreadLabels([10, 11, 40], 5, [0, 100])).toEqual([8, 13, 40]);
});

test("labels never lie on each other, keep their order, and stay in when they fit", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { maxLength: 9 }), (wanted) => {
      const placed = spreadLabels(wanted, 17, [0, 200]);
      const order = wanted.map((_, index) => index).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
      order.slice(1).forEach((index, place) => {
        expect(placed[index]! - placed[order[place]!]!).toBeGreaterThanOrEqual(17 - 1e-9);
      });
      for (const at of placed) {
        expect(at).toBeGreaterThanOrEqual(-1e-9);
        expect(at).toBeLessThanOrEqual(200 + 1e-9);
      }
    }),
  );
});

test("labels that do not meet stay where they are", () => {
  expect(spreadLabels([50, 90, 10], 17, [0, 100])).toEqual([50, 90, 10]);
});
