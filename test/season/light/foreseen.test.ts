import { randomLcg, sum } from "d3";
import { describe, expect, it } from "vitest";
import { clearLightOf, foreseen, holdsWeather } from "../../../lib/season/light/foreseen.ts";
import { emptySkyColumns } from "../../../lib/sky/columns.ts";
import { sunColumns } from "../../../lib/sun/index.ts";

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

  it("spreads one day's light over the weeks around it, by 7.5 days", () => {
    // d3's blur of radius 7 is three moving means over 15 days: variance 3 x (15^2 - 1) / 12 = 56 days^2, 7.5 squared.
    const even = new Float64Array(101).fill(100);
    const one = new Float64Array(101);
    one[50] = 100;
    const smooth = foreseen(one, even);
    expect(sum(smooth)).toBeCloseTo(100, 9);
    const variance = sum(smooth, (wh, day) => (wh * (day - 50) ** 2) / 100);
    expect(variance).toBeCloseTo(56, 6);
    expect(smooth.findIndex((wh) => wh > 1e-12)).toBe(50 - 21);
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

  it("holds a day's light against that of a clear one: beam and diffuse, by the hours of sun", () => {
    const sun = sunColumns(
      { latitudeDeg: 40, longitudeDeg: 0, timeZone: "UTC" },
      { from: "2027-03-01", to: "2027-03-02" },
      60,
    );
    const clear = emptySkyColumns(sun.length);
    clear.beamNormal.fill(500);
    clear.diffuse.fill(100);
    clear.global.fill(9999);
    const light = clearLightOf(sun, clear);
    // 600 W/m2 for as long as the sun is up: 11.4 hours at 40 N on the first of March.
    sun.days.forEach(({ sunHours }, day) => {
      expect(light[day]).toBeCloseTo(600 * sunHours, 6);
    });
    expect(light[0] / 600).toBeCloseTo(11.4, 0);
  });

  it("one to four years are weather; none is the clear sky, more are a climate", () => {
    expect([0, 1, 4, 5, 40].map(holdsWeather)).toEqual([false, true, true, false, false]);
  });
});
