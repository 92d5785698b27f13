import { describe, expect, test } from "vitest";
import { ampacityOf } from "../../lib/circuit/ampacity.ts";
import { awgAreaMm2, awgDiameterMm, awgOhmPerKm } from "../../lib/circuit/awg.ts";
import { cableDrop } from "../../lib/circuit/drop.ts";
import { checkCurrent } from "../../lib/circuit/fuse.ts";
import { iecOhmPerKm } from "../../lib/circuit/iec-sizes.ts";
import { iecTemperatureFactor, temperatureFactor } from "../../lib/circuit/metal.ts";
import { areaMm2Of, ohmPerKm, thickerSizes, wireSizeOf } from "../../lib/circuit/wire.ts";
import { circuitSchema } from "../../lib/plan/circuit.ts";

const run = (over: object) => circuitSchema.parse({ panelCable: over }).panelCable;

describe("ampacityOf", () => {
  test("reads the column of the insulation, or the next cooler one", () => {
    const awg = (insulationC: 60 | 70 | 75 | 90) =>
      ampacityOf({ series: "awg", gauge: 12 }, "copper", insulationC, 30)?.ampsAt30C;
    expect([awg(60), awg(70), awg(75), awg(90)]).toEqual([20, 20, 25, 30]);
    const metric = (insulationC: 60 | 70 | 75 | 90) =>
      ampacityOf({ series: "metric", areaMm2: 16 }, "aluminium", insulationC, 30)?.ampsAt30C;
    expect([metric(60), metric(70), metric(75), metric(90)]).toEqual([undefined, 60, 60, 79]);
  });

  test("takes the air off by the column that was read", () => {
    const at = (series: "awg" | "metric", insulationC: 70 | 75 | 90) =>
      ampacityOf(series === "awg" ? { series, gauge: 12 } : { series, areaMm2: 4 }, "copper", insulationC, 50)
        ?.amps;
    // sqrt((60 - 50) / 30), sqrt((75 - 50) / 45), sqrt((70 - 50) / 40), sqrt((90 - 50) / 60)
    expect(at("awg", 70)).toBeCloseTo(20 * 0.57735, 4);
    expect(at("awg", 75)).toBeCloseTo(25 * 0.745356, 4);
    expect(at("metric", 75)).toBeCloseTo(32 * Math.SQRT1_2, 4);
    expect(at("metric", 90)).toBeCloseTo(42 * 0.816497, 4);
  });

  test("says which table it read", () => {
    const source = (size: number | string) => ampacityOf(wireSizeOf(size), "copper", 75, 30)?.source;
    expect(source("14 AWG")).toBe("NEC table 310.16, in a raceway");
    expect(source("16 AWG")).toBe("NEC table 400.5(A)(1), flexible cord");
    expect(source("15 AWG")).toBe("NEC table 400.5(A)(1), flexible cord");
    expect(source(1.5)).toBe("IEC 60364-5-52 table B.52.2, method B1");
    expect(source(1)).toBe("HD 516, flexible cord");
  });
});

describe("American gauges", () => {
  test("meet the two sizes that ASTM B258 defines: 0.0050 in at 36 and 0.4600 in at 4/0", () => {
    expect(awgDiameterMm(36)).toBeCloseTo(0.127, 12);
    // 0.127 x 92 is 11.684 mm to the last digit, since 36 - -3 is 39.
    expect(awgDiameterMm(-3)).toBeCloseTo(11.684, 12);
    // pi / 4 x 0.127^2
    expect(awgAreaMm2(36)).toBeCloseTo(0.0126677, 7);
  });

  test.each([-4, 36.5, Number.NaN])("%d is refused", (gauge) => {
    expect(() => awgDiameterMm(gauge)).toThrow(
      new RangeError(`awgDiameterMm: expected gauge -3 (4/0) to 36, received ${gauge}`),
    );
  });
});

