import { describe, expect, test } from "vitest";
import { steadySentences } from "../../lib/report/words/steady-words.ts";
import { WIND_CAUTION } from "../../lib/stand/steadiness.ts";
import { aPlan } from "./a-season.ts";

/** The plate of `test/stand/steadiness.test.ts`: 1 x 0.5 m, 3 kg, its pivot at 0.7 m. */
const planOf = (stand: object, panel: object = {}) =>
  aPlan({
    panels: [
      { name: "the panel", lengthMm: 1000, widthMm: 500, massKg: 3, module: { powerW: 60 }, ...panel },
    ],
    stand: { pivotMm: 700, ...stand },
  });

describe("wind is told with what to do about it", () => {
  test("above which forecast wind an unstaked stand may move, and the ballast that holds the plan's wind", () => {
    // Grip 0.45 x 3 x 9.80665 = 13.239 N over sin 45 + 0.45 cos 45 = 1.02530: 12.912 N at 1.8 over 0.5 m2, a gust of
    // 4.840 m/s; x sqrt(0.9 / 1.5) / 1.19306 (2 m, farmland) = 3.14 m/s as forecast.
    // 10 m/s: gust 11.9306, 87.18 Pa, x 1.8 x 0.5 x 1.5 / 0.9 = 130.77 N; sliding asks for 130.77 x 1.0253 / (0.45 x 9.80665)
    // = 30.38 kg in all, 27.38 beside the panel; lifting for less. Rounded up: 28 kg.
    const [words] = steadySentences(planOf({ steadying: { friction: 0.45 } }), [
      { name: "long", tiltDeg: 45 },
    ]);
    expect(words).toBe(
      "long: unstaked, it may move above a forecast wind of 3 m/s (Beaufort 2, light breeze); it slides forward first. " +
        "Stake it, and bring it in above that; 28 kg of ballast, half on the bottom edge and half on the leg's foot, would hold 10 m/s.",
    );
  });

  test("a wind is rounded down, never up, and its Beaufort force with it", () => {
    // 16 kg of panel hold sqrt(16 / 3) times the wind: 7.52 m/s is told as 7, a moderate breeze.
    const [words] = steadySentences(planOf({ steadying: { friction: 0.5 } }, { massKg: 16 }), [
      { name: "long", tiltDeg: 45 },
    ]);
    expect(words).toContain("above a forecast wind of 7 m/s (Beaufort 4, moderate breeze)");
  });

  test("a stand that falls by itself is told so, and what would hold it", () => {
    const [words] = steadySentences(planOf({ pivotMm: 150 }), [{ name: "stub", tiltDeg: 30 }]);
    expect(words).toMatch(/^stub: does not stand by itself, it tips over its leg without any wind\./);
    expect(words).toMatch(/weigh it down: \d+ kg of ballast/);
  });

  test("the caution speaks of the wind named, not of a gale", () => {
    expect(WIND_CAUTION).toContain("bring the panel in above the wind named");
    expect(WIND_CAUTION).not.toMatch(/gale|permit/);
  });
});
