import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { domeColumns } from "../../lib/plane/dome-columns.ts";
import { martinRuizGlass } from "../../lib/plane/glass.ts";
import { behindSkyline, type HorizonPoint, skylineOf, sunClear } from "../../lib/plane/horizon.ts";
import { planeColumns } from "../../lib/plane/plane-columns.ts";
import { clearSkyColumns } from "../../lib/sky/clear-sky-columns.ts";
import { clearAirOf } from "../../lib/sky/turbidity.ts";
import { sunColumns } from "../../lib/sun/index.ts";
import { directionOf, normalOf } from "../../lib/units/angle.ts";

const place = { latitudeDeg: 47, longitudeDeg: 10, timeZone: "Europe/Vienna" };
const air = clearAirOf({ turbidity: "standard", waterCm: undefined, ozoneCm: 0.32 }, 0);
const dayOf = (date: string, step = 10) => {
  const sun = sunColumns(place, { from: date, to: date }, step);
  const sky = clearSkyColumns(sun, air, 0.2, { airC: 10, windMs: 2 });
  return { sun, sky, dome: domeColumns(sun, sky) };
};
const allRound = (altitudeDeg: number): readonly HorizonPoint[] => [{ bearingDeg: 0, altitudeDeg }];
const RIDGE: readonly HorizonPoint[] = [
  { bearingDeg: 60, altitudeDeg: 0 },
  { bearingDeg: 100, altitudeDeg: 22 },
  { bearingDeg: 150, altitudeDeg: 8 },
  { bearingDeg: 170, altitudeDeg: 0 },
];

describe("skylineOf", () => {
  test("runs straight between points and round past north", () => {
    const skyline = skylineOf([
      { bearingDeg: 350, altitudeDeg: 10 },
      { bearingDeg: 10, altitudeDeg: 20 },
      { bearingDeg: 180, altitudeDeg: 0 },
    ]);
    expect(skyline(0)).toBeCloseTo(15, 12);
    expect(skyline(360)).toBeCloseTo(15, 12);
    expect(skyline(355)).toBeCloseTo(12.5, 12);
    expect(skyline(95)).toBeCloseTo(10, 12);
    expect(skyline(180)).toBe(0);
    expect(skyline(-10)).toBe(10);
  });

  test("holds one point all round, makes a step of two at one bearing, and is level without any", () => {
    expect(skylineOf(allRound(7))(200)).toBe(7);
    expect(skylineOf([])(200)).toBe(0);
    const wall = skylineOf([
      { bearingDeg: 90, altitudeDeg: 0 },
      { bearingDeg: 90, altitudeDeg: 30 },
      { bearingDeg: 120, altitudeDeg: 30 },
      { bearingDeg: 120, altitudeDeg: 0 },
    ]);
    expect(wall(89)).toBe(0);
    expect(wall(90)).toBe(30);
    expect(wall(119.9)).toBeCloseTo(30, 9);
    expect(wall(121)).toBe(0);
  });
});

/** The share of an even dome on a plane, adding up small patches of sky: no closed form in it. */
const viewByPatches = (points: readonly HorizonPoint[], tiltDeg: number, bearingDeg: number): number => {
  const skyline = skylineOf(points);
  const normal = normalOf({ tiltDeg, bearingDeg });
  let sum = 0;
  for (let altitude = 0.25; altitude < 90; altitude += 0.5)
    for (let bearing = 0.5; bearing < 360; bearing += 1) {
      if (altitude < skyline(bearing)) continue;
      const s = directionOf(altitude, bearing);
      const cosine = s.east * normal.east + s.north * normal.north + s.up * normal.up;
      if (cosine > 0) sum += cosine * Math.cos((altitude * Math.PI) / 180);
    }
  return (sum * (0.5 * Math.PI * Math.PI)) / 180 / 180 / Math.PI;
};

