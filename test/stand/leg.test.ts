import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemLine } from "../../lib/plan/problem.ts";
import { type LegHold, legMmOfTilt, type StandGeometry, tiltDegOfLeg } from "../../lib/stand/geometry.ts";
import { degPerMm, legOfTilt, legReach, tiltOfLeg } from "../../lib/stand/leg.ts";
import { footDistanceMm, sideView } from "../../lib/stand/side-view.ts";

const plain = (hold: LegHold, pivotMm: number, more: Partial<StandGeometry> = {}): StandGeometry => ({
  hold,
  pivotMm,
  pivotInsetMm: 0,
  heelSpacerMm: 0,
  groundSlopeDeg: 0,
  ...more,
});
const square: LegHold = { kind: "square" };
const plumb: LegHold = { kind: "plumb" };
const strap = (strapMm: number): LegHold => ({ kind: "strap", strapMm });

// Worked by hand with six-figure trigonometric tables; each length to 0.01 mm, so the tilt comes back to 0.001 deg.
const BY_HAND: readonly (readonly [string, StandGeometry, tiltDeg: number, legMm: number])[] = [
  // tan 45 = 1: a square leg is as long as its pivot distance (common practice, no source).
  ["square 45", plain(square, 700), 45, 700],
  // 700 x tan 30 = 700 x 0.577350
  ["square 30", plain(square, 700), 30, 404.145],
  // 640 x tan 60 = 640 x 1.732051
  ["square 60", plain(square, 640), 60, 1108.513],
  // 800 x sin 30
  ["plumb 30", plain(plumb, 800), 30, 400],
  // 800 x sin 60 = 800 x 0.866025
  ["plumb 60", plain(plumb, 800), 60, 692.82],
  // equilateral
  ["strap 60", plain(strap(800), 800), 60, 800],
  // 3-4-5: pivot 400, strap 300, upright
  ["strap 90", plain(strap(300), 400), 90, 500],
  // sqrt(700^2 + 500^2 - 2 700 500 cos 40) = sqrt(740000 - 700000 x 0.766044) = sqrt(203768.89)
  ["strap 40", plain(strap(500), 700), 40, 451.407],
  // pivot hole 20 mm inside a frame on a 15 mm heel spacer: 700 x tan 35 + 35 = 700 x 0.700208 + 35
  ["square inset 35", plain(square, 700, { pivotInsetMm: 20, heelSpacerMm: 15 }), 35, 525.145],
  // the same stand, plumb: 700 sin 35 + 35 cos 35 = 700 x 0.573576 + 35 x 0.819152
  ["plumb inset 35", plain(plumb, 700, { pivotInsetMm: 20, heelSpacerMm: 15 }), 35, 430.174],
  // pivot on a 25 mm block behind the frame: 700 x tan 35 - 25
  ["square block 35", plain(square, 700, { pivotInsetMm: -25 }), 35, 465.145],
  // ground falling 10 deg towards the aim: the frame opens 25 deg from it; 700 x tan 25 = 700 x 0.466308
  ["square slope", plain(square, 700, { groundSlopeDeg: 10 }), 35, 326.415],
  // plumb on that slope: 700 sin 25 / cos 10 = 700 x 0.422618 / 0.984808
  ["plumb slope", plain(plumb, 700, { groundSlopeDeg: 10 }), 35, 300.396],
  // ground rising 8 deg towards the aim: opens 43 deg; sqrt(740000 - 700000 cos 43) = sqrt(740000 - 700000 x 0.731354)
  ["strap slope", plain(strap(500), 700, { groundSlopeDeg: -8 }), 35, 477.548],
];

describe("leg length and tilt", () => {
  it("has every hand-computed case", () => expect(BY_HAND).toHaveLength(14));

  it.each(BY_HAND)("%s", (_, stand, tiltDeg, legMm) => {
    const leg = legOfTilt(stand, tiltDeg);
    expect(leg.kind).toBe("stands");
    expect(Math.abs(legMmOfTilt(stand, tiltDeg) - legMm)).toBeLessThan(0.01);
    const tilt = tiltOfLeg(stand, legMm);
    if (tilt.kind !== "stands") throw new Error(problemLine(tilt.problem));
    expect(Math.abs(tilt.tiltDeg - tiltDeg)).toBeLessThan(0.001);
  });

  it("lets NaN through the kernels and refuses it at the doors", () => {
    const stand = plain(strap(500), 700);
    expect(legMmOfTilt(stand, Number.NaN)).toBeNaN();
    expect(tiltDegOfLeg(stand, Number.NaN)).toBeNaN();
    expect(tiltOfLeg(stand, Number.NaN).kind).toBe("impossible");
    expect(legOfTilt(stand, Number.NaN).kind).toBe("impossible");
  });
});

