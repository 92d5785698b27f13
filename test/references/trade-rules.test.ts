import { describe, expect, it } from "vitest";
import { latitudeTilt, noonTilt, summerTilt, winterTilt } from "../../lib/stand/angle-rules.ts";

// The published figures are in `comparisons/tilt-rules.ts`; here is how the rules behave elsewhere on Earth.
describe("trade rules", () => {
  it("mirror in the south, and stay between flat and upright", () => {
    expect([latitudeTilt(-45), summerTilt(-45), winterTilt(-45)]).toEqual([45, 30, 60]);
    expect([summerTilt(10), winterTilt(80)]).toEqual([0, 90]);
  });

  it("the noon rule is latitude less declination, mirrored in the south, flat past the zenith", () => {
    expect(noonTilt(45, 23.44)).toBeCloseTo(21.56, 12);
    expect(noonTilt(-45, -23.44)).toBeCloseTo(21.56, 12);
    expect(noonTilt(10, 23.44)).toBe(0);
    expect(noonTilt(80, -23.44)).toBe(90);
  });
});