describe("resistance", () => {
  test("by temperature: both rules by hand", () => {
    expect(temperatureFactor("copper", 75)).toBeCloseTo(1 + 0.00393 * 55, 12);
    expect(temperatureFactor("aluminium", 20)).toBe(1);
    expect(iecTemperatureFactor("copper", 70)).toBeCloseTo(300 / 250, 12);
    expect(iecTemperatureFactor("aluminium", 68)).toBeCloseTo(296 / 248, 12);
  });

  test("between listed areas resistance x area goes straight; beyond them the nearest stays", () => {
    // 4.95 x 4 = 19.8 at 4 mm2, 3.3 x 6 = 19.8 at 6 mm2; class 1-2: 4.61 x 4 = 18.44, 3.08 x 6 = 18.48, half way 18.46.
    expect(iecOhmPerKm(5, "5", "copper", 20)).toBeCloseTo(19.8 / 5, 12);
    expect(iecOhmPerKm(5, "1-2", "copper", 20)).toBeCloseTo(18.46 / 5, 12);
    // 36 x 0.5 / 0.3
    expect(iecOhmPerKm(0.3, "1-2", "copper", 20)).toBeCloseTo(60, 9);
    expect(iecOhmPerKm(0.3, "5", "copper", 20)).toBeCloseTo(65, 9);
  });

  test("aluminium is the standard's where it lists it, else copper's by the metals' resistivities", () => {
    expect(iecOhmPerKm(16, "1-2", "aluminium", 20)).toBeCloseTo(1.91, 12);
    // 0.028264 x 58 = 1.639312
    expect(iecOhmPerKm(4, "1-2", "aluminium", 20)).toBeCloseTo(4.61 * 1.639312, 9);
    expect(iecOhmPerKm(16, "5", "aluminium", 20)).toBeCloseTo(1.21 * 1.639312, 9);
  });

  test("at 20 degC the standard's own figures to the digit, warmer by its own rule", () => {
    expect(iecOhmPerKm(2.5, "5", "copper", 20)).toBe(7.98);
    expect(iecOhmPerKm(2.5, "1-2", "copper", 20)).toBe(7.41);
    // (230 + 70) / 250 = 1.2, for a listed size, one between two and one beyond the last.
    expect(iecOhmPerKm(2.5, "5", "copper", 70)).toBeCloseTo(1.2 * 7.98, 12);
    expect(iecOhmPerKm(5, "5", "copper", 70)).toBeCloseTo((1.2 * 19.8) / 5, 12);
    expect(iecOhmPerKm(400, "1-2", "copper", 70)).toBeCloseTo((1.2 * 0.0601 * 300) / 400, 12);
  });

  test("solid or stranded, by series", () => {
    expect(ohmPerKm({ series: "metric", areaMm2: 4 }, "flexible", "copper", 20)).toBe(4.95);
    expect(ohmPerKm({ series: "metric", areaMm2: 4 }, "stranded", "copper", 20)).toBe(4.61);
    expect(ohmPerKm({ series: "metric", areaMm2: 16 }, "stranded", "aluminium", 20)).toBe(1.91);
    const gauge = { series: "awg", gauge: 12 } as const;
    const solid = ohmPerKm(gauge, "solid", "copper", 20);
    expect(ohmPerKm(gauge, "stranded", "copper", 20)).toBeCloseTo(1.02 * solid, 12);
    expect(ohmPerKm(gauge, "flexible", "copper", 20)).toBeCloseTo(1.02 * solid, 12);
    // 12 AWG is 3.3088 mm2: 1000 / 58 / 3.3088
    expect(awgOhmPerKm(12, "solid", "copper", 20)).toBeCloseTo(5.2108, 3);
  });

  test("an area and a gauge that are none are refused", () => {
    expect(() => iecOhmPerKm(0, "5", "copper", 20)).toThrow(
      "iecOhmPerKm: expected an area above 0 mm2, received 0",
    );
    expect(() => wireSizeOf(0)).toThrow(
      'wireSizeOf: expected mm2 above 0 or a gauge such as "12 AWG", received 0',
    );
    expect(areaMm2Of(wireSizeOf("12 AWG"))).toBeCloseTo(3.3088, 4);
    expect(areaMm2Of(wireSizeOf(2.5))).toBe(2.5);
  });
});

