import { describe, expect, test } from "vitest";
import { ampacityOf } from "../../lib/circuit/ampacity.ts";
import { CHEMISTRY_TRAITS, capacityShare } from "../../lib/circuit/chemistry.ts";
import { readPlan } from "../../lib/plan/index.ts";
import { COLDEST_HOUR, MEAN_SHARE, WARMEST_HOUR, warmthAt } from "../../lib/sky/climate/day-temperature.ts";
import { reflectanceOf } from "../../lib/sky/ground.ts";
import { nearestPlaces } from "../../lib/sky/index.ts";

/**
 * Values that decide or protect where a plan leaves them out, each beside its source. A change of one of them is to be
 * made here as well, with the source that asks for it.
 */

const planWith = (chemistry: string, more: object = {}) =>
  readPlan({
    site: { latitudeDeg: 52, longitudeDeg: 6, timeZone: "Europe/Amsterdam" },
    season: { from: "2027-06-01", to: "2027-06-02" },
    panels: [{ name: "p", module: { powerW: 100 } }],
    battery: { chemistry },
    ...more,
  });

describe("panel", () => {
  const [panel] = planWith("LiFePO4").panels;
  test.each([
    [
      "weight of a framed 100 W panel, kg: makers' sheets say 6 to 8 (common practice, no source)",
      panel!.massKg,
      7,
    ],
    ["dust on the glass, %: common practice, no source", panel!.dustPct, 2],
  ])("%s", (_, ours, stated) => {
    expect(ours).toBe(stated);
  });
});

describe("controller", () => {
  const { circuit } = planWith("LiFePO4");
  const pwm = planWith("LiFePO4", { circuit: { controller: { kind: "pwm" } } }).circuit.controller;
  test("MPPT works from 1 V above the battery and starts at 5 V above (makers' sheets, common practice)", () => {
    expect(circuit.controller).toMatchObject({ kind: "mppt", headroomV: 1, startAboveBatteryV: 5 });
  });
  test("PWM loses 0.3 V between its terminals (common practice, no source)", () => {
    expect(pwm).toMatchObject({ kind: "pwm", dropV: 0.3 });
  });
  test("strong light and continuous current each count 1.25 times: NEC 690.8(A) and (B), from memory", () => {
    expect(circuit).toMatchObject({ strongLightFactor: 1.25, continuousFactor: 1.25 });
  });
});

describe("battery", () => {
  /** Charge and discharge efficiency, %, the depth used, %, and the coldest charging, degC. */
  test.each([
    // Lithium: round trip about 95 %, no charge below 0 degC (makers' tables); lead-acid 72 to 82 % (battery handbook, and
    // makers' sheets for sealed ones), half the capacity used (common practice).
    ["LiFePO4", 97, 98, 90, 0],
    ["AGM", 87, 94, 50, -20],
    ["gel", 86, 94, 50, -20],
    ["flooded", 80, 90, 50, -20],
  ])(
    "%s: efficiencies, depth and cold limit as its kind's sheets have them",
    (chemistry, charge, out, depth, cold) => {
      expect(planWith(chemistry).battery).toMatchObject({
        chargeEfficiencyPct: charge,
        dischargeEfficiencyPct: out,
        usablePct: depth,
        chargeAboveC: cold,
      });
    },
  );

  test("lithium in the cold: four fifths at -10 degC, nine tenths at 0 (common practice, no source)", () => {
    expect([-20, -10, 0, 20].map((airC) => capacityShare("LiFePO4", airC))).toEqual([0.65, 0.8, 0.9, 1]);
  });

  test("lead-acid in the cold: capacity over the multipliers 1.59, 1.40, 1.30, 1.19, 1.11, 1.04 at 20 to 70 degF (sizing worksheets)", () => {
    const celsius = [20, 30, 40, 50, 60, 70].map((f) => ((f - 32) * 5) / 9);
    const shares = celsius.map((airC) => 1 / capacityShare("flooded", airC));
    for (const [index, stated] of [1.59, 1.4, 1.3, 1.19, 1.11, 1.04].entries()) {
      expect(shares[index]).toBeCloseTo(stated, 2);
    }
  });

  test("nominal voltage: 12.8 V of four lithium cells of 3.2 V, 12 V of six lead ones of 2 V (definition)", () => {
    expect(Object.values(CHEMISTRY_TRAITS).map(({ nominalV }) => nominalV)).toEqual([12.8, 12, 12, 12]);
  });
});