const anyHold = fc.oneof(
  fc.constant(square),
  fc.constant(plumb),
  fc.double({ min: 150, max: 1500, noNaN: true }).map(strap),
);
const anyStand: fc.Arbitrary<StandGeometry> = fc.record({
  hold: anyHold,
  pivotMm: fc.double({ min: 150, max: 1500, noNaN: true }),
  pivotInsetMm: fc.double({ min: -40, max: 40, noNaN: true }),
  heelSpacerMm: fc.double({ min: 0, max: 40, noNaN: true }),
  groundSlopeDeg: fc.double({ min: -20, max: 20, noNaN: true }),
});
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("any stand", () => {
  it("leg -> tilt -> leg and tilt -> leg -> tilt are the identity", () => {
    fc.assert(
      fc.property(anyStand, share, (stand, at) => {
        const { lowest, highest } = legReach(stand);
        const tiltDeg = lowest.tiltDeg + at * (highest.tiltDeg - lowest.tiltDeg);
        const leg = legOfTilt(stand, tiltDeg);
        if (leg.kind !== "stands") throw new Error(problemLine(leg.problem));
        const tilt = tiltOfLeg(stand, leg.legMm);
        if (tilt.kind !== "stands") throw new Error(problemLine(tilt.problem));
        // Near the top of a plumb leg's reach, and where a strap is as long as the reach and the leg nearly 0, a
        // millimetre turns the tilt without limit: there the round trip is judged in millimetres alone.
        const again = legMmOfTilt(stand, tilt.tiltDeg);
        expect(Math.abs(again - leg.legMm)).toBeLessThan(1e-6);
        if (Math.abs(degPerMm(stand, leg.legMm)) < 1)
          expect(Math.abs(tilt.tiltDeg - tiltDeg)).toBeLessThan(1e-6);
      }),
      { numRuns: 2000 },
    );
  });

  it("a longer leg never lowers the tilt", () => {
    fc.assert(
      fc.property(anyStand, share, share, (stand, a, b) => {
        const { lowest, highest } = legReach(stand);
        const legAt = (at: number) => lowest.legMm + at * (highest.legMm - lowest.legMm);
        const [short, long] = a < b ? [legAt(a), legAt(b)] : [legAt(b), legAt(a)];
        expect(tiltDegOfLeg(stand, long)).toBeGreaterThanOrEqual(tiltDegOfLeg(stand, short) - 1e-6);
      }),
      { numRuns: 1000 },
    );
  });

  it("the side view agrees: pivot to foot is the leg, both ends as the hold says", () => {
    fc.assert(
      fc.property(anyStand, share, (stand, at) => {
        const { lowest, highest } = legReach(stand);
        const tiltDeg = lowest.tiltDeg + at * (highest.tiltDeg - lowest.tiltDeg);
        const { pivot, foot } = sideView(stand, { lengthMm: 1600, depthMm: 35 }, tiltDeg);
        const back = foot.backMm - pivot.backMm;
        const down = pivot.upMm - foot.upMm;
        expect(Math.hypot(back, down)).toBeCloseTo(Math.abs(legMmOfTilt(stand, tiltDeg)), 5);
        const lean = (Math.atan2(back, down) * 180) / Math.PI;
        if (legMmOfTilt(stand, tiltDeg) < 1) return;
        // A square leg leans as far from plumb as the panel from level; a plumb one not at all.
        if (stand.hold.kind === "square") expect(lean).toBeCloseTo(tiltDeg, 5);
        if (stand.hold.kind === "plumb") expect(lean).toBeCloseTo(0, 5);
        if (stand.hold.kind === "strap") expect(footDistanceMm(stand, tiltDeg)).toBe(stand.hold.strapMm);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("a leg that can't stand", () => {
  const refusal = (fit: ReturnType<typeof tiltOfLeg>) => {
    if (fit.kind !== "impossible") throw new Error("expected a refusal");
    return { line: problemLine(fit.problem), nearest: fit.nearest };
  };

  it("says why, and what would fit", () => {
    const long = refusal(tiltOfLeg(plain(plumb, 800), 900));
    expect(long.line).toMatch(/must be 0.0 to 800.0 mm; it is longer than the pivot can rise/);
    expect(long.nearest).toEqual({ legMm: 800, tiltDeg: 90 });

    const short = refusal(tiltOfLeg(plain(square, 700, { pivotInsetMm: 20 }), 12));
    expect(short.line).toMatch(/does not reach the ground behind the frame: at least 20.0 mm/);
    expect(short.nearest).toEqual({ legMm: 20, tiltDeg: 0 });

    const open = refusal(tiltOfLeg(plain(strap(500), 700), 150));
    expect(open.line).toMatch(/does not span/);
    expect(open.nearest.legMm).toBeCloseTo(200, 9);
  });

  it("the nearest setting stands, whatever was asked for", () => {
    fc.assert(
      fc.property(anyStand, fc.double({ min: 0, max: 4000, noNaN: true }), (stand, legMm) => {
        const fit = tiltOfLeg(stand, legMm);
        if (fit.kind === "impossible") expect(tiltOfLeg(stand, fit.nearest.legMm).kind).toBe("stands");
        const { tiltDeg } = fit.kind === "impossible" ? fit.nearest : fit;
        expect(tiltDeg).toBeGreaterThanOrEqual(-1e-9);
        expect(tiltDeg).toBeLessThanOrEqual(90 + 1e-6);
      }),
      { numRuns: 1000 },
    );
  });

  it("a tilt below the lie of the ground is refused, and one past upright", () => {
    const sloping = legOfTilt(plain(square, 700, { groundSlopeDeg: 12 }), 5);
    expect(refusal(sloping).line).toMatch(/ground already slopes/);
    expect(refusal(legOfTilt(plain(square, 700), 90)).line).toMatch(/never stands it upright/);
    expect(legOfTilt(plain(strap(300), 400), 90).kind).toBe("stands");
  });
});
