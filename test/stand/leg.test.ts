import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LegHold, legMmOfTilt, type StandGeometry, tiltDegOfLeg } from "../../lib/stand/geometry.ts";
import { degPerMm, legOfTilt, legReach, tiltOfLeg } from "../../lib/stand/leg.ts";
import { footDistanceMm, sideView } from "../../lib/stand/side-view.ts";
import { problemLine } from "../../lib/units/problem.ts";

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

describe("the reach of a stand", () => {
  // tan 89 = 57.28996, tan 80 = 5.671282, tan 10 = 0.176327; atan(35 / 700) = 2.86241, atan(25 / 700) = 2.04541.
  it.each<
    readonly [string, StandGeometry, lowest: readonly [number, number], highest: readonly [number, number]]
  >([
    ["a square leg ends at 89 degrees", plain(square, 700), [0, 0], [89, 40102.97]],
    ["ground falling towards the aim", plain(square, 700, { groundSlopeDeg: 10 }), [10, 0], [90, 3969.897]],
    [
      "ground rising towards the aim",
      plain(square, 700, { groundSlopeDeg: -10 }),
      [0, 123.429],
      [79, 40102.97],
    ],
    ["a plumb leg is longest below its pivot", plain(plumb, 800), [0, 0], [90, 800]],
    [
      "a pivot off the ground when flat",
      plain(plumb, 700, { pivotInsetMm: 20, heelSpacerMm: 15 }),
      [0, 35],
      [87.13759, 700.874],
    ],
    [
      "a pivot on a block touches the ground first",
      plain(plumb, 700, { pivotInsetMm: -25 }),
      [2.04541, 0],
      [90, 700],
    ],
    ["a strap opens to upright", plain(strap(300), 400), [0, 100], [90, 500]],
  ])("%s", (_, stand, lowest, highest) => {
    const reach = legReach(stand);
    expect(reach.lowest.tiltDeg).toBeCloseTo(lowest[0], 4);
    expect(reach.lowest.legMm).toBeCloseTo(lowest[1], 2);
    expect(reach.highest.tiltDeg).toBeCloseTo(highest[0], 4);
    expect(reach.highest.legMm).toBeCloseTo(highest[1], 2);
  });

  it("is missed by less than a saw can show, and no more", () => {
    const upright = tiltOfLeg(plain(plumb, 800), 800 + 5e-7);
    expect(upright).toEqual({ kind: "stands", legMm: 800 + 5e-7, tiltDeg: 90 });
    expect(tiltOfLeg(plain(plumb, 800), 800 + 5e-6).kind).toBe("impossible");
    const flat = plain(square, 700, { pivotInsetMm: 20 });
    expect(tiltOfLeg(flat, 20 - 5e-7)).toEqual({ kind: "stands", legMm: 20 - 5e-7, tiltDeg: 0 });
    expect(tiltOfLeg(flat, 20 - 5e-6).kind).toBe("impossible");
  });

  it("ends where no triangle closes, but for rounding", () => {
    expect(tiltDegOfLeg(plain(plumb, 800), 800 * (1 + 1e-13))).toBe(90);
    expect(tiltDegOfLeg(plain(plumb, 800), 800 * (1 + 1e-11))).toBeNaN();
    expect(tiltDegOfLeg(plain(strap(500), 700), 199)).toBeNaN();
    expect(tiltDegOfLeg(plain(strap(500), 700), 1201)).toBeNaN();
  });
});

