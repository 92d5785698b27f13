import { randomLcg, sum } from "d3";
import { describe, expect, it } from "vitest";
import { foreseen, holdsWeather } from "../../lib/season/foreseen.ts";

const days = 200;
const clear = Float64Array.from({ length: days }, (_, day) => 500 + 200 * Math.sin((day / days) * Math.PI));

describe("foreseen", () => {
  it("keeps the season's total, and takes the weather out of the days", () => {
    const random = randomLcg(0.3);
    const weather = clear.map((wh) => wh * (0.2 + 0.7 * random()));
    const smooth = foreseen(weather, clear);
    expect(sum(smooth)).toBeCloseTo(sum(weather), 6);
    const jump = (dayWh: Float64Array) =>
      Math.max(...dayWh.subarray(1).map((wh, day) => Math.abs(wh - dayWh[day])));
    expect(jump(weather)).toBeGreaterThan(150);
    expect(jump(smooth)).toBeLessThan(30);
  });

  it("leaves a season alone that lets through an even share", () => {
    const even = clear.map((wh) => 0.6 * wh);
    foreseen(even, clear).forEach((wh, day) => {
      expect(wh).toBeCloseTo(even[day], 9);
    });
  });

  it("brings no light into the polar night", () => {
    const dark = clear.map((wh, day) => (day > 150 ? 0 : wh));
    const smooth = foreseen(
      dark.map((wh) => wh / 2),
      dark,
    );
    expect([...smooth.subarray(151)]).toEqual(new Array(49).fill(0));
    expect([...foreseen(new Float64Array(5), new Float64Array(5))]).toEqual([0, 0, 0, 0, 0]);
  });

  it("one to four years are weather; none is the clear sky, more are a climate", () => {
    expect([0, 1, 4, 5, 40].map(holdsWeather)).toEqual([false, true, true, false, false]);
  });
});
