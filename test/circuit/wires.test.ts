import { describe, expect, test } from "vitest";
import {
  airFactor,
  ampacityOf,
  awgDiameterMm,
  awgOhmPerKm,
  CUSTOMARY_DROP_PCT,
  cableDrop,
  checkCurrent,
  FUSE_AMPS,
  fuseAtLeast,
  IEC_AREAS_MM2,
  iecOhmPerKm,
  ohmPerKm,
  thickerRuns,
  wireSizeOf,
  wireText,
} from "../../lib/circuit/index.ts";
import { circuitSchema } from "../../lib/plan/circuit.ts";
import { gaugeOf, gaugeText } from "../../lib/plan/wire-size.ts";

const run = (over: object) => circuitSchema.parse({ panelCable: over }).panelCable;

describe("gaugeOf", () => {
  test.each([
    ["12 AWG", 12],
    ["1/0 AWG", 0],
    ["2/0 AWG", -1],
    ["4/0 awg", -3],
    ["0 AWG", 0],
    ["00 AWG", -1],
    ["0000 AWG", -3],
  ])("%s", (text, gauge) => {
    expect(gaugeOf(text)).toBe(gauge);
  });

  test.each(["12", "25 AWG", "5/0 AWG", "-2 AWG", "12AWGG", ""])("%s is no gauge", (text) => {
    expect(gaugeOf(text)).toBeNull();
  });

  test("text and back", () => {
    for (let gauge = -3; gauge <= 24; gauge += 1) expect(gaugeOf(gaugeText(gauge))).toBe(gauge);
  });
});

describe("wire sizes", () => {
  test("three gauges on, a wire is half as thick in area: 92^(2x3/39) = 2.005", () => {
    expect((awgDiameterMm(10) / awgDiameterMm(13)) ** 2).toBeCloseTo(92 ** (6 / 39), 12);
  });

  test("refuses a gauge or an area that is none", () => {
    expect(() => awgDiameterMm(40)).toThrow("awgDiameterMm: expected gauge -3 (4/0) to 36, received 40");
    expect(() => iecOhmPerKm(0, "5", "copper", 20)).toThrow(RangeError);
    expect(() => wireSizeOf("thick")).toThrow("wireSizeOf: expected mm2 above 0");
  });

  test("resistance falls with every size of either series, in either metal, and rises with warmth", () => {
    for (const metal of ["copper", "aluminium"] as const) {
      for (const strands of ["flexible", "stranded", "solid"] as const) {
        const metric = IEC_AREAS_MM2.map((areaMm2) =>
          ohmPerKm({ series: "metric", areaMm2 }, strands, metal, 20),
        );
        metric.slice(1).forEach((ohm, at) => {
          expect(ohm).toBeLessThan(metric[at]);
        });
        for (let gauge = -2; gauge <= 24; gauge += 1) {
          const at = (n: number, celsius = 20) =>
            ohmPerKm({ series: "awg", gauge: n }, strands, metal, celsius);
          expect(at(gauge - 1)).toBeLessThan(at(gauge));
          expect(at(gauge, 60)).toBeGreaterThan(at(gauge));
        }
      }
    }
  });

  test("between listed areas the resistance lies between theirs", () => {
    expect(iecOhmPerKm(5, "5", "copper", 20)).toBeLessThan(4.95);
    expect(iecOhmPerKm(5, "5", "copper", 20)).toBeGreaterThan(3.3);
    expect(iecOhmPerKm(400, "5", "copper", 20)).toBeCloseTo((0.0641 * 300) / 400, 9);
  });

  test("aluminium gauges against NEC chapter 9 table 8 (3.25, 1.28 and 0.508 ohm/kft, from memory) within 1 %", () => {
    const KM_PER_KFT = 0.3048;
    for (const [gauge, ohmPerKft] of [
      [12, 3.25],
      [8, 1.28],
      [4, 0.508],
    ] as const) {
      const ours = awgOhmPerKm(gauge, "stranded", "aluminium", 75) * KM_PER_KFT;
      expect(Math.abs(ours / ohmPerKft - 1)).toBeLessThan(0.01);
    }
  });
});

