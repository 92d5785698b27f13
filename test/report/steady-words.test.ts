import { describe, expect, test } from "vitest";
import { legsTable } from "../../lib/report/table/legs-table.ts";
import { cellText } from "../../lib/report/table/table.ts";
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

  test("the settings' table has the same wind, rounded down, its Beaufort force, and the ballast rounded up", () => {
    const plan = planOf({ steadying: { friction: 0.45 } });
    const facts = {
      setting: { name: "long", legMm: 700, tiltDeg: 45, bearingDeg: 180 },
      totalWh: 1,
      tolerance: [
        { period: { name: "season", first: 0, end: 1 }, dayWh: 1, perMmWh: 0, perDegWh: 0, bearingWh: [] },
      ],
    };
    const row = Object.fromEntries(
      legsTable(plan, [facts]).columns.map((column) => [
        column.name,
        cellText(column, legsTable(plan, [facts]).rows[0]!),
      ]),
    );
    expect(row).toMatchObject({
      holds_wind_m_s: "3",
      holds_beaufort: "2 light breeze",
      moves_first: "slides forward",
      ballast_kg: "28",
    });
    // 4 kg hold sqrt(4 / 3) times as much: 3.63 m/s, told as 3.
    const heavier = planOf({ steadying: { friction: 0.45 } }, { massKg: 4 });
    const column = legsTable(heavier, [facts]).columns.find(({ name }) => name === "holds_wind_m_s")!;
    expect(cellText(column, legsTable(heavier, [facts]).rows[0]!)).toBe("3");
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