test("thicker sizes: gauges as shops sell them, down to 4/0; never the size itself", () => {
  expect(
    thickerSizes({ series: "awg", gauge: 3 }, 9).map((size) => ("gauge" in size ? size.gauge : null)),
  ).toEqual([2, 1, 0, -1, -2, -3]);
  expect(thickerSizes({ series: "awg", gauge: 12 }, 1)).toEqual([{ series: "awg", gauge: 10 }]);
  expect(thickerSizes({ series: "awg", gauge: -3 }, 2)).toEqual([]);
  expect(thickerSizes({ series: "metric", areaMm2: 5 }, 1)).toEqual([{ series: "metric", areaMm2: 6 }]);
});

test("a drop just at the custom is within it", () => {
  const thick = run({ size: 4, lengthM: 10, conductorC: 20, contactMilliohm: 1 });
  // 2 x 10 x 4.95 / 1000 + 0.001 = 0.1 ohm
  expect(cableDrop(thick, 3, 10).ohm).toBeCloseTo(0.1, 12);
  expect(cableDrop(thick, 3, 10.001).withinCustom).toBe(true);
  expect(cableDrop(thick, 3, 9.999).withinCustom).toBe(false);
  expect(() => cableDrop(thick, 3, 0)).toThrow("cableDrop: expected a voltage above 0 V, received 0");
});

describe("checkCurrent in words", () => {
  const confirm = "A first check from published tables: confirm it by the local code before you build.";
  const words = (size: number | string, worstCaseA: number, air = 30) =>
    checkCurrent(run({ size }), worstCaseA, 1.25, air).words;

  test.each([
    [
      () => words(4, 7.5),
      `Design current 9.4 A, cable limit 32.0 A (IEC 60364-5-52 table B.52.2, method B1, air at 30 °C): a 10 A fuse protects it. ${confirm}`,
    ],
    [
      () => words(1.5, 16),
      `Too thin: design current 20.0 A, cable limit 17.5 A (IEC 60364-5-52 table B.52.2, method B1, air at 30 °C). Take a thicker one. ${confirm}`,
    ],
    [
      () => words(1.5, 13.5),
      `No standard fuse lies between 16.9 A and 17.5 A (IEC 60364-5-52 table B.52.2, method B1, air at 30 °C): take a thicker cable. ${confirm}`,
    ],
    [
      () => words("22 AWG", 1),
      `The tables known here list no current for this wire: ask its maker or the local code. ${confirm}`,
    ],
  ])("case %#", (said, wanted) => {
    expect(said()).toBe(wanted);
  });

  test("what just fits, fits", () => {
    // 2.5 mm2 carries 24 A; at 16 x 1.25 = 20 A the fuse is 20 A.
    expect(checkCurrent(run({ size: 2.5 }), 16, 1.25, 30)).toMatchObject({
      verdict: "fits",
      worstCaseA: 16,
      designA: 20,
      fuseA: 20,
    });
    // 10 mm2 of copper at 57 A carries 50 A but no 60 A fuse.
    expect(checkCurrent(run({ size: 10 }), 40, 1.25, 30).fuseA).toBe(50);
    expect(checkCurrent(run({ size: 10 }), 41, 1.25, 30)).toMatchObject({ verdict: "no-fuse", fuseA: null });
    // 12 AWG at 60 degC carries just the design current of 20 A.
    expect(checkCurrent(run({ size: "12 AWG", insulationC: 60 }), 16, 1.25, 30).fuseA).toBe(20);
  });
});
