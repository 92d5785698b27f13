import { cumsum } from "d3";
import { describe, expect, test } from "vitest";
import { type Plan, type PlanInput, readPlan } from "../../../lib/plan/index.ts";
import { lightOnPlane, martinRuizGlass } from "../../../lib/plane/index.ts";
import { aimEnergies, dayBins } from "../../../lib/season/aiming/aim-energies.ts";
import { candidateAims } from "../../../lib/season/aiming/candidate-aims.ts";
import { facingSunOver } from "../../../lib/season/aiming/facing-sun.ts";
import { reaim } from "../../../lib/season/aiming/reaim.ts";
import { clockStretches, noonClocks } from "../../../lib/season/aiming/walk-clock.ts";
import { dayEnergiesOver } from "../../../lib/season/light/day-energy.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { periodsOf } from "../../../lib/season/light/periods.ts";
import { seasonClearSky, seasonSun } from "../../../lib/season/light/season-skies.ts";
import { readySkies, type SeasonSkies } from "../../../lib/season/light/skies.ts";
import type { SkyColumns } from "../../../lib/sky/columns.ts";
import { directionOf, toDegrees } from "../../../lib/units/angle.ts";
import { clearSkies, randomPlan } from "../random-plan.ts";

const planWith = (changes: Partial<PlanInput> = {}): Plan =>
  readPlan({
    site: { latitudeDeg: 52, longitudeDeg: 5, timeZone: "Europe/Amsterdam" },
    season: { from: "2027-05-20", to: "2027-06-10", stepMinutes: 30 },
    panels: [{ name: "propped", module: { powerW: 100 } }],
    stand: {
      pivotMm: 760,
      legs: [
        { name: "short", lengthMm: 300 },
        { name: "long", lengthMm: 760 },
      ],
    },
    aiming: { bearingStepDeg: 45, earliest: "00:00", latest: "24:00" },
    ...changes,
  });

/** A sky with some cloud in it: half the beam, part of it come back as diffuse light. */
const dulled = (sky: SkyColumns): SkyColumns => ({
  ...sky,
  beamNormal: sky.beamNormal.map((beam) => 0.3 * beam),
  diffuse: sky.diffuse.map((light, row) => light + 0.25 * (sky.global[row] - light)),
  global: sky.global.map((light) => 0.6 * light),
});

const skiesFor = (plan: Plan, cloudy = false): SeasonSkies => {
  const sun = seasonSun(plan);
  const clear = seasonClearSky(plan, sun);
  const expected = cloudy
    ? [
        { weight: 0.6, sky: dulled(clear) },
        { weight: 0.4, sky: clear },
      ]
    : [];
  return readySkies(sun, clear, expected, "perez", plan.site.horizon);
};

describe("aimEnergies", () => {
  test("adds up, over the bins of a day, to what the season engine says of the same aim", () => {
    const plan = planWith();
    const skies = skiesFor(plan, true);
    const units = panelUnits(plan.panels);
    const aims = candidateAims(plan, 90);
    const months = periodsOf(skies.sun.days).slice(1);
    const energies = aimEnergies(skies.sun, skies.expected, units, aims, months);
    const dayEnergies = dayEnergiesOver(skies.sun);
    aims.forEach((aim, index) => {
      const days = new Float64Array(skies.sun.days.length);
      for (const sky of skies.expected) {
        const wh = dayEnergies(sky, units[0], aim, new Float64Array(days.length));
        wh.forEach((value, day) => {
          days[day] += sky.weight * value;
        });
      }
      months.forEach(({ first, end }, month) => {
        const mean = days.subarray(first, end).reduce((sum, wh) => sum + wh, 0) / (end - first);
        expect(energies[month].binWh[index].reduce((sum, wh) => sum + wh, 0)).toBeCloseTo(mean, 6);
      });
    });
  });

  test("has bins of ten minutes or of the step, evenly in a day", () => {
    for (const step of [1, 2, 3, 5, 6, 10, 15, 20, 30, 60]) {
      const { minutes, count } = dayBins(step);
      expect(minutes).toBeGreaterThanOrEqual(10);
      expect(minutes * count).toBe(1440);
      expect(minutes % step).toBe(0);
    }
  });
});

describe("facingSunOver", () => {
  test("is the light on a plane turned to the sun, moment by moment", () => {
    const plan = planWith();
    const { sun, clear } = skiesFor(plan);
    const glass = martinRuizGlass();
    const out = {
      length: sun.length,
      plane: new Float64Array(sun.length),
      absorbed: new Float64Array(sun.length),
    };
    facingSunOver(sun, clear.dome, glass)(clear.dome, out);
    for (let row = 0; row < sun.length; row += 7) {
      const [east, north, up] = [sun.east[row], sun.north[row], sun.up[row]];
      const { sky } = clear;
      const light = {
        beamNormal: sky.beamNormal[row],
        diffuse: sky.diffuse[row],
        global: sky.global[row],
        extraterrestrial: sky.extraterrestrial[row],
        airMass: sky.airMass[row],
        albedo: sky.albedo[row],
      };
      const aim = { tiltDeg: toDegrees(Math.acos(up)), bearingDeg: toDegrees(Math.atan2(east, north)) };
      const found = lightOnPlane({ east, north, up }, light, aim, glass);
      // The sun columns' vectors are of length 1 to a ten-millionth: parabolas through sine and cosine of the declination.
      expect(out.plane[row]).toBeCloseTo(found.plane, 3);
      expect(out.absorbed[row]).toBeCloseTo(found.absorbed, 3);
    }
  });
});