describe("cable: what it may carry at 30 degC, A", () => {
  const metric = (areaMm2: number) => ({ series: "metric", areaMm2 }) as const;
  const awg = (gauge: number) => ({ series: "awg", gauge }) as const;
  // NEC table 310.16, copper at 60, 75 and 90 degC; and IEC 60364-5-52 table B.52.2 method B1, two loaded conductors, PVC
  // and XLPE (both from memory).
  test.each([
    [14, 15, 20, 25],
    [12, 20, 25, 30],
    [10, 30, 35, 40],
    [8, 40, 50, 55],
    [6, 55, 65, 75],
    [4, 70, 85, 95],
    [2, 95, 115, 130],
  ])("%i AWG copper", (gauge, at60, at75, at90) => {
    const amps = ([60, 75, 90] as const).map((c) => ampacityOf(awg(gauge), "copper", c, 30)?.ampsAt30C);
    expect(amps).toEqual([at60, at75, at90]);
  });
  test.each([
    [1.5, 17.5, 23],
    [2.5, 24, 31],
    [4, 32, 42],
    [6, 41, 54],
    [10, 57, 75],
    [16, 76, 100],
    [25, 101, 133],
  ])("%f mm2 copper", (areaMm2, at70, at90) => {
    const amps = ([70, 90] as const).map((c) => ampacityOf(metric(areaMm2), "copper", c, 30)?.ampsAt30C);
    expect(amps).toEqual([at70, at90]);
  });
});

describe("ground: reflectance", () => {
  // Oke 1987, table 1.1 (from memory): middle of each range; grass: what the measured upright planes bear out.
  test.each([
    ["grass", 0.2],
    ["dry sand", 0.4],
    ["forest", 0.14],
    ["water", 0.07],
    ["asphalt", 0.1],
    ["fresh snow", 0.85],
    ["old snow", 0.5],
  ] as const)("%s", (kind, stated) => {
    const { albedo, least, most } = reflectanceOf(kind);
    expect(albedo).toBe(stated);
    expect(albedo).toBeGreaterThanOrEqual(least);
    expect(albedo).toBeLessThanOrEqual(most);
  });
});

describe("the day's course of temperature", () => {
  test("warmest in mid-afternoon, about three hours after noon; coldest before sunrise (Erbs, Klein & Beckman 1983)", () => {
    // The first term alone turns at 1 + 24 x 3.805 / 2 pi = 15.53 h; the whole series, tried by the minute elsewhere, at
    // 15:09, and is coldest at 5:38.
    expect(WARMEST_HOUR).toBeCloseTo(15.15, 2);
    expect(COLDEST_HOUR).toBeCloseTo(5.633, 2);
    expect(warmthAt(5)).toBeLessThan(0.02);
    expect(MEAN_SHARE).toBeCloseTo(0.46, 1);
  });
  test("the printed series at noon, worked out term by term", () => {
    // t = 2 pi 11 / 24 = 2.8798: 0.4632 cos(-0.9252) + 0.0984 cos(5.3996) + 0.0168 cos(7.8174) + 0.0138 cos(8.0062).
    const noon = 0.4632 * 0.60171 + 0.0984 * 0.6345 + 0.0168 * 0.03658 + 0.0138 * -0.15155;
    // The series' own ends, -0.4545 and 0.5251, make 0 and 1.
    expect(warmthAt(12)).toBeCloseTo((noon + 0.4545) / (0.5251 + 0.4545), 3);
  });
});

describe("places: how much each kind of source is trusted", () => {
  const station = (
    id: string,
    longitudeDeg: number,
    source: "typical year" | "sunshine" | "measured year",
  ) => ({
    id,
    place: id,
    country: "X",
    latitudeDeg: 50,
    longitudeDeg,
    elevationM: 100,
    source,
    light: { kind: "radiation", globalKWhM2: new Array<number>(12).fill(3) },
    air: null,
    wind: null,
    dayMemory: null,
  });
  test("at the same distance a typical year counts twice a measured one or hours of sunshine (left-out stations, npm run validate:climate)", () => {
    const site = { latitudeDeg: 50, longitudeDeg: 0, elevationM: 100 };
    const stations = [
      station("a", 1, "typical year"),
      station("b", -1, "sunshine"),
      station("c", 1, "measured year"),
    ];
    const shares = nearestPlaces({ stations } as unknown as Parameters<typeof nearestPlaces>[0], site);
    const shareOf = (id: string) => shares.find((one) => one.station.id === id)?.weight;
    expect(shareOf("a")).toBeCloseTo(0.5, 9);
    expect(shareOf("b")).toBeCloseTo(0.25, 9);
    expect(shareOf("c")).toBeCloseTo(0.25, 9);
  });
});
