import { describe, expect, it } from "vitest";
import {
  latitudeTilt,
  lorenzoRelativeLight,
  lorenzoTilt,
  noonTilt,
  summerTilt,
  winterTilt,
} from "../../lib/stand/angle-rules.ts";
import { inputsOf, type ReferenceRow, readReference } from "./read.ts";

// Trade rules for the tilt (NREL map note; Marion & Wilcox 1994; Lorenzo). The seasonal energies behind them are
// checked where seasons are computed; these are the rules themselves.
const rows = readReference("trade-rules.csv");
const input = (row: ReferenceRow, name: string): number => Number(inputsOf(row)[name]);
const rules = rows.filter(({ example }) => example === "rule");
const optima = rows.filter(({ quantity }) => quantity === "annual_optimum_tilt");
const losses = rows.filter(({ quantity }) => quantity === "annual_relative_to_optimum");

describe("trade rules", () => {
  it("has every case", () => {
    expect([rules.length, optima.length, losses.length]).toEqual([3, 2, 18]);
  });

  it("latitude, latitude less 15, latitude plus 15", () => {
    const computed: Readonly<Record<string, (latitude: number) => number>> = {
      latitude: latitudeTilt,
      "latitude-15": summerTilt,
      "latitude+15": winterTilt,
    };
    // 45, 30 and 60 at 45 N: common practice, no source.
    expect(rules.map((row) => computed[row.expected ?? ""]?.(45))).toEqual([45, 30, 60]);
    expect([latitudeTilt(-45), summerTilt(-45), winterTilt(-45)]).toEqual([45, 30, 60]);
    expect([summerTilt(10), winterTilt(80)]).toEqual([0, 90]);
  });

  it.each(optima)("$case_id", (row) => {
    // Printed to 0.1 degree.
    expect(Math.abs(lorenzoTilt(input(row, "latitude_deg")) - Number(row.expected))).toBeLessThanOrEqual(
      0.05,
    );
  });

  it.each(losses)("$case_id", (row) => {
    const optimum = lorenzoTilt(input(row, "latitude_deg"));
    const relative = lorenzoRelativeLight(input(row, "surface_tilt_deg"), optimum);
    // Printed to three decimals.
    expect(Math.abs(relative - Number(row.expected))).toBeLessThanOrEqual(0.0005);
  });

  it("the noon rule is latitude less declination, mirrored in the south, flat past the zenith", () => {
    expect(noonTilt(45, 23.44)).toBeCloseTo(21.56, 12);
    expect(noonTilt(-45, -23.44)).toBeCloseTo(21.56, 12);
    expect(noonTilt(10, 23.44)).toBe(0);
    expect(noonTilt(80, -23.44)).toBe(90);
  });
});