describe("reaim", () => {
  /** The best day on one, two and three aims: every aim, pair and triple, changed at every edge. */
  const bruteForce = (binWh: readonly Float64Array[]): readonly [one: number, two: number, three: number] => {
    const upTo = binWh.map((wh) => [0, ...cumsum(wh)]);
    const edges = upTo[0].length;
    let [one, two, three] = [0, 0, 0];
    for (const a of upTo) {
      one = Math.max(one, a[edges - 1]);
      for (const b of upTo)
        for (let first = 0; first < edges; first += 1) {
          const morning = a[first];
          two = Math.max(two, morning + b[edges - 1] - b[first]);
          for (const c of upTo)
            for (let second = first; second < edges; second += 1)
              three = Math.max(three, morning + b[second] - b[first] + c[edges - 1] - c[second]);
        }
    }
    return [one, two, three];
  };

  test.each(Array.from({ length: 20 }, (_, seed) => seed + 1))(
    "finds what trying every aim at every hour finds: random plan %i",
    (seed) => {
      const random = randomPlan(seed);
      const plan: Plan = {
        ...random,
        stand: {
          ...random.stand,
          legs: [
            { name: "low", tiltDeg: 25, readFrom: "ground" },
            { name: "high", tiltDeg: 30, readFrom: "post" },
          ],
        },
        aiming: { mostAims: 3, bearingStepDeg: 45, earliest: "00:00", latest: "24:00" },
      };
      const skies = clearSkies(plan);
      const units = panelUnits(plan.panels);
      const [season] = reaim(plan, skies, units).periods;
      const whole = { name: "season", first: 0, end: skies.sun.days.length };
      const aims = candidateAims(plan, 45);
      const [{ binWh }] = aimEnergies(skies.sun, [skies.clear], units, aims, [whole]);
      bruteForce(binWh).forEach((best, index) => {
        expect(season.routines[index].dayWh).toBeCloseTo(best, 6);
      });
    },
  );

  const PLACES: readonly [string, Partial<PlanInput>][] = [
    ["52 N in spring", {}],
    [
      "43 S over the new year",
      {
        site: { latitudeDeg: -43, longitudeDeg: 147, timeZone: "Australia/Hobart" },
        season: { from: "2027-12-20", to: "2028-01-10", stepMinutes: 30 },
      },
    ],
    ["on the equator", { site: { latitudeDeg: 0, longitudeDeg: 20, timeZone: "UTC" } }],
    ["in the midnight sun", { site: { latitudeDeg: 78, longitudeDeg: 15, timeZone: "Arctic/Longyearbyen" } }],
    [
      "behind a ridge in the east",
      {
        site: {
          latitudeDeg: 52,
          longitudeDeg: 5,
          timeZone: "Europe/Amsterdam",
          horizon: [
            { bearingDeg: 30, altitudeDeg: 0 },
            { bearingDeg: 90, altitudeDeg: 40 },
            { bearingDeg: 150, altitudeDeg: 0 },
          ],
        },
      },
    ],
    ["in polar night", { site: { latitudeDeg: -78, longitudeDeg: 15, timeZone: "UTC" } }],
  ];
  test.each(PLACES)("more aims never bring less, and the limit is never beaten: %s", (_, changes) => {
    const plan = planWith({ ...changes, aiming: { bearingStepDeg: 15, earliest: "00:00", latest: "24:00" } });
    for (const cloudy of [false, true]) {
      const skies = skiesFor(plan, cloudy);
      const units = panelUnits(plan.panels);
      const { periods, cloudIn } = reaim(plan, skies, units);
      expect(cloudIn).toBe(cloudy);
      for (const { noon, routines, limitDayWh } of periods) {
        expect(routines).toHaveLength(4);
        expect(routines[0].dayWh).toBeGreaterThanOrEqual(noon.dayWh);
        for (const [index, { dayWh, clearDayWh }] of routines.entries()) {
          if (index > 0) expect(dayWh).toBeGreaterThanOrEqual(routines[index - 1].dayWh);
          expect(dayWh).toBeLessThanOrEqual(limitDayWh * (1 + 1e-12));
          expect(clearDayWh).toBeGreaterThanOrEqual(dayWh * (1 - 1e-12));
        }
      }
    }
  });

  test("months of their own routine bring at least what one routine for the season brings", () => {
    const plan = planWith({ aiming: { bearingStepDeg: 30 } });
    const { periods } = reaim(plan, skiesFor(plan), panelUnits(plan.panels));
    const [season, ...months] = periods;
    expect(months.map(({ period }) => period.name)).toEqual(["2027-05", "2027-06"]);
    season.routines.forEach(({ dayWh }, index) => {
      const ofMonths = months.reduce(
        (sum, { period, routines }) => sum + routines[index].dayWh * (period.end - period.first),
        0,
      );
      expect(ofMonths).toBeGreaterThanOrEqual(
        dayWh * (season.period.end - season.period.first) * (1 - 1e-12),
      );
    });
  });

  test("turns with the sun: east in the morning, west in the evening, the other way round the pole of the south", () => {
    for (const [latitudeDeg, turns] of [
      [52, 1],
      [-43, -1],
    ] as const) {
      const plan = planWith({
        site: { latitudeDeg, longitudeDeg: 5, timeZone: "UTC" },
        aiming: { bearingStepDeg: 5 },
      });
      const [{ routines }] = reaim(plan, skiesFor(plan), panelUnits(plan.panels)).periods;
      const [morning, evening] = routines[1].parts;
      expect(directionOf(0, morning.setting.bearingDeg).east).toBeGreaterThan(0.3);
      expect(directionOf(0, evening.setting.bearingDeg).east).toBeLessThan(-0.3);
      expect(directionOf(0, morning.setting.bearingDeg).north * turns).toBeLessThan(0.2);
      // Alike to either side of noon, within a bin.
      expect(Math.abs(evening.fromMinutes)).toBeLessThanOrEqual(30);
    }
  });

  test("walks only between the plan's clock times", () => {
    const plan = planWith({ aiming: { bearingStepDeg: 15, earliest: "15:00", latest: "18:00" } });
    const skies = skiesFor(plan);
    const [{ period, routines }] = reaim(plan, skies, panelUnits(plan.panels)).periods;
    const clocks = noonClocks(skies.sun.days, plan.site.timeZone);
    for (const { fromMinutes } of routines.flatMap(({ parts }) => parts.slice(1))) {
      const [{ minutes }] = clockStretches(clocks, period, fromMinutes);
      expect(minutes).toBeGreaterThanOrEqual(15 * 60);
      expect(minutes).toBeLessThanOrEqual(18 * 60);
    }
    expect(routines[1].parts.length).toBe(2);
  });

  test("lies flat when there is no leg, and says so when no panel is on the stand", () => {
    const bare = planWith({ stand: {} });
    const [{ routines }] = reaim(bare, skiesFor(bare), panelUnits(bare.panels)).periods;
    expect(routines[3].parts).toHaveLength(1);
    expect(routines[3].parts[0].setting.name).toBe("flat");
    const roof = planWith({ panels: [{ name: "roof", module: { powerW: 50 }, mount: { kind: "fixed" } }] });
    expect(() => reaim(roof, skiesFor(roof), panelUnits(roof.panels))).toThrow(
      "must hold at least one panel on the stand",
    );
  });
});

