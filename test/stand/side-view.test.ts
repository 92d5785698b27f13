import { expect, it } from "vitest";
import type { StandGeometry } from "../../lib/stand/geometry.ts";
import { footDistanceMm, type SidePoint, sideView } from "../../lib/stand/side-view.ts";

const at = (point: SidePoint) => [point.backMm, point.upMm].map((mm) => Number(mm.toFixed(3)) + 0);

const stand = (more: Partial<StandGeometry>): StandGeometry => ({
  hold: { kind: "square" },
  pivotMm: 400,
  pivotInsetMm: 0,
  heelSpacerMm: 0,
  groundSlopeDeg: 0,
  ...more,
});

it("upright on a strap, 3-4-5, with a heel spacer and a pivot inside the frame", () => {
  // Upright, what is towards the glass lies in front of the heel: negative.
  const view = sideView(
    stand({ hold: { kind: "strap", strapMm: 300 }, heelSpacerMm: 15, pivotInsetMm: 20 }),
    { lengthMm: 1000, depthMm: 40 },
    90,
  );
  expect(at(view.heel)).toEqual([0, 0]);
  expect(at(view.pivot)).toEqual([-35, 400]);
  expect(at(view.foot)).toEqual([300, 0]);
  expect(view.frame.map(at)).toEqual([
    [-15, 0],
    [-15, 1000],
    [-55, 1000],
    [-55, 0],
  ]);
});

it("at 30 degrees on ground that falls 10 degrees", () => {
  // Square: 400 / cos 20 = 425.671 along the ground; x cos 10 = 419.204, x sin 10 = 73.917.
  const square = stand({ groundSlopeDeg: 10 });
  const view = sideView(square, { lengthMm: 1000, depthMm: 0 }, 30);
  expect(at(view.foot)).toEqual([419.204, 73.917]);
  expect(at(view.pivot)).toEqual([346.41, 200]);
  // Plumb with the pivot 40 inside: 346.410 - 40 sin 30 = 326.410 back, over cos 10 along the ground = 331.446.
  const plumb = stand({ hold: { kind: "plumb" }, groundSlopeDeg: 10, pivotInsetMm: 40 });
  expect(footDistanceMm(plumb, 30)).toBeCloseTo(331.446, 3);
  expect(footDistanceMm(stand({ hold: { kind: "strap", strapMm: 333 } }), 30)).toBe(333);
});
