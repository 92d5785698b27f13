import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { standSchema } from "../../lib/plan/stand.ts";
import { pieceOfLeg, trimOf } from "../../lib/stand/cut.ts";
import { sawableLegs } from "../../lib/stand/sawable.ts";
import { standGeometry } from "../../lib/stand/settings.ts";
import { cutStock, type PieceDemand } from "../../lib/stand/stock.ts";
import { stowing, stowProblem } from "../../lib/stand/stow.ts";
import { PlanError } from "../../lib/units/problem.ts";

describe("cutStock", () => {
  it("charges a kerf between pieces, none after a piece that ends the bar", () => {
    expect(cutStock([{ pieceMm: 500, howMany: 4 }], [2000], 0).bars).toHaveLength(1);
    expect(cutStock([{ pieceMm: 500, howMany: 4 }], [2000], 3).bars).toHaveLength(2);
    expect(cutStock([{ pieceMm: 497, howMany: 4 }], [2000], 4)).toEqual({
      bars: [{ stockMm: 2000, piecesMm: [497, 497, 497, 497], offcutMm: 0 }],
      stockMm: 2000,
      offcutMm: 0,
    });
  });

  it("fills bars to the end where that can be", () => {
    // 600 + 400 and 500 + 300 + 200 fill two bars to the end.
    const plan = cutStock(
      [
        { pieceMm: 600, howMany: 1 },
        { pieceMm: 500, howMany: 1 },
        { pieceMm: 400, howMany: 1 },
        { pieceMm: 300, howMany: 1 },
        { pieceMm: 200, howMany: 1 },
      ],
      [1000],
      0,
    );
    expect(plan.bars).toHaveLength(2);
    expect(plan.offcutMm).toBe(0);
  });

  it("buys the shorter stock where that is less", () => {
    const plan = cutStock([{ pieceMm: 450, howMany: 2 }], [2000, 1000], 3);
    expect(plan.bars.map(({ stockMm }) => stockMm)).toEqual([1000]);
  });

  it("of equal stock, the fewest bars; the longest piece first on each", () => {
    for (const stock of [
      [2000, 1000],
      [1000, 2000],
    ]) {
      // Two bars of a metre or one of two.
      expect(cutStock([{ pieceMm: 900, howMany: 2 }], stock, 3).bars.map(({ stockMm }) => stockMm)).toEqual([
        2000,
      ]);
    }
    const mixed = [
      { pieceMm: 300, howMany: 1 },
      { pieceMm: 600, howMany: 1 },
    ];
    expect(cutStock(mixed, [1000], 3).bars).toEqual([{ stockMm: 1000, piecesMm: [600, 300], offcutMm: 94 }]);
  });

  it("a length of which none is wanted asks for nothing", () => {
    const none = { pieceMm: 5000, howMany: 0 };
    expect(cutStock([none], [2000], 3)).toEqual({ bars: [], stockMm: 0, offcutMm: 0 });
    expect(cutStock([none, { pieceMm: 500, howMany: 1 }], [2000], 3).bars[0]?.piecesMm).toEqual([500]);
  });

  it("keeps apart what is left of each length", () => {
    // 4100 mm of wood. 2 x 1100 + 2000 = 4200 would leave 100 mm over, and any short bar leaves that or more; four short
    // bars hold 1000, 1000, 900 and three of 300, and one of 300 is left. So 1100 + 2 x 2000.
    const plan = cutStock(
      [
        { pieceMm: 1000, howMany: 2 },
        { pieceMm: 300, howMany: 4 },
        { pieceMm: 900, howMany: 1 },
      ],
      [1100, 2000],
      0,
    );
    expect(plan.stockMm).toBe(5100);
    expect(plan.bars.flatMap(({ piecesMm }) => piecesMm).sort((a, b) => a - b)).toEqual([
      300, 300, 300, 300, 900, 1000, 1000,
    ]);
  });

  it("settles an order of two dozen pieces of five lengths", () => {
    const order = Array.from({ length: 5 }, (_, i) => ({ pieceMm: 310 + 97 * i, howMany: 5 }));
    const plan = cutStock(order, [2000, 1500], 3);
    expect(plan.bars.flatMap(({ piecesMm }) => piecesMm)).toHaveLength(25);
    // 12.6 m of pieces: the least that whole bars could be, were there no kerf, is 13 m.
    expect(plan.stockMm).toBeGreaterThanOrEqual(13_000);
    expect(plan.stockMm).toBeLessThanOrEqual(14_000);
  });

  it("refuses a piece that no bar holds, and an order too big to settle exactly", () => {
    expect(() => cutStock([{ pieceMm: 2100, howMany: 1 }], [2000], 3)).toThrow(PlanError);
    const many = Array.from({ length: 7 }, (_, i) => ({ pieceMm: 300 + 7 * i, howMany: 9 }));
    expect(() => cutStock(many, [2000], 3)).toThrow(/cut fewer lengths/);
    expect(() => cutStock([{ pieceMm: 2100, howMany: 1 }], [1000, 2000], 3)).toThrow(
      'stand.cutting "2100.0 mm piece": must be at most the longest stock, 2000 mm; add a longer stock length',
    );
    // 7 lengths, none to 9 pieces of each left: 10^7 states.
    expect(() => cutStock(many, [2000], 3)).toThrow(
      'stand.cutting "10000000 cutting states": must be at most 50000; cut fewer lengths in one go',
    );
    expect(cutStock([{ pieceMm: 2000, howMany: 1 }], [2000], 3).offcutMm).toBe(0);
  });

  it("nothing wanted needs nothing", () => {
    expect(cutStock([], [2000], 3)).toEqual({ bars: [], stockMm: 0, offcutMm: 0 });
  });

  /** Every way to put pieces into bars, one piece at a time. */
  const leastByTrying = (pieces: readonly number[], stock: readonly number[], kerf: number): number => {
    let least = Number.POSITIVE_INFINITY;
    const open: { room: number; empty: boolean }[] = [];
    const place = (index: number, bought: number): void => {
      if (bought >= least) return;
      const piece = pieces[index];
      if (piece === undefined) {
        least = bought;
        return;
      }
      for (const bar of open) {
        if (bar.room + 1e-9 < piece + kerf) continue;
        bar.room -= piece + kerf;
        place(index + 1, bought);
        bar.room += piece + kerf;
      }
      for (const length of stock) {
        if (length + 1e-9 < piece) continue;
        open.push({ room: length - piece, empty: false });
        place(index + 1, bought + length);
        open.pop();
      }
    };
    place(0, 0);
    return least;
  };

  const demand: fc.Arbitrary<readonly PieceDemand[]> = fc
    .uniqueArray(fc.integer({ min: 80, max: 900 }), { minLength: 1, maxLength: 3 })
    .chain((lengths) =>
      fc.tuple(
        ...lengths.map((pieceMm) =>
          fc.record({ pieceMm: fc.constant(pieceMm), howMany: fc.integer({ min: 1, max: 2 }) }),
        ),
      ),
    );

  it("buys as little as trying every way does, and cuts every piece once", () => {
    fc.assert(
      fc.property(
        demand,
        fc.uniqueArray(fc.integer({ min: 900, max: 2200 }), { minLength: 1, maxLength: 2 }),
        fc.integer({ min: 0, max: 5 }),
        (demands, stock, kerf) => {
          const plan = cutStock(demands, stock, kerf);
          const pieces = demands.flatMap(({ pieceMm, howMany }) => new Array<number>(howMany).fill(pieceMm));
          expect(plan.stockMm).toBe(leastByTrying(pieces, stock, kerf));
          const cut = plan.bars.flatMap(({ piecesMm }) => piecesMm);
          expect(cut.sort((a, b) => a - b)).toEqual(pieces.sort((a, b) => a - b));
          for (const { stockMm, piecesMm } of plan.bars) {
            const used = piecesMm.reduce((sum, piece) => sum + piece, 0) + kerf * (piecesMm.length - 1);
            expect(used).toBeLessThanOrEqual(stockMm + 1e-9);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe("pieceOfLeg", () => {
  it("adds the margin beyond the hole and takes off the rubber foot", () => {
    const { cutting } = standSchema.parse({ cutting: { holeMarginMm: 20, footMm: 12 } });
    expect(pieceOfLeg(500, cutting)).toEqual({ pieceMm: 508, holeFromEndMm: 20 });
  });
});

describe("trimOf", () => {
  const stand = standGeometry(standSchema.parse({ pivotMm: 700 }));

  it("a leg that stands too steep loses the difference of two tangents", () => {
    // 700 (tan 40 - tan 35) = 700 x (0.839100 - 0.700208)
    const trim = trimOf(stand, 40, 35);
    if (trim.kind !== "cut") throw new Error(trim.kind);
    expect(trim.cutMm).toBeCloseTo(97.224, 2);
  });

  it("refuses a leg that is already too short, and says by how much", () => {
    const trim = trimOf(stand, 35, 40);
    if (trim.kind !== "too short") throw new Error(trim.kind);
    expect(trim.byMm).toBeCloseTo(97.224, 2);
  });

  it("leaves what a saw can't mend, and refuses tilts that can't be", () => {
    expect(trimOf(stand, 35, 35.01).kind).toBe("leave");
    // 700 tan 35 = 490.145; tan 35.06 is 0.00156 more: 1.09 mm either way is sawn, or missing.
    expect(trimOf(stand, 35.06, 35).kind).toBe("cut");
    expect(trimOf(stand, 35, 35.06).kind).toBe("too short");
    expect(trimOf(stand, 95, 35)).toMatchObject({ kind: "impossible", problem: { path: "measured tilt" } });
    expect(trimOf(stand, 35, 89.9)).toMatchObject({ kind: "impossible", problem: { path: "wanted tilt" } });
  });

  it("after the cut, the leg gives the wanted tilt", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 70, noNaN: true }),
        fc.double({ min: 5, max: 70, noNaN: true }),
        (a, b) => {
          const trim = trimOf(stand, Math.max(a, b), Math.min(a, b));
          if (trim.kind === "cut") expect(trim.now.legMm - trim.cutMm).toBeCloseTo(trim.then.legMm, 9);
        },
      ),
    );
  });
});

describe("stowing", () => {
  it("folds towards the further end, lies loose in the whole length, stacks in the free depth", () => {
    const stand = standSchema.parse({
      pivotMm: 700,
      frame: { depthMm: 40, wallMm: 25, laminateMm: 5 },
      cutting: { legThicknessMm: 12, holeMarginMm: 20 },
    });
    expect(stowing(stand, 1000)).toEqual({ foldedMm: 675, looseMm: 930, limitMm: 675, layers: 2 });
    expect(stowing({ ...stand, pivotMm: 200 }, 1000).foldedMm).toBe(775);
    expect(stowing({ ...stand, stowMm: 600 }, 1000).limitMm).toBe(600);
  });

  it("as many layers as fill the depth to the last hair, in spite of rounding", () => {
    const layers = (depthMm: number, laminateMm: number, legThicknessMm: number) =>
      stowing(standSchema.parse({ frame: { depthMm, laminateMm }, cutting: { legThicknessMm } }), 1000)
        .layers;
    expect(layers(30, 6, 8)).toBe(3);
    // In binary (16.4 - 4.4) / 6 is a hair below 2.
    expect((16.4 - 4.4) / 6).toBeLessThan(2);
    expect(layers(16.4, 4.4, 6)).toBe(2);
    expect(layers(29.9, 6, 8)).toBe(2);
  });

  it("says what would fit", () => {
    const stow = stowing(standSchema.parse({ pivotMm: 700 }), 1000);
    expect(stowProblem("leg", 670, stow)).toBeNull();
    expect(stowProblem("leg", 700, stow)).toMatchObject({
      allowed: "must be at most 670 mm to stow inside the frame",
      hint: "taken off its pivot it lies inside up to 920 mm",
    });
    expect(stowProblem("leg", 920, stow)?.hint).toContain("taken off its pivot");
    expect(stowProblem('leg "long"', 921.26, stow)).toEqual({
      path: 'leg "long"',
      value: "921.3 mm",
      allowed: "must be at most 670 mm to stow inside the frame",
      hint: "it would stick out of the frame; a pivot nearer to the middle needs shorter legs for the same tilt",
    });
  });
});

test("a leg worth its wood lifts the panel a degree off the ground it lies on", () => {
  // On ground that falls 10 degrees a square leg of 700 tan 1 = 12.22 mm stands the panel at 11 degrees.
  const stand = standSchema.parse({
    pivotMm: 700,
    groundSlopeDeg: 10,
    cutting: { stepMm: 2, greatestMm: 40 },
  });
  const legs = sawableLegs(stand, stowing(stand, 1000));
  expect(legs.map(({ legMm }) => legMm)).toEqual([14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 38, 40]);
});
