import { describe, expect, test } from "vitest";
import { readPlan } from "../../../lib/plan/index.ts";
import { skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { columnWaterCm } from "../../../lib/sky/climate/world/column-water.ts";
import { saturationHPa } from "../../../lib/sky/climate/world/humidity.ts";
import { shipped } from "./shipped.ts";

describe("columnWaterCm", () => {
  // Gueymard 1994 evaluated by an independent program; its own saturation pressure differs from FAO-56's by up to 0.3 %.
  test.each([
    [-10, 0.4, 0.2668],
    [0, 0.4, 0.4494],
    [0, 0.8, 0.8987],
    [10, 0.4, 0.8153],
    [10, 0.8, 1.6307],
    [20, 0.4, 1.4939],
    [25, 0.6, 3.0077],
    [30, 0.8, 5.3376],
    [35, 0.2, 1.7598],
  ])("at %d degC and a relative humidity of %d is %d cm", (airC, humidity, cm) => {
    expect(columnWaterCm(airC, humidity * saturationHPa(airC)) / cm).toBeCloseTo(1, 2);
  });

  test("saturation is that of FAO-56 table 2.3, kPa", () => {
    for (const [airC, kPa] of [
      [1, 0.657],
      [10, 1.228],
      [21, 2.487],
      [40, 7.376],
    ]) {
      expect(Math.abs(saturationHPa(airC) / 10 - kPa)).toBeLessThan(0.001);
    }
  });

  test("tropical island: 4 to 5 cm all year, as soundings there find", () => {
    const sky = { source: "climate", from: { kind: "nearest" } };
    const at = (air: object) =>
      skiesOfPlan(
        readPlan({
          site: { latitudeDeg: 13.48, longitudeDeg: 144.8, elevationM: 77 },
          season: { from: "2027-06-01", to: "2027-06-03", stepMinutes: 30 },
          panels: [{ name: "panel", module: { powerW: 100 } }],
          sky,
          air,
        }),
        null,
        shipped,
      );
    const { cloud, skies } = at({});
    for (const water of cloud?.chosen.climate.waterCm ?? []) {
      expect(water).toBeGreaterThan(3.8);
      expect(water).toBeLessThan(5);
    }
    const most = (of: typeof skies): number => Math.max(...of.clear.sky.global);
    // One clear air for the whole world is too dry there: its clear sky was 3 to 5 % too bright. A plan may still state it.
    const dry = at({ waterCm: 1.42 });
    expect(most(skies) / most(dry.skies)).toBeGreaterThan(0.94);
    expect(most(skies) / most(dry.skies)).toBeLessThan(0.98);
  });
});