describe("candidateAims", () => {
  test("has flat once and every leg at every bearing", () => {
    const aims = candidateAims(planWith(), 90);
    expect(aims).toHaveLength(1 + 2 * 4);
    expect(aims.filter(({ name }) => name === "long").map(({ tiltDeg }) => tiltDeg)).toEqual([
      45, 45, 45, 45,
    ]);
  });

  test("leans with the slope: steeper downhill, flatter uphill, as on the level across it", () => {
    const plan = planWith({
      stand: { pivotMm: 760, facingDeg: 180, groundSlopeDeg: 10, legs: [{ name: "long", lengthMm: 760 }] },
    });
    const tilts = new Map(
      candidateAims(plan, 90)
        .slice(1)
        .map(({ bearingDeg, tiltDeg }) => [bearingDeg, tiltDeg]),
    );
    expect(tilts.get(180)).toBeCloseTo(55, 9);
    expect(tilts.get(0)).toBeCloseTo(35, 9);
    expect(tilts.get(90)).toBeCloseTo(45, 9);
  });

  test("refuses a step that misses true south", () => {
    expect(() => candidateAims(planWith(), 50)).toThrow(RangeError);
    expect(() => candidateAims(planWith(), 0)).toThrow(RangeError);
  });
});

describe("clock times", () => {
  test("come in two stretches where the clocks change, an hour apart", () => {
    const plan = planWith({ season: { from: "2027-03-01", to: "2027-04-30", stepMinutes: 60 } });
    const { days } = seasonSun(plan);
    const clocks = noonClocks(days, "Europe/Amsterdam");
    const [season] = periodsOf(days);
    const [before, after] = clockStretches(clocks, season, -60);
    expect(days[before.first].date).toBe("2027-03-01");
    expect(days[after.first].date).toBe("2027-03-28");
    // Solar noon at 5 E is 12:40 + 8 minutes of equation of time in mid-March.
    expect(before.minutes).toBeCloseTo(12 * 60 + 48 - 60, -1);
    expect(after.minutes - before.minutes).toBeGreaterThan(40);
    expect(clockStretches(clocks, { ...season, first: 30 }, 0)).toHaveLength(1);
  });
});
