import { describe, expect, test } from "vitest";
import { bridgeHoles } from "../../../lib/sky/weather/read/bridge.ts";
import { fillGaps } from "../../../lib/sky/weather/read/gaps.ts";
import type { WeatherGrid } from "../../../lib/sky/weather/read/grid.ts";
import type { IntervalSun } from "../../../lib/sky/weather/read/interval-sun.ts";

const HOLE = Number.NaN;

describe("bridgeHoles", () => {
  const bridged = (values: readonly number[], longest: number) => {
    const column = Float64Array.from(values);
    return { ...bridgeHoles(column, longest), values: [...column] };
  };

  test("runs straight from one side to the other", () => {
    expect(bridged([4, HOLE, HOLE, 10, HOLE, 12], 2)).toEqual({
      values: [4, 6, 8, 10, 11, 12],
      filled: 3,
      open: [],
    });
  });

  test("takes the value beside it at an end, and leaves what is too long", () => {
    expect(bridged([HOLE, 5, HOLE, HOLE, HOLE, 7, HOLE], 2)).toEqual({
      values: [5, 5, HOLE, HOLE, HOLE, 7, 7],
      filled: 2,
      open: [[2, 5]],
    });
    expect(bridged([HOLE, HOLE], 5)).toEqual({ values: [HOLE, HOLE], filled: 0, open: [[0, 2]] });
    expect(bridged([], 5)).toEqual({ values: [], filled: 0, open: [] });
  });
});

describe("fillGaps", () => {
  /** Hours of light above the air; lit where there is any. Rows of the file count from 2. */
  const filled = (global: readonly number[], above: readonly number[], intervalMinutes = 60) => {
    const light = Float64Array.from(global);
    const grid: WeatherGrid = {
      intervalMinutes,
      startMs: Date.UTC(2027, 5, 1),
      length: global.length,
      row: Int32Array.from(global, (value, i) => (Number.isNaN(value) ? 0 : i + 2)),
      columns: new Map([["global", light]]),
    };
    const sun: IntervalSun = {
      lit: Float64Array.from(above, (sun) => (sun > 0 ? 1 : 0)),
      highest: new Float64Array(global.length),
      above: Float64Array.from(above),
      limitBase: new Float64Array(global.length),
    };
    return { ...fillGaps(grid, sun, "w.csv"), light: [...light] };
  };

  test("by day the clearness runs straight from one side to the other", () => {
    // 0.5 before, 0.8 after: 0.6 and 0.7 between.
    expect(filled([400, HOLE, HOLE, 800], [800, 900, 950, 1000])).toEqual({
      light: [400, 540, 665, 800],
      filled: 2,
      problems: [],
    });
  });

  test("at an end of the file the clearness of the one side holds; at night there is no light", () => {
    expect(filled([HOLE, 400, HOLE], [500, 800, 600]).light).toEqual([250, 400, 300]);
    expect(filled([300, HOLE, HOLE, 0], [600, 100, 0, 0]).light).toEqual([300, 50, 0, 0]);
  });

  test("no clearness is taken from a sun below 50 W/m2, nor from more than three hours away", () => {
    // The nearest interval on the left has 49 W/m2 of sun; the next one, two hours away, tells.
    expect(filled([300, 49, HOLE, 49], [600, 49, 100, 49]).light[2]).toBeCloseTo(50, 9);
    expect(filled([300, 50, HOLE, 0], [600, 50, 100, 0]).light[2]).toBeCloseTo(100, 9);
    // Three hours of darkness on either side: next to no light is lost.
    expect(filled([300, 0, 0, 0, HOLE, 0], [600, 0, 0, 0, 10, 0]).light[4]).toBe(0);
    expect(filled([300, 0, 0, HOLE, 0], [600, 0, 0, 10, 0]).light[3]).toBeCloseTo(5, 9);
  });

  test("three hours of daylight are filled, more are refused with the rows around them", () => {
    const hole = (hours: number): number[] => new Array<number>(hours).fill(HOLE);
    expect(filled([400, ...hole(3), 400], new Array<number>(5).fill(800))).toMatchObject({
      filled: 3,
      problems: [],
    });
    const long = filled([400, ...hole(4), 400], new Array<number>(6).fill(800));
    expect(long.filled).toBe(0);
    expect(long.problems).toEqual([
      {
        path: "w.csv rows 2-7 ghi",
        value: "missing from 2027-06-01T01:00Z to 2027-06-01T05:00Z",
        allowed: "must have no hole of more than 3 h of daylight",
        hint: "take another year or station, or put its hours in for that time",
      },
    ]);
    // A whole night is no daylight.
    expect(
      filled([400, ...hole(12), 400], [800, 100, ...new Array<number>(10).fill(0), 100, 800]),
    ).toMatchObject({
      filled: 12,
      problems: [],
    });
    // At either end of the file there is a row on one side only.
    expect(filled([400, ...hole(4)], new Array<number>(5).fill(800)).problems[0].path).toBe("w.csv ghi");
    expect(filled([...hole(4), 400], new Array<number>(5).fill(800)).problems[0].path).toBe("w.csv ghi");
  });

  test("counts time, not intervals", () => {
    const quarters = new Array<number>(12).fill(HOLE);
    expect(filled([400, ...quarters, 400], new Array<number>(14).fill(800), 15)).toMatchObject({
      filled: 12,
    });
    const more = filled([400, ...quarters, HOLE, 400], new Array<number>(15).fill(800), 15);
    expect(more.problems[0].value).toBe("missing from 2027-06-01T00:15Z to 2027-06-01T03:30Z");
  });

  test("looks for clearness three hours away, in quarters of an hour as in hours", () => {
    // Two hours of a sun too low to tell by stand between the hole and the light.
    const low = new Array<number>(8).fill(40);
    const { light } = filled([300, ...low, HOLE, 0], [600, ...low, 100, 0], 15);
    expect(light[9]).toBeCloseTo(50, 9);
  });

  test("several holes, each by itself", () => {
    const { filled: count, light } = filled([400, HOLE, 400, HOLE, 800], new Array<number>(5).fill(800));
    expect(count).toBe(2);
    expect(light).toEqual([400, 400, 400, 600, 800]);
  });

  test("a grid without global light has nothing to fill", () => {
    const grid: WeatherGrid = {
      intervalMinutes: 60,
      startMs: 0,
      length: 0,
      row: new Int32Array(0),
      columns: new Map(),
    };
    const none = new Float64Array(0);
    expect(fillGaps(grid, { lit: none, highest: none, above: none, limitBase: none }, "w.csv")).toEqual({
      filled: 0,
      problems: [],
    });
  });
});