describe("behindSkyline", () => {
  test("is the same over a level horizon, and almost the same over one a hair above it", () => {
    const { sun, sky, dome } = dayOf("2027-04-10");
    expect(behindSkyline(sun, [])(sky, dome)).toBe(dome);
    const hair = behindSkyline(sun, allRound(1e-6))(sky, dome);
    for (const [tiltDeg, bearingDeg] of [
      [0, 0],
      [35, 200],
      [90, 80],
    ] as const) {
      const aim = { tiltDeg, bearingDeg };
      // Bearings a degree apart leave 6e-6 of the integral.
      expect(hair.viewOfSky(aim)).toBeCloseTo(dome.viewOfSky(aim), 4);
      expect(hair.viewOfBand(aim)).toBeCloseTo(dome.viewOfBand(aim), 5);
    }
  });

  test("sees of a dome over a skyline all round at altitude h: cos^2(h) when flat", () => {
    const { sun, sky, dome } = dayOf("2027-04-10");
    for (const h of [10, 30, 60]) {
      const view = behindSkyline(sun, allRound(h))(sky, dome).viewOfSky({ tiltDeg: 0, bearingDeg: 0 });
      expect(view).toBeCloseTo(Math.cos((h * Math.PI) / 180) ** 2, 12);
    }
  });

  test("sees of the dome what small patches of sky add up to", () => {
    const { sun, sky, dome } = dayOf("2027-04-10");
    const shaded = behindSkyline(sun, RIDGE)(sky, dome);
    for (const [tiltDeg, bearingDeg] of [
      [0, 0],
      [20, 100],
      [55, 180],
      [90, 110],
      [90, 300],
    ] as const) {
      // Half-degree patches against a slanting skyline.
      expect(shaded.viewOfSky({ tiltDeg, bearingDeg })).toBeCloseTo(
        viewByPatches(RIDGE, tiltDeg, bearingDeg),
        3,
      );
    }
  });

  test("shows of the band along the horizon, 6.5 degrees high, what stands over the skyline", () => {
    const { sun, sky, dome } = dayOf("2027-04-10");
    const band = (h: number, tiltDeg: number) =>
      behindSkyline(sun, allRound(h))(sky, dome).viewOfBand({ tiltDeg, bearingDeg: 130 });
    expect(band(3.25, 90)).toBeCloseTo(0.5, 9);
    expect(band(3.25, 30)).toBeCloseTo(0.25, 9);
    expect(band(6.5, 90)).toBe(0);
    expect(band(20, 90)).toBe(0);
    // A wall over the western half leaves an upright plane that faces it no band, and one that turns its back all of it.
    const wall = behindSkyline(sun, [
      { bearingDeg: 180, altitudeDeg: 0 },
      { bearingDeg: 180, altitudeDeg: 40 },
      { bearingDeg: 360, altitudeDeg: 40 },
      { bearingDeg: 0, altitudeDeg: 0 },
    ])(sky, dome);
    expect(wall.viewOfBand({ tiltDeg: 90, bearingDeg: 90 })).toBeCloseTo(1, 9);
    expect(wall.viewOfBand({ tiltDeg: 90, bearingDeg: 270 })).toBeLessThan(0.01);
  });

  test("an upright plane sees of a dome over a skyline at h: 1 / 2 - h / pi - sin(2 h) / (2 pi)", () => {
    // The integral of cos^2 from h up, over the half circle in front: (pi / 2 - h) / 2 - sin(2 h) / 4, times 2 / pi.
    const { sun, sky, dome } = dayOf("2027-04-10");
    for (const h of [10, 45, 80]) {
      const rad = (h * Math.PI) / 180;
      const view = behindSkyline(sun, allRound(h))(sky, dome).viewOfSky({ tiltDeg: 90, bearingDeg: 20 });
      // Bearings a degree apart.
      expect(view).toBeCloseTo(0.5 - rad / Math.PI - Math.sin(2 * rad) / (2 * Math.PI), 4);
    }
  });

  test("takes beam, brightening and ground light by the time with the sun clear, row by row", () => {
    const { sun, sky, dome } = dayOf("2027-04-10");
    const clear = sunClear(sun, skylineOf(allRound(20)));
    const shaded = behindSkyline(sun, allRound(20))(sky, dome);
    const openSky = Math.cos((20 * Math.PI) / 180) ** 2;
    for (let row = 0; row < sun.length; row += 1) {
      expect(shaded.beam[row]).toBe(dome.beam[row] * clear[row]);
      expect(shaded.circumsolar[row]).toBe(dome.circumsolar[row] * clear[row]);
      expect(shaded.dome[row]).toBe(dome.dome[row]);
      expect(shaded.ground[row]).toBeCloseTo(
        sky.albedo[row] * (sky.beamNormal[row] * sun.up[row] * clear[row] + sky.diffuse[row] * openSky),
        9,
      );
    }
    expect(Math.min(...clear)).toBe(0);
    expect(Math.max(...clear)).toBe(1);
  });

  test("clears a skyline by the even change of altitude between the middles of rows", () => {
    // Three rows at 8, 12 and 16 degrees over a skyline at 11: from 10 to 12 the first half of the middle row is half clear.
    const rows = [8, 12, 16].map((altitude) => directionOf(altitude, 180));
    const day = dayOf("2027-04-10").sun.days[0];
    const made = {
      ...dayOf("2027-04-10").sun,
      length: 3,
      days: [{ ...day, first: 0, end: 3 }],
      east: Float64Array.from(rows, ({ east }) => east),
      north: Float64Array.from(rows, ({ north }) => north),
      up: Float64Array.from(rows, ({ up }) => up),
    };
    const share = sunClear(made, () => 11);
    expect(share[0]).toBe(0);
    expect(share[1]).toBeCloseTo((0.5 + 1) / 2, 9);
    expect(share[2]).toBe(1);
    // At 9: the first row's second half, from 8 to 10, is half clear.
    expect(sunClear(made, () => 9)[0]).toBeCloseTo((0 + 0.5) / 2, 9);
  });

  test("refuses columns of another length", () => {
    const { sun, sky, dome } = dayOf("2027-04-10");
    expect(() => behindSkyline(sun, RIDGE)({ ...sky, length: 3 }, dome)).toThrow(
      `behindSkyline: expected sky and dome of ${sun.length} rows, received 3 and ${sun.length}`,
    );
    expect(() => behindSkyline(sun, RIDGE)(sky, { ...dome, length: 4 })).toThrow("received");
  });

  test("hides the sun behind the ridge and nowhere else, to a tenth of a step", () => {
    for (const date of ["2027-03-10", "2027-09-20", "2027-12-21"]) {
      const coarse = dayOf(date, 10);
      const fine = dayOf(date, 1);
      const skyline = skylineOf(RIDGE);
      const hoursClear = ({ sun }: ReturnType<typeof dayOf>) =>
        sunClear(sun, skyline).reduce((sum, share, row) => sum + share * sun.hours[row], 0);
      expect(hoursClear(coarse)).toBeCloseTo(hoursClear(fine), 1.5);
      expect(hoursClear(coarse)).toBeLessThan(coarse.sun.days[0].sunHours - 0.3);
    }
  });

  test("keeps a day's energy at the default step within a hundredth of a run at 1 minute", () => {
    const glass = martinRuizGlass();
    const energy = (step: number, tiltDeg: number, bearingDeg: number): number => {
      const { sun, sky, dome } = dayOf("2027-03-10", step);
      const { absorbed } = planeColumns(
        sun,
        behindSkyline(sun, RIDGE)(sky, dome),
        { tiltDeg, bearingDeg },
        glass,
      );
      return absorbed.reduce((sum, light, row) => sum + light * sun.hours[row], 0);
    };
    for (const [tilt, bearing] of [
      [0, 0],
      [60, 120],
      [90, 90],
      [45, 200],
    ] as const) {
      const fine = energy(1, tilt, bearing);
      expect(Math.abs(energy(10, tilt, bearing) - fine)).toBeLessThan(0.01 * fine);
    }
  });

  test("never brings light, whatever the skyline", () => {
    const { sun, sky, dome } = dayOf("2027-05-01", 30);
    const glass = martinRuizGlass();
    const points = fc.array(
      fc.record({
        bearingDeg: fc.double({ min: 0, max: 360, noNaN: true }),
        altitudeDeg: fc.double({ min: 0, max: 89, noNaN: true }),
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(
        points,
        fc.integer({ min: 0, max: 90 }),
        fc.integer({ min: 0, max: 359 }),
        (skyline, tiltDeg, bearingDeg) => {
          const aim = { tiltDeg, bearingDeg };
          const open = planeColumns(sun, dome, aim, glass);
          const shaded = planeColumns(sun, behindSkyline(sun, skyline)(sky, dome), aim, glass);
          shaded.plane.forEach((light, row) => {
            expect(light).toBeGreaterThanOrEqual(0);
            // The horizon band of a clear low sun may be a touch darker than the dome: hiding it is then no loss.
            expect(light).toBeLessThanOrEqual(open.plane[row] + 3);
          });
        },
      ),
      { numRuns: 60 },
    );
  });
});