describe("degPerMm", () => {
  // The derivative by hand, in degrees (57.29578 a radian). Square: p / (p^2 + leg^2) = 1 / 1400 at 700 of 700.
  // Plumb: 1 / (p cos tilt) = 1 / (800 x 0.866025). Strap: leg / (r s sin tilt) = 500 / (400 x 300) at 3-4-5.
  it.each([
    ["square", plain(square, 700), 700, 57.29578 / 1400],
    ["plumb", plain(plumb, 800), 400, 57.29578 / (800 * 0.866025)],
    ["strap", plain(strap(300), 400), 500, (57.29578 * 500) / 120000],
  ])("%s", (_, stand, legMm, slope) => {
    expect(degPerMm(stand, legMm)).toBeCloseTo(slope, 6);
  });

  it("is NaN where the leg can't stand", () => {
    expect(degPerMm(plain(plumb, 800), 900)).toBeNaN();
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
    expect(short.line).toMatch(/must be 20.0 to .*does not reach the ground: nearest 0°/);
    expect(short.nearest).toEqual({ legMm: 20, tiltDeg: 0 });

    const open = refusal(tiltOfLeg(plain(strap(500), 700), 150));
    expect(open.line).toMatch(/does not reach the strap's end/);
    expect(open.nearest.legMm).toBeCloseTo(200, 9);
  });

  const leg = (hold: LegHold, pivotMm: number, legMm: number, more: Partial<StandGeometry> = {}) =>
    refusal(tiltOfLeg(plain(hold, pivotMm, more), legMm)).line;
  const tilt = (hold: LegHold, pivotMm: number, tiltDeg: number, more: Partial<StandGeometry> = {}) =>
    refusal(legOfTilt(plain(hold, pivotMm, more), tiltDeg)).line;

  it.each([
    [
      () => leg(plumb, 800, 900),
      'stand.legs "900 mm": must be 0.0 to 800.0 mm; it is longer than the pivot can rise above the ground: nearest 90° from the ground (0° from a post)',
    ],
    [
      () => leg(square, 10, 600),
      'stand.legs "600 mm": must be 0.0 to 572.9 mm; the panel would stand upright or fall over backwards: nearest 89° from the ground (1° from a post)',
    ],
    [
      () => leg(strap(300), 400, 501),
      'stand.legs "501 mm": must be 100.0 to 500.0 mm; the panel would lean past upright; a longer strap takes it: nearest 90° from the ground (0° from a post)',
    ],
    [
      () => leg(strap(300), 400, 90),
      'stand.legs "90 mm": must be 100.0 to 500.0 mm; it does not reach the strap\'s end; a strap nearer to the pivot distance takes it: nearest 0° from the ground (90° from a post)',
    ],
    [
      () => leg(plumb, 800, 12, { pivotInsetMm: 20 }),
      'stand.legs "12 mm": must be 20.0 to 800.2 mm; it does not reach the ground: nearest 0° from the ground (90° from a post)',
    ],
    [
      () => tilt(square, 10, 89.5),
      'stand.legs "89.5 deg": must be 0.0 to 89.0 degrees up from level; a leg square to the panel never stands it upright: nearest 89.0° from the ground (1.0° from a post), leg 572.9 mm',
    ],
    [
      () => tilt(plumb, 700, 89, { pivotInsetMm: 35 }),
      'stand.legs "89 deg": must be 0.0 to 87.1 degrees up from level; a plumb leg can lift the pivot no higher than straight above the heel: nearest 87.1° from the ground (2.9° from a post), leg 700.9 mm',
    ],
    [
      () => tilt(strap(300), 400, 91),
      'stand.legs "91 deg": must be 0.0 to 90.0 degrees up from level; the panel would lean past upright: nearest 90.0° from the ground (0.0° from a post), leg 500.0 mm',
    ],
    [
      () => tilt(plumb, 700, 1, { pivotInsetMm: -25 }),
      'stand.legs "1 deg": must be 2.0 to 90.0 degrees up from level; the pivot would be below the ground: nearest 2.0° from the ground (88.0° from a post), leg 0.0 mm',
    ],
    [
      () => tilt(plumb, 700, 5, { groundSlopeDeg: 12 }),
      'stand.legs "5 deg": must be 12.0 to 90.0 degrees up from level; the ground already slopes more than that towards the aim: nearest 12.0° from the ground (78.0° from a post), leg 0.0 mm',
    ],
  ])("is told so: case %#", (line, words) => {
    expect(line()).toBe(words);
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
    // A strap stands the panel upright wherever the pivot lies: here 400 up and 40 before the back, the foot 300 behind it.
    const inset = legOfTilt(plain(strap(300), 400, { pivotInsetMm: 40 }), 90);
    expect(inset.kind === "stands" ? inset.legMm : Number.NaN).toBeCloseTo(Math.hypot(400, 340), 9);
  });
});
