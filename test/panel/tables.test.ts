import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { logSaturationAt, tabledLambert } from "../../lib/panel/current-table.ts";
import {
  currentAt,
  curveAt,
  diodePanel,
  maxPowerPoint,
  readSurface,
  tabledCurrentAt,
} from "../../lib/panel/index.ts";
import { lambertW0OfExp } from "../../lib/panel/lambert-w.ts";

/**
 * A small panel, an ordinary one, one with a very full curve, one with much loss inside. Each is fitted and tabled inside
 * the tests that look at it.
 */
const plates = [
  { powerW: 10, vmpV: 17.6, impA: 0.57, vocV: 21.6, iscA: 0.62, powerPctPerK: -0.45 },
  { powerW: 60, vmpV: 17.1, impA: 3.5, vocV: 21.1, iscA: 3.8, vocPctPerK: -0.38, iscPctPerK: 0.065 },
  { powerW: 100, vmpV: 18, impA: 5.55, vocV: 21.95, iscA: 5.8, powerPctPerK: -0.4 },
  { powerW: 72, vmpV: 66, impA: 1.1, vocV: 88, iscA: 1.3, powerPctPerK: -0.25, vocPctPerK: -0.28 },
];
const ordinary = () => diodePanel(plates[1]);

/** Lights and temperatures between the nodes of every table. */
const lights = Array.from({ length: 60 }, (_, i) => 0.4 * 1.1504 ** i);
const temperatures = Array.from({ length: 40 }, (_, i) => -38.7 + 3.71 * i);

describe.each(plates.map((plate) => [plate.powerW, plate] as const))("%i W", (_, plate) => {
  test("the power surface is within 0.2 % of the full solution from 20 W/m2 up, and 1e-4 of the rating below", () => {
    const panel = diodePanel(plate);
    const { reference } = panel.fit;
    let [worstShare, worstWatts, worstVolts] = [0, 0, 0];
    for (const light of lights) {
      for (const cellC of temperatures) {
        const full = maxPowerPoint(curveAt(reference, light, cellC));
        const watts = light * readSurface(panel.surface.wattsPerLight, light, cellC);
        worstWatts = Math.max(worstWatts, light < 20 ? Math.abs(watts - full.watts) / panel.ratedW : 0);
        if (light < 20) continue;
        worstShare = Math.max(worstShare, Math.abs(watts / full.watts - 1));
        const volts = readSurface(panel.surface.volts, light, cellC);
        worstVolts = Math.max(worstVolts, Math.abs(volts / full.volts - 1));
      }
    }
    expect(lights.at(-1)).toBeGreaterThan(1500);
    expect(worstShare).toBeLessThan(0.002);
    expect(worstWatts).toBeLessThan(1e-4);
    expect(worstVolts).toBeLessThan(0.002);
  });

  test("the tabled current is within 1e-4 of the light current of the full solution", () => {
    const panel = diodePanel(plate);
    const { reference } = panel.fit;
    let worst = 0;
    for (const light of lights) {
      for (const cellC of temperatures) {
        const curve = curveAt(reference, light, cellC);
        for (let share = 0; share <= 1.1; share += 0.11) {
          const volts = share * panel.nameplate.vocV;
          const full = currentAt(curve, volts);
          // Far above open circuit the current runs away; no controller takes a panel there.
          if (full < -reference.photocurrentA) continue;
          const read = tabledCurrentAt(panel.currents, volts, light, cellC);
          worst = Math.max(worst, Math.abs(read - full) / reference.photocurrentA);
        }
      }
    }
    expect(worst).toBeLessThan(1e-4);
  });
});

describe("readSurface", () => {
  test("is 0 in the dark and lets NaN through", () => {
    const { wattsPerLight } = ordinary().surface;
    expect(0 * readSurface(wattsPerLight, 0, 20)).toBe(0);
    expect(readSurface(wattsPerLight, Number.NaN, 20)).toBeNaN();
    expect(readSurface(wattsPerLight, 500, Number.NaN)).toBeNaN();
  });

  test("goes on straight beyond its edges", () => {
    const { wattsPerLight } = ordinary().surface;
    const at = (light: number, cellC: number) => readSurface(wattsPerLight, light, cellC);
    expect(at(1650, 25)).toBeCloseTo(at(1600, 25), 3);
    expect(at(800, 115) - at(800, 110)).toBeCloseTo(at(800, 110) - at(800, 105), 9);
    expect(at(800, -45) - at(800, -40)).toBeCloseTo(at(800, -40) - at(800, -35), 9);
  });
});

describe("tabledCurrentAt", () => {
  test("is 0 in the dark and lets NaN through", () => {
    const { currents } = ordinary();
    expect(tabledCurrentAt(currents, 12, 0, 20)).toBe(0);
    expect(tabledCurrentAt(currents, 12, -1, 20)).toBe(0);
    expect(tabledCurrentAt(currents, 12, Number.NaN, 20)).toBeNaN();
    expect(tabledCurrentAt(currents, Number.NaN, 500, 20)).toBeNaN();
    expect(tabledCurrentAt(currents, 12, 500, Number.NaN)).toBeNaN();
  });

  test("knows a panel without series resistance", () => {
    const { currents, fit } = ordinary();
    const reference = { ...fit.reference, seriesOhm: 0 };
    const without = { ...currents, reference };
    for (const volts of [0, 12, 17, 20]) {
      const full = currentAt(curveAt(reference, 700, 30), volts);
      expect(tabledCurrentAt(without, volts, 700, 30)).toBeCloseTo(full, 4);
    }
  });
});

describe("tabledLambert", () => {
  test("is within 5e-6 of the function, 0 below its table and the function itself above", () => {
    fc.assert(
      fc.property(fc.double({ min: -45, max: 80, noNaN: true }), (log) => {
        expect(Math.abs(tabledLambert(log) - lambertW0OfExp(log))).toBeLessThan(5e-6);
      }),
      { numRuns: 2000 },
    );
    expect(tabledLambert(-40)).toBe(0);
    expect(tabledLambert(-41)).toBe(0);
    expect(tabledLambert(60)).toBe(lambertW0OfExp(60));
    expect(tabledLambert(75.3)).toBe(lambertW0OfExp(75.3));
    // Straight between its nodes, a 64th apart.
    const [left, right] = [lambertW0OfExp(1), lambertW0OfExp(1 + 1 / 64)];
    expect(tabledLambert(1 + 1 / 256)).toBeCloseTo(left + (right - left) / 4, 14);
    expect(tabledLambert(Number.NaN)).toBeNaN();
  });
});

describe("logSaturationAt", () => {
  test("is the logarithm itself at whole degrees, straight between them and beyond both ends", () => {
    const { currents, fit } = ordinary();
    const at = (cellC: number) => logSaturationAt(currents, cellC);
    for (const cellC of [-40, -7, 25, 60, 110]) {
      expect(at(cellC)).toBeCloseTo(Math.log(curveAt(fit.reference, 1000, cellC).saturationA), 10);
    }
    expect(at(33.25)).toBeCloseTo(at(33) + (at(34) - at(33)) / 4, 12);
    expect(at(-45)).toBeCloseTo(at(-40) - 5 * (at(-39) - at(-40)), 10);
    expect(at(115)).toBeCloseTo(at(111) + 4 * (at(111) - at(110)), 10);
    expect(at(Number.NaN)).toBeNaN();
  });
});
