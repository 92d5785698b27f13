import { describe, expect, it } from "vitest";
import { standSchema } from "../../lib/plan/stand.ts";
import { cuttingSheet } from "../../lib/stand/cutting-sheet.ts";
import { sawableLegs } from "../../lib/stand/sawable.ts";
import { standPanels } from "../../lib/stand/stand-panel.ts";
import { stowing } from "../../lib/stand/stow.ts";
import { planWith } from "../plan/plan-with.ts";

describe("standPanels", () => {
  const module = { powerW: 100 };
  const stand = standSchema.parse({ frame: { depthMm: 40 } });

  it("stands the panels side by side and leaves fixed ones out", () => {
    const { panels } = planWith({
      panels: [
        { name: "long", module, lengthMm: 1200, widthMm: 500, massKg: 7 },
        { name: "pair", module, howMany: 2, lengthMm: 900, widthMm: 400, massKg: 5 },
        { name: "roof", module, mount: { kind: "fixed" }, lengthMm: 2000, widthMm: 900, massKg: 20 },
      ],
    });
    expect(standPanels({ panels, stand })).toEqual({
      lengthMm: 1200,
      shortestMm: 900,
      depthMm: 40,
      widthMm: 1300,
      massKg: 17,
    });
  });

  it("asks for one on the stand", () => {
    const { panels } = planWith({
      panels: [
        { name: "roof", module, mount: { kind: "fixed" } },
        { name: "hood", module, mount: { kind: "fixed" } },
      ],
    });
    expect(() => standPanels({ panels, stand })).toThrow(
      'panels "roof, hood": must hold at least one panel on the stand; legs move no fixed panel; give one the mount {"kind": "stand"}',
    );
  });
});

describe("sawableLegs", () => {
  const lengths = (given: object) => {
    const stand = standSchema.parse(given);
    return sawableLegs(stand, stowing(stand, 1000)).map(({ legMm }) => legMm);
  };

  it("are whole steps of the saw from the first worth its wood to the longest that stows", () => {
    // Pivot 700, wall 30: 670 stows. A tilt of 1 degree needs 700 tan 1 = 12.2 mm.
    const legs = lengths({ cutting: { stepMm: 10 } });
    expect(legs[0]).toBe(20);
    expect(legs.at(-1)).toBe(670);
    expect(legs).toHaveLength(66);
  });

  it("lie within the plan's own limits, both ends counted", () => {
    expect(lengths({ cutting: { stepMm: 50, leastMm: 300, greatestMm: 450 } })).toEqual([300, 350, 400, 450]);
    expect(lengths({ cutting: { stepMm: 50, leastMm: 301, greatestMm: 449 } })).toEqual([350, 400]);
    expect(lengths({ stowMm: 360, cutting: { stepMm: 50, leastMm: 300 } })).toEqual([300, 350]);
    // 0.1 mm over in binary: 3 steps of 33.3 are 99.9.
    expect(lengths({ cutting: { stepMm: 33.3, leastMm: 99.9, greatestMm: 99.9 } })).toHaveLength(1);
  });

  it("have the tilts that the stand gives them", () => {
    const stand = standSchema.parse({
      legStyle: "plumb",
      pivotMm: 800,
      cutting: { stepMm: 100, leastMm: 400, greatestMm: 400 },
    });
    const [leg, ...none] = sawableLegs(stand, stowing(stand, 1000));
    expect(leg?.legMm).toBe(400);
    expect(leg?.tiltDeg).toBeCloseTo(30, 9);
    expect(none).toEqual([]);
  });

  it("leave no leg that would be all rubber foot", () => {
    expect(lengths({ cutting: { stepMm: 10, footMm: 30 } })[0]).toBe(40);
  });

  it("refuse too fine a step, and limits that leave none", () => {
    expect(lengths({ cutting: { stepMm: 1, leastMm: 271 } })).toHaveLength(400);
    expect(() => lengths({ cutting: { stepMm: 1, leastMm: 270 } })).toThrow(
      "stand.cutting.stepMm 1: must be at least 2 mm for legs of 270 to 670 mm; a coarser step, or a narrower range between leastMm and greatestMm",
    );
    expect(() => lengths({ pivotMm: 800, cutting: { stepMm: 50, leastMm: 810 } })).toThrow(
      'stand.cutting "810 to 770 mm in steps of 50 mm": must leave a leg between 0 and 45832 mm that stands, and at most 770 mm that stows; look at leastMm, greatestMm, stepMm, stand.stowMm and stand.pivotMm',
    );
  });
});

describe("cuttingSheet", () => {
  const stand = standSchema.parse({
    pivotMm: 700,
    cutting: { legsEach: 2, holeMarginMm: 20, footMm: 5, stockMm: [1000, 2000], kerfMm: 3 },
  });
  const legs = [
    { name: "long", legMm: 700, tiltDeg: 45, owned: false },
    { name: "short", legMm: 300, tiltDeg: 23.2, owned: false },
    { name: "middle", legMm: 500, tiltDeg: 35.5, owned: true },
  ];

  it("marks legs from the shortest, adds what a piece needs, and cuts none that is owned", () => {
    const { legs: marked, stow, stock } = cuttingSheet(stand, 1000, legs);
    expect(
      marked.map(({ mark, name, pieceMm, holeFromEndMm, howMany }) => [
        mark,
        name,
        pieceMm,
        holeFromEndMm,
        howMany,
      ]),
    ).toEqual([
      ["A", "short", 315, 20, 2],
      ["B", "middle", 515, 20, 0],
      ["C", "long", 715, 20, 2],
    ]);
    expect(marked.map(({ stowing }) => stowing?.path ?? null)).toEqual([null, null, 'leg "long"']);
    expect(stow.limitMm).toBe(670);
    // 2 x 715 + 2 x 315 and three kerfs are 2069 mm, so 2000 is too short; 3000 come in two bars or in three.
    expect(stock.stockMm).toBe(3000);
    expect(stock.bars).toHaveLength(2);
    expect(legs.map(({ name }) => name)).toEqual(["long", "short", "middle"]);
  });

  it("asks for a leg longer than its rubber foot, unless it is there already", () => {
    const cut = (footMm: number, owned: boolean) =>
      cuttingSheet(standSchema.parse({ cutting: { footMm } }), 1000, [
        { name: "stub", legMm: 60, tiltDeg: 5, owned },
      ]);
    expect(cut(59.9, false).legs[0]?.pieceMm).toBeCloseTo(20.1, 9);
    expect(() => cut(60, false)).toThrow(
      'stand.cutting.footMm 60: must be less than the leg "stub", 60.0 mm; it is the part of the leg that the rubber foot makes up',
    );
    expect(cut(60, true).stock.bars).toEqual([]);
  });
});