describe("cableDrop", () => {
  test("5 A over 10 m of 2.5 mm2 class 5 at 20 degC: 0.798 V, 6.65 % of 12 V, 3.99 W", () => {
    const drop = cableDrop(run({ size: 2.5, lengthM: 10, conductorC: 20, contactMilliohm: 0 }), 5, 12);
    expect(drop.dropV).toBeCloseTo(0.798, 9);
    expect(drop.dropPct).toBeCloseTo(6.65, 9);
    expect(drop.lossW).toBeCloseTo(3.99, 9);
    expect(drop.withinCustom).toBe(false);
    expect(CUSTOMARY_DROP_PCT).toBe(3);
  });

  test("the next sizes of the same series, each dropping less", () => {
    const sizes = thickerRuns(run({ size: 2.5 }), 3).map(({ size }) => size);
    expect(sizes).toEqual([2.5, 4, 6, 10]);
    expect(thickerRuns(run({ size: "12 AWG" }), 2).map(({ size }) => size)).toEqual([
      "12 AWG",
      "10 AWG",
      "8 AWG",
    ]);
    expect(thickerRuns(run({ size: 300 }), 2).map(({ size }) => size)).toEqual([300]);
    const drops = thickerRuns(run({ size: "14 AWG" }), 4).map((one) => cableDrop(one, 6, 18).dropV);
    drops.slice(1).forEach((dropV, at) => {
      expect(dropV).toBeLessThan(drops[at]);
    });
  });

  test("feet are read as metres one way", () => {
    expect(run({ lengthM: "16.4 ft" }).lengthM).toBeCloseTo(4.99872, 9);
  });
});

describe("ampacity and fuses", () => {
  test("NEC table 310.16 and IEC 60364-5-52 B.52.2 at 30 degC (both from memory)", () => {
    const awg = (gauge: number, insulationC: 60 | 75 | 90) =>
      ampacityOf({ series: "awg", gauge }, "copper", insulationC, 30)?.amps;
    expect([awg(14, 60), awg(12, 75), awg(10, 90), awg(-3, 75)]).toEqual([15, 25, 40, 230]);
    const metric = (areaMm2: number) => ampacityOf({ series: "metric", areaMm2 }, "copper", 70, 30)?.amps;
    expect([metric(1.5), metric(2.5), metric(4), metric(6), metric(16)]).toEqual([17.5, 24, 32, 41, 76]);
  });

  test("warmer air takes off what IEC 60364-5-52 table B.52.14 says: 0.87 at 40 degC, 0.71 at 50 degC for PVC", () => {
    // Two printed decimals.
    expect(Math.abs(airFactor(70, 40) - 0.87)).toBeLessThan(0.005);
    expect(Math.abs(airFactor(70, 50) - 0.71)).toBeLessThan(0.005);
    expect(airFactor(70, 80)).toBe(0);
  });

  test("an odd size is given the next thinner listed one's current, and a wire no table lists none", () => {
    expect(ampacityOf({ series: "metric", areaMm2: 5 }, "copper", 70, 30)?.amps).toBe(32);
    expect(ampacityOf({ series: "awg", gauge: 7 }, "copper", 75, 30)?.amps).toBe(50);
    expect(ampacityOf({ series: "awg", gauge: 22 }, "copper", 75, 30)).toBeNull();
    expect(ampacityOf({ series: "metric", areaMm2: 4 }, "aluminium", 70, 30)).toBeNull();
  });

  test("the fuse is the next standard size up, and the cable must carry it", () => {
    expect(fuseAtLeast(11)).toBe(15);
    expect(fuseAtLeast(15)).toBe(15);
    expect(fuseAtLeast(1000)).toBeNull();
    expect([...FUSE_AMPS].sort((a, b) => a - b)).toEqual(FUSE_AMPS);
    const fits = checkCurrent(run({ size: 4 }), 7.5, 1.25, 30);
    expect(fits).toMatchObject({ verdict: "fits", designA: 9.375, fuseA: 10 });
    expect(fits.words).toContain("confirm it by the local code");
    expect(checkCurrent(run({ size: 1.5 }), 16, 1.25, 30).verdict).toBe("too-thin");
    expect(checkCurrent(run({ size: 1.5 }), 13.5, 1.25, 30).verdict).toBe("no-fuse");
    expect(checkCurrent(run({ size: "22 AWG" }), 1, 1.25, 30).verdict).toBe("not-listed");
  });

  test("names of sizes", () => {
    expect([wireText(wireSizeOf(4)), wireText(wireSizeOf("2/0 AWG"))]).toEqual(["4 mm²", "2/0 AWG"]);
  });
});
