import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { standSchema } from "../../lib/plan/stand.ts";
import { steadyingSchema, TERRAINS } from "../../lib/plan/steadying.ts";
import { BEAUFORT, beaufortOf } from "../../lib/stand/beaufort.ts";
import { dynamicPressure, windOfForce, windProfile } from "../../lib/stand/gust.ts";
import { standGeometry } from "../../lib/stand/settings.ts";
import { forceCoefficients, type StandPanel, steadiness } from "../../lib/stand/steadiness.ts";

const panel: StandPanel = { lengthMm: 1000, widthMm: 500, depthMm: 0, massKg: 3 };
const stand = standGeometry(standSchema.parse({ pivotMm: 700 }));
const steadying = steadyingSchema.parse({ friction: 0.5 });

describe("steadiness", () => {
  it("upright on a strap: the signboard statics worked by hand", () => {
    // Pivot 400, strap 300: upright. Weight 3 x 9.80665 = 29.420 N straight above the heel, so any wind from behind
    // tips it on its face. From the front: 29.420 x 300 / 500 = 17.652 N at mid-height;
    // v = sqrt(2 x 17.652 / (1.225 x 1.8 x 0.5)) = sqrt(32.022) = 5.659 m/s.
    // Sliding: 0.5 x 29.420 = 14.710 N either way; v = sqrt(2 x 14.710 / 1.1025) = 5.166 m/s.
    const upright = standGeometry(standSchema.parse({ legStyle: "strap", strapMm: 300, pivotMm: 400 }));
    const { gustMs, first, forecastMs } = steadiness(upright, panel, steadying, 90);
    expect(gustMs["lifts at the back"]).toBeCloseTo(0, 3);
    expect(gustMs["tips over its leg"]).toBeCloseTo(5.659, 3);
    expect(gustMs["slides forward"]).toBeCloseTo(5.166, 3);
    expect(gustMs["slides back"]).toBeCloseTo(5.166, 3);
    expect(first).toBe("lifts at the back");
    expect(forecastMs).toBeCloseTo(0, 3);
  });

  it("leaning at 45 degrees: the four moves worked by hand", () => {
    // Square leg 700: foot 700 / cos 45 = 989.949 behind the heel. Weight 29.420 N at 353.553.
    // Face: 29.420 x 353.553 / 750 = 13.869 N. Leg: arm 500 - 989.949 cos 45 = -200: never.
    // Forward: 14.710 / (sin 45 + 0.5 cos 45) = 13.869 N (1.06066 is 750 / 707.107 again).
    // Back: 14.710 / (sin 45 - 0.5 cos 45) = 41.606 N at coefficient 1.2 + 0.6 x 15 / 60 = 1.35.
    const { gustMs } = steadiness(stand, panel, steadying, 45);
    expect(gustMs["lifts at the back"]).toBeCloseTo(Math.sqrt((2 * 13.869) / (1.225 * 1.8 * 0.5)), 3);
    expect(gustMs["slides forward"]).toBeCloseTo(Math.sqrt((2 * 13.869) / (1.225 * 1.8 * 0.5)), 3);
    expect(gustMs["slides back"]).toBeCloseTo(Math.sqrt((2 * 41.606) / (1.225 * 1.35 * 0.5)), 3);
    expect(gustMs["tips over its leg"]).toBe(Number.POSITIVE_INFINITY);
  });

  it("on a slope, with ballast: worked by hand", () => {
    // Square leg at 300, ground falling 10, tilt 40: opening 30. Foot 300 / cos 30 = 346.410 along the ground:
    // 341.147 back, 60.153 up. Panel 29.420 N at 383.022; 4 kg ballast = 19.613 N at heel and foot each; 68.647 N in all.
    // Face: (29.420 x 383.022 + 19.613 x 341.147) / 750 = 23.946 N.
    // Leg: (29.420 x (341.147 - 383.022) + 19.613 x 341.147) / (500 - 300) = 27.295 N at 1.2 + 0.6 x 10 / 60 = 1.3.
    // Forward: 68.647 (0.5 cos 10 - sin 10) / (sin 30 + 0.5 cos 30) = 21.882 / 0.933013 = 23.453 N.
    // Back: 68.647 (0.5 cos 10 + sin 10) / (sin 30 - 0.5 cos 30) = 45.722 / 0.066987 = 682.55 N.
    const sloping = standGeometry(standSchema.parse({ pivotMm: 300, groundSlopeDeg: 10 }));
    const held = steadyingSchema.parse({ friction: 0.5, ballastKg: 4, terrain: "farmland" });
    const { gustMs, first, forecastMs, beaufort } = steadiness(sloping, panel, held, 40);
    const wind = (forceN: number, coefficient: number) =>
      Math.sqrt((2 * forceN) / (1.225 * coefficient * 0.5));
    expect(gustMs["lifts at the back"]).toBeCloseTo(wind(23.946, 1.8), 3);
    expect(gustMs["tips over its leg"]).toBeCloseTo(wind(27.295, 1.3), 3);
    expect(gustMs["slides forward"]).toBeCloseTo(wind(23.4525, 1.8), 3);
    expect(gustMs["slides back"]).toBeCloseTo(wind(682.55, 1.3), 2);
    expect(first).toBe("slides forward");
    // 6.5226 x sqrt(0.9 / 1.5) over the gust factor at 2 m in farmland: 0.19 x 3.68888 x sqrt(1 + 7 / 3.68888) = 1.19306
    expect(forecastMs).toBeCloseTo(4.235, 3);
    expect(beaufort.name).toBe("gentle breeze");
  });

  it("ballast that would hold a stated wind: a propped plate worked by hand", () => {
    // Statics of a plate on level ground, wind onto its back: 1.2 x 0.54 m, 8 kg, tilt 30, friction 0.4, coefficient 1.8:
    // a gust of 15 m/s asks for 35.38 kg in all before it slides, q cf A (sin t + mu cos t) = mu m g, with air of
    // 1.25 kg/m3 and g = 9.81 (an independent computation). Here air is 1.225, and 1.5 / 0.9 is asked for.
    const plate: StandPanel = { lengthMm: 1200, widthMm: 540, depthMm: 0, massKg: 8 };
    const propped = standGeometry(standSchema.parse({ pivotMm: 900 }));
    const gust = 15 / windProfile("farmland", 0.6).gustFactor;
    const bare = steadyingSchema.parse({ friction: 0.4, holdWindMs: gust });
    const wanted = (35.38 * 1.225 * 9.81 * 1.5) / 0.9 / 1.25 / 9.80665;
    const { ballastKg } = steadiness(propped, plate, bare, 30);
    expect(ballastKg).toBeCloseTo(wanted - 8, 1);
    // With that ballast the forecast wind it holds is the one asked for: the two ways round agree.
    const held = steadiness(propped, plate, { ...bare, ballastKg: ballastKg! }, 30);
    expect(held.forecastMs).toBeCloseTo(gust, 6);
    expect(held.ballastKg).toBeCloseTo(ballastKg!, 6);
    // On rough ground it turns over first: 1.225 / 2 x 225 x 1.8 x 0.648 x 0.75 x 1200 x 1.5 / 0.9 = 241 115 N mm, less the
    // panel's 8 x 9.80665 x 519.615 = 40 766, over 9.80665 / 2 x 900 / cos 30 = 5095.7 a kg (half lies on the heel).
    const rough = steadiness(propped, plate, { ...bare, friction: 1.2 }, 30);
    expect(rough.ballastKg).toBeCloseTo((241_115 - 40_766) / 5095.7, 1);
  });

  it("no ballast holds a stand whose feet slide down the ground by themselves; a light wind asks for none", () => {
    const steep = standGeometry(standSchema.parse({ pivotMm: 700, groundSlopeDeg: 20 }));
    expect(steadiness(steep, panel, steadyingSchema.parse({ friction: 0.3 }), 50)).toMatchObject({
      ballastKg: null,
      first: "slides forward",
      forecastMs: 0,
    });
    expect(
      steadiness(stand, panel, steadyingSchema.parse({ friction: 0.5, holdWindMs: 1 }), 45).ballastKg,
    ).toBe(0);
  });

  it("flat on level ground no wind pushes it along, and lift alone moves it", () => {
    const flat = standGeometry(standSchema.parse({ pivotMm: 700 }));
    const { gustMs } = steadiness(flat, panel, steadying, 0);
    expect(gustMs["slides back"]).toBe(Number.POSITIVE_INFINITY);
    // Grip 14.710 N over 0.5: the whole weight, at 1.3.
    expect(gustMs["slides forward"]).toBeCloseTo(Math.sqrt((2 * 29.41995) / (1.225 * 1.3 * 0.5)), 3);
  });

  it("a pivot too low on the frame lets the panel fall over its leg with no wind at all", () => {
    const low = standGeometry(standSchema.parse({ pivotMm: 150 }));
    const { first, forecastMs } = steadiness(low, panel, steadying, 30);
    expect(first).toBe("tips over its leg");
    expect(forecastMs).toBe(0);
  });

  it("ballast never makes it less steady, and a heavier panel neither", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0.05, max: 1.2, noNaN: true }),
        (tilt, ballastKg, friction) => {
          const bare = steadiness(stand, panel, { ...steadying, friction }, tilt);
          const held = steadiness(stand, panel, { ...steadying, friction, ballastKg }, tilt);
          const heavy = steadiness(stand, { ...panel, massKg: 6 }, { ...steadying, friction }, tilt);
          expect(held.forecastMs).toBeGreaterThanOrEqual(bare.forecastMs - 1e-9);
          // Every holding force is weight times a length: twice the weight, the root of two times the wind.
          expect(heavy.forecastMs).toBeCloseTo(bare.forecastMs * Math.SQRT2, 9);
        },
      ),
    );
  });

  it("the coefficients run without a jump through their table", () => {
    expect(forceCoefficients(0)).toEqual({ fromBehind: 1.3, fromFront: 0.2 });
    expect(forceCoefficients(22.5).fromBehind).toBeCloseTo(1.5, 12);
    expect(forceCoefficients(90)).toEqual({ fromBehind: 1.8, fromFront: 1.8 });
    for (let tilt = 0; tilt < 90; tilt += 0.25) {
      const [low, high] = [forceCoefficients(tilt), forceCoefficients(tilt + 0.25)];
      expect(Math.abs(high.fromBehind - low.fromBehind)).toBeLessThanOrEqual(0.0101);
      expect(Math.abs(high.fromFront - low.fromFront)).toBeLessThanOrEqual(0.0101);
    }
  });

  it("a tall panel meets the wind of its own height", () => {
    // 4 m of panel at 30 degrees: its top stands 2 m above the sea, where the profile holds from 1 m up.
    // 0.19 (0.003 / 0.05)^0.07 = 0.156035; ln(2 / 0.003) = 6.502290; mean 1.014585, gust x sqrt(1 + 7 / 6.502290).
    const propped = standGeometry(standSchema.parse({ pivotMm: 2400 }));
    const tall = { lengthMm: 4000, widthMm: 500, depthMm: 0, massKg: 12 };
    const held = steadyingSchema.parse({ friction: 0.5, terrain: "open sea" });
    const { gustMs, first, forecastMs } = steadiness(propped, tall, held, 30);
    expect((gustMs[first] * Math.sqrt(0.6)) / forecastMs).toBeCloseTo(
      1.014585 * Math.sqrt(1 + 7 / 6.50229),
      4,
    );
  });

  it("the wind profile by hand, with the terrain factors that guides to the Eurocode print (from memory)", () => {
    // Three decimals: 0.156, 0.170, 0.190, 0.215, 0.234 for the five categories, smooth to rough.
    const factors = TERRAINS.map((terrain) => windProfile(terrain, 10).terrainFactor);
    [0.156, 0.17, 0.19, 0.215, 0.234].forEach((factor, at) => {
      expect(Math.abs((factors[at] ?? 0) - factor)).toBeLessThan(0.0006);
    });
    // Farmland at 10 m: 0.19 ln 200 = 1.00668; turbulence 1 / 5.298317 = 0.188739.
    const { roughnessFactor, turbulence, gustFactor } = windProfile("farmland", 10);
    expect(roughnessFactor).toBeCloseTo(1.00668, 5);
    expect(turbulence).toBeCloseTo(0.188739, 6);
    expect(gustFactor).toBeCloseTo(1.00668 * Math.sqrt(1 + 7 * 0.188739), 5);
  });

  it("pressure of a wind, and the wind of a force", () => {
    // 0.5 x 1.225 x 100; EN 1991-1-4 recommends 1.25 kg/m3.
    expect(dynamicPressure(10)).toBeCloseTo(61.25, 12);
    expect(dynamicPressure(10, 1.25)).toBeCloseTo(62.5, 12);
    // 61.25 Pa on 0.5 m2 at 1.8 is 55.125 N.
    expect(windOfForce(55.125, 0.5, 1.8)).toBeCloseTo(10, 12);
    expect(windOfForce(56.25, 0.5, 1.8, 1.25)).toBeCloseTo(10, 12);
  });

  it("rougher ground never gives a stronger gust near the ground", () => {
    const gusts = TERRAINS.map((terrain) => windProfile(terrain, 0.5).gustFactor);
    expect(gusts).toEqual([...gusts].sort((a, b) => b - a));
  });

  it("names every wind of the scale once, and no negative one", () => {
    expect(beaufortOf(0).name).toBe("calm");
    expect(beaufortOf(3.35).name).toBe("gentle breeze");
    expect(beaufortOf(80).name).toBe("hurricane force");
    expect(() => beaufortOf(-1)).toThrow("beaufortOf: expected a wind of 0 m/s or more, received -1");
    // The scale to a tenth of a metre per second (World Meteorological Organization, from memory).
    expect(BEAUFORT.map(({ force, leastMs, mostMs }) => [force, leastMs, Number(mostMs.toFixed(1))])).toEqual(
      [
        [0, 0, 0.2],
        [1, 0.3, 1.5],
        [2, 1.6, 3.3],
        [3, 3.4, 5.4],
        [4, 5.5, 7.9],
        [5, 8, 10.7],
        [6, 10.8, 13.8],
        [7, 13.9, 17.1],
        [8, 17.2, 20.7],
        [9, 20.8, 24.4],
        [10, 24.5, 28.4],
        [11, 28.5, 32.6],
        [12, 32.7, Number.POSITIVE_INFINITY],
      ],
    );
    for (const { force, leastMs } of BEAUFORT) expect(beaufortOf(leastMs).force).toBe(force);
    expect(() => beaufortOf(Number.NaN)).toThrow(RangeError);
  });
});
