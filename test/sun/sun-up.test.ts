import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { horizonCrossingMs, sunlitSpans } from "../../lib/sun/sun-up.ts";

const HOUR_MS = 3_600_000;

describe("horizonCrossingMs", () => {
  test("is within half a second of where a sine crosses, rising and setting, from any bracket", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.6, max: 0.6, noNaN: true }),
        fc.integer({ min: 1, max: 170 }),
        fc.integer({ min: 1, max: 170 }),
        (level, before, after) => {
          // A day's sine about noon at 12 h, lifted by `level`: it rises where sin(angle) = -level.
          const upAt = (ms: number) => level + Math.sin(((ms / HOUR_MS - 6) / 12) * Math.PI);
          const riseMs = (6 - (Math.asin(level) * 12) / Math.PI) * HOUR_MS;
          const setMs = (18 + (Math.asin(level) * 12) / Math.PI) * HOUR_MS;
          const [early, late] = [before * 60_000, after * 60_000];
          expect(Math.abs(horizonCrossingMs(upAt, riseMs - early, riseMs + late) - riseMs)).toBeLessThan(500);
          expect(Math.abs(horizonCrossingMs(upAt, setMs - early, setMs + late) - setMs)).toBeLessThan(500);
        },
      ),
    );
  });

  test("takes one look beyond its ends on a straight line, and few on a curve", () => {
    let looks = 0;
    const line = (ms: number) => {
      looks += 1;
      return ms - 1_234_567;
    };
    expect(horizonCrossingMs(line, 0, HOUR_MS)).toBeCloseTo(1_234_567, 3);
    expect(looks).toBeLessThanOrEqual(3);
    looks = 0;
    // Bent so that plain false position would creep: the halving makes it jump.
    const bent = (ms: number) => line(ms) ** 3;
    expect(Math.abs(horizonCrossingMs(bent, 0, 10 * HOUR_MS) - 1_234_567)).toBeLessThan(5_000);
    expect(looks).toBeLessThan(42);
  });

  test("never leaves its ends, however steep the crossing and level the rest", () => {
    for (const crossingMs of [1_234_567, 9 * HOUR_MS]) {
      for (const side of [1, -1]) {
        const seen: number[] = [];
        const steep = (ms: number) => {
          seen.push(ms);
          return side * Math.atan((ms - crossingMs) / (20 * 60_000));
        };
        expect(Math.abs(horizonCrossingMs(steep, 0, 10 * HOUR_MS) - crossingMs)).toBeLessThan(500);
        expect(Math.min(...seen)).toBe(0);
        expect(Math.max(...seen)).toBe(10 * HOUR_MS);
      }
    }
  });
});

describe("sunlitSpans", () => {
  const instants = Float64Array.of(0, 1000, 2000, 3000, 4000);
  /** Straight lines between the values at the instants. */
  const spansOf = (...up: readonly number[]) =>
    sunlitSpans(instants, Float64Array.from(up), (ms) => {
      const at = Math.min(3, Math.floor(ms / 1000));
      return up[at] + (ms / 1000 - at) * (up[at + 1] - up[at]);
    }).map(({ fromMs, toMs }) => [Math.round(fromMs), Math.round(toMs)]);

  test.each<[string, readonly number[], readonly (readonly number[])[]]>([
    ["never up", [-1, -1, -1, -1, -1], []],
    ["always up", [1, 1, 1, 1, 1], [[0, 4000]]],
    ["rises and sets", [-1, 3, 3, 1, -1], [[250, 3500]]],
    ["up at the start", [1, -1, -1, -1, -1], [[0, 500]]],
    ["up at the end", [-1, -1, -1, -1, 3], [[3250, 4000]]],
    [
      "two arcs",
      [1, -1, -1, -1, 1],
      [
        [0, 500],
        [3500, 4000],
      ],
    ],
    ["on the horizon is not up", [0, 0, 0, 0, 0], []],
  ])("%s", (_, up, spans) => {
    expect(spansOf(...up)).toEqual(spans);
  });
});
