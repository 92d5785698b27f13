import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PlanInput } from "../../../lib/plan/index.ts";
import { totalWh } from "../../../lib/season/light/day-sums.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { seasonClearSky, seasonSun } from "../../../lib/season/light/season-skies.ts";
import {
  bestEachDayWh,
  bestSingle,
  judgedWh,
  type SeasonYield,
  seasonYield,
} from "../../../lib/season/light/season-yield.ts";
import { settingsOf } from "../../../lib/season/light/settings.ts";
import { readySkies } from "../../../lib/season/light/skies.ts";
import { demoYear } from "../../bench/demo-year.ts";
import { straightforwardSeason } from "../../bench/straightforward.ts";

const clearYield = (changes: Partial<PlanInput> = {}): SeasonYield => {
  const plan = demoYear(changes);
  const sun = seasonSun(plan);
  return seasonYield(
    readySkies(sun, seasonClearSky(plan, sun), [], plan.sky.toPlane),
    panelUnits(plan.panels),
    settingsOf(plan),
  );
};

describe("seasonYield", () => {
  test("agrees with the straightforward version on every day and setting", () => {
    const changes: Partial<PlanInput> = {
      panels: [
        { name: "propped", module: { powerW: 100 } },
        {
          name: "roof",
          howMany: 2,
          module: { powerW: 50 },
          mount: { kind: "fixed", tiltDeg: 12, bearingDeg: 140 },
        },
      ],
      air: { temperatureC: [1, 2, 5, 9, 14, 17, 19, 19, 15, 10, 5, 2], windMs: 3 },
    };
    const engine = clearYield(changes);
    const referee = straightforwardSeason(demoYear(changes));
    expect(referee).toHaveLength(3);
    referee.forEach((dayWh, setting) => {
      expect(dayWh).toHaveLength(365);
      dayWh.forEach((wh, day) => {
        // The glass table is linear between its entries, and sunrise is found to half a second.
        const got = engine.settings[setting].clearWh[day];
        expect(Math.abs(got - wh), `setting ${setting} day ${day}: ${got} against ${wh}`).toBeLessThan(
          0.0005 * wh + 0.2,
        );
      });
    });
  });

  test("names the best setting of each day, and no fixed setting beats the best of each day", () => {
    const season = clearYield();
    season.best.forEach((best, day) => {
      for (const setting of season.settings) {
        expect(judgedWh(setting)[day]).toBeLessThanOrEqual(judgedWh(season.settings[best])[day]);
      }
    });
    const single = totalWh(judgedWh(season.settings[bestSingle(season)]));
    expect(bestEachDayWh(season)).toBeGreaterThan(single);
    // At 53 N the flat panel is never best at Christmas, nor the longest leg at midsummer.
    expect(season.best[358]).toBe(2);
    expect(season.best[171]).toBe(1);
  });

  test("counts panels: two bring twice what one brings", () => {
    const one = clearYield({ panels: [{ name: "a", module: { powerW: 40 } }] });
    const two = clearYield({ panels: [{ name: "a", howMany: 2, module: { powerW: 40 } }] });
    expect(totalWh(two.settings[0].clearWh)).toBeCloseTo(2 * totalWh(one.settings[0].clearWh), 6);
  });

  test("a fixed panel alone does not care which leg is in use", () => {
    const season = clearYield({
      panels: [
        { name: "roof", module: { powerW: 50 }, mount: { kind: "fixed", tiltDeg: 12, bearingDeg: 140 } },
      ],
    });
    expect(totalWh(season.settings[2].clearWh)).toBe(totalWh(season.settings[0].clearWh));
  });

  test("polar night brings nothing, and nothing is NaN", () => {
    const season = clearYield({ site: { latitudeDeg: 78.2, longitudeDeg: 15.6 } });
    const christmas = season.days.findIndex(({ date }) => date === "2027-12-24");
    expect(season.settings.map(({ clearWh }) => clearWh[christmas])).toEqual([0, 0, 0]);
    for (const { clearWh } of season.settings) expect(clearWh.every(Number.isFinite)).toBe(true);
  });

  const latitude = fc.double({ min: -89, max: 89, noNaN: true });

  test("is never negative nor above what the sun sends outside the air", () => {
    fc.assert(
      fc.property(latitude, fc.double({ min: 0, max: 360, noNaN: true }), (latitudeDeg, facingDeg) => {
        const season = clearYield({
          site: { latitudeDeg, longitudeDeg: 0 },
          season: { from: "2027-05-01", to: "2027-05-20" },
          stand: { facingDeg, pivotMm: 700, legs: [{ name: "leg", lengthMm: 600 }] },
        });
        for (const { clearWh } of season.settings) {
          clearWh.forEach((wh, day) => {
            // 1361 W/m2 at most x 1.034 (nearest sun), all day square on, on a 100 W panel never colder than 15 degC.
            const bound = 100 * 1.361 * 1.034 * (1 + 0.004 * 10) * season.days[day].sunHours;
            expect(wh).toBeGreaterThanOrEqual(0);
            expect(wh).toBeLessThanOrEqual(bound + 1e-9);
          });
        }
      }),
      { numRuns: 40 },
    );
  });

  test("turned upside down, half a year on, it brings the same within the orbit's eccentricity", () => {
    // The sun is (1 + e)/(1 - e) nearer in January than in July, e = 0.0167: its light differs by that squared, 6.9 %.
    const nearest = (1.0167 / 0.9833) ** 2;
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 66, noNaN: true }),
        fc.double({ min: 0, max: 80, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        (latitudeDeg, tiltDeg, offDeg) => {
          const brings = (sign: 1 | -1): number => {
            const facingDeg = sign === 1 ? (180 + offDeg) % 360 : (360 - offDeg) % 360;
            const season = clearYield({
              site: { latitudeDeg: sign * latitudeDeg, longitudeDeg: 0 },
              season: { from: "2027-01-01", to: "2027-12-31", stepMinutes: 30 },
              stand: { facingDeg, legStyle: "square", legs: [{ name: "leg", tiltDeg, readFrom: "ground" }] },
            });
            return totalWh(season.settings[1].clearWh);
          };
          const ratio = brings(1) / brings(-1);
          expect(ratio).toBeLessThan(nearest);
          expect(ratio).toBeGreaterThan(1 / nearest);
        },
      ),
      { numRuns: 15 },
    );
  });

  test("refuses to run without a setting", () => {
    const plan = demoYear();
    const sun = seasonSun(plan);
    expect(() => seasonYield(readySkies(sun, seasonClearSky(plan, sun), []), [], [])).toThrow(RangeError);
  });
});
