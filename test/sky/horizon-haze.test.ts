import { expect, test } from "vitest";
import { airMassOfSine, birdClearLight, clearAirOf } from "../../lib/sky/index.ts";

test("the thickest haze with the sun on the horizon lets some light through, never less than none", () => {
  const air = clearAirOf({ turbidity: { aod380: 2, aod500: 2 }, waterCm: 10, ozoneCm: 0.6 }, -430);
  for (const up of [1e-6, 1e-4, 1e-3, 0.005, 0.01, 0.05]) {
    const { beamNormal, diffuse, global } = birdClearLight(1361, up, airMassOfSine(up), air, 0.8);
    expect(beamNormal).toBeGreaterThanOrEqual(0);
    expect(diffuse).toBeGreaterThanOrEqual(0);
    expect(global).toBeGreaterThanOrEqual(0);
    expect(global).toBeLessThanOrEqual(1361 * up);
  }
});
