import { describe, expect, test } from "vitest";
import { dailyRangeK, MEAN_SHARE } from "../../../lib/sky/climate/day-temperature.ts";
import { monthSuns } from "../../../lib/sky/climate/month-sun.ts";
import { blendClimate, type PlaceShare } from "../../../lib/sky/climate/place/blend.ts";
import type { ClimateStation } from "../../../lib/sky/climate/station.ts";
import { counted, station, twelve } from "./stations.ts";

const SITE = { latitudeDeg: 50, longitudeDeg: 8, elevationM: 100 };

const share = (
  over: Partial<ClimateStation>,
  weight = 1,
  heightDifferenceM: number | null = 0,
): PlaceShare => ({
  station: station(over),
  distanceKm: 0,
  heightDifferenceM,
  weight,
});

/** The clearness that a blend comes to at the site. */
const clearnessOf = (shares: readonly PlaceShare[], site = SITE): readonly number[] => {
  const suns = monthSuns(site.latitudeDeg);
  return blendClimate(shares, site).globalKWhM2.map(
    (light, month) => light / suns[month].extraterrestrialKWhM2,
  );
};

describe("blendClimate: light", () => {
  test("is the weighed clearness, turned into light at the site's own latitude", () => {
    const shares = [
      share({ light: { kind: "clearness", index: counted(0.3, 0.02) } }, 0.75),
      share({ latitudeDeg: 40, light: { kind: "clearness", index: twelve(0.6) } }, 0.25),
    ];
    clearnessOf(shares).forEach((clearness, month) => {
      expect(clearness).toBeCloseTo(0.75 * (0.3 + 0.02 * month) + 0.15, 12);
    });
  });

  test("of a place in the other half of the Earth counts with the same season", () => {
    const south = share({ latitudeDeg: -50, light: { kind: "clearness", index: counted(0.3, 0.02) } });
    clearnessOf([south]).forEach((clearness, month) => {
      expect(clearness).toBeCloseTo(0.3 + 0.02 * ((month + 6) % 12), 12);
    });
    // On the equator itself nothing is turned round.
    const equator = share({ latitudeDeg: 0, light: { kind: "clearness", index: counted(0.3, 0.02) } });
    expect(clearnessOf([equator])[2]).toBeCloseTo(0.34, 12);
  });

  test("a place in polar night leaves its month to the others; dark everywhere, the mean of the other months stands in", () => {
    const north = { latitudeDeg: 80, light: { kind: "clearness" as const, index: twelve(0.7) } };
    const shares = [share(north, 0.5), share({ light: { kind: "clearness", index: twelve(0.3) } }, 0.5)];
    const mixed = clearnessOf(shares);
    expect(mixed[5]).toBeCloseTo(0.5, 12);
    expect(mixed[11]).toBeCloseTo(0.3, 12);
    const alone = clearnessOf([share({ ...north, light: { kind: "clearness", index: counted(0.3, 0.02) } })]);
    // At 80 N the sun is up from late February to late October: months 1 to 9 (January is 0) know their clearness.
    const lit = [1, 2, 3, 4, 5, 6, 7, 8, 9].map((month) => 0.3 + 0.02 * month);
    expect(alone[0]).toBeCloseTo(lit.reduce((sum, value) => sum + value, 0) / lit.length, 9);
  });

  test("a site in polar night has no light in it", () => {
    const { globalKWhM2 } = blendClimate([share({})], { ...SITE, latitudeDeg: 80 });
    expect([globalKWhM2[0], globalKWhM2[10], globalKWhM2[11]]).toEqual([0, 0, 0]);
    expect(globalKWhM2[5]).toBeGreaterThan(5);
  });
});

describe("blendClimate: air and wind", () => {
  const range = { kind: "range" as const, lowC: counted(0), highC: counted(10) };

  test("air of a place whose height is not known counts only where there is no other", () => {
    const warm = { kind: "range" as const, lowC: twelve(25), highC: twelve(35) };
    const unknown = share({ air: warm, elevationM: null }, 0.5, null);
    const highland = blendClimate([unknown, share({ air: range }, 0.5, 1000)], SITE);
    expect(highland.air?.lowC[0]).toBeCloseTo(-6.5, 9);
    expect(blendClimate([{ ...unknown, weight: 1 }], SITE).air?.lowC[0]).toBe(25);
  });

  test("air cools by 6.5 K for each kilometre up (ISO 2533), and is weighed", () => {
    const { air } = blendClimate(
      [
        share({ air: range }, 0.75, 1000),
        share({ air: { kind: "range", lowC: twelve(20), highC: twelve(30) } }, 0.25, null),
      ],
      SITE,
    );
    air?.lowC.forEach((low, month) => {
      expect(low).toBeCloseTo(0.75 * (month - 6.5) + 5, 9);
      expect(air.highC[month]).toBeCloseTo(0.75 * (10 + month - 6.5) + 7.5, 9);
    });
    expect(air?.lowC).toHaveLength(12);
  });

  test("a mean alone gets its usual range from how clear the month is (Erbs, Klein & Beckman 1983)", () => {
    const { air } = blendClimate([share({ air: { kind: "mean", meanC: counted(5) } })], SITE);
    const span = dailyRangeK(0.5);
    expect(span).toBeCloseTo(25.8 * 0.5 - 5.21, 9);
    air?.lowC.forEach((low, month) => {
      expect(low).toBeCloseTo(5 + month - MEAN_SHARE * span, 9);
      expect(air.highC[month] - low).toBeCloseTo(span, 9);
    });
    // In polar night there is no clearness: the least range.
    const polar = blendClimate([share({ latitudeDeg: 80, air: { kind: "mean", meanC: twelve(-20) } })], {
      ...SITE,
      latitudeDeg: 80,
    }).air;
    expect((polar?.highC[0] ?? 0) - (polar?.lowC[0] ?? 0)).toBeCloseTo(2, 9);
  });

  test("warmth and wind of the other half of the Earth come half a year later", () => {
    const { air, wind } = blendClimate(
      [share({ latitudeDeg: -50, air: range, wind: { ms: counted(1), heightM: 10 } })],
      SITE,
    );
    expect(air?.lowC[0]).toBeCloseTo(6, 9);
    expect(air?.highC[8]).toBeCloseTo(12, 9);
    expect(wind?.ms[0]).toBeCloseTo(7, 9);
  });

  test("wind is brought to ten metres first, and weighed among those that know it", () => {
    const { wind } = blendClimate(
      [
        share({ wind: { ms: twelve(3), heightM: 2 } }, 0.25),
        share({ wind: { ms: twelve(6), heightM: 10 } }, 0.25),
        share({}, 0.5),
      ],
      SITE,
    );
    // FAO-56 eq. 47: the wind at 2 m is 4.87 / ln(67.8 x 10 - 5.42) = 0.748 of that at 10 m.
    expect(wind?.heightM).toBe(10);
    expect(wind?.ms[3]).toBeCloseTo((3 / 0.748 + 6) / 2, 2);
    expect(wind?.ms).toHaveLength(12);
  });

  test("what no place knows is not known", () => {
    expect(blendClimate([share({})], SITE)).toMatchObject({ air: null, wind: null });
    const { air } = blendClimate([share({}, 0.5), share({ air: range }, 0.5)], SITE);
    expect(air?.lowC[4]).toBeCloseTo(4, 9);
  });
});

describe("blendClimate: uncertainty and memory", () => {
  test("uncertainty goes with the kind of source, weighed: errors of recorders do not cancel", () => {
    const uncertaintyOf = (shares: readonly PlaceShare[]) => blendClimate(shares, SITE).uncertainty;
    expect(uncertaintyOf([share({})])).toEqual({ month: twelve(0.08), year: 0.035 });
    expect(uncertaintyOf([share({ source: "measured year" })])).toEqual({ month: twelve(0.1), year: 0.05 });
    expect(uncertaintyOf([share({ source: "own table" })])).toEqual({ month: twelve(0), year: 0 });
    const mixed = uncertaintyOf([share({}, 0.6), share({ source: "measured year" }, 0.4)]);
    expect(mixed.month[7]).toBeCloseTo(0.6 * 0.08 + 0.4 * 0.1, 12);
    expect(mixed.year).toBeCloseTo(0.6 * 0.035 + 0.4 * 0.05, 12);
  });

  test("sunshine is surer in summer than in a high winter, whatever table it stands in", () => {
    const hours = [40, 70, 120, 180, 230, 220, 220, 200, 150, 100, 50, 30];
    const light = { kind: "sunshine" as const, hours };
    const { month, year } = blendClimate([share({ light, source: "own table" })], SITE).uncertainty;
    const winter = [0.15, 0.15, 0.11, 0.11, 0.11, 0.11, 0.11, 0.11, 0.11, 0.11, 0.15, 0.15];
    expect(month).toEqual(winter);
    expect(year).toBe(0.07);
    const south = blendClimate([share({ latitudeDeg: -50, light, source: "sunshine" })], SITE).uncertainty;
    expect(south.month).toEqual(winter);
  });

  test("day-to-day memory is weighed too, with the published one for places that have none", () => {
    const { dayMemory } = blendClimate(
      [share({ dayMemory: { correlation: 0.4, years: 1 } }, 0.5), share({}, 0.5)],
      SITE,
    );
    // One year leans half-way to the published 0.29: (0.29 + 0.04 + 1.09 x 0.4) / 2 = 0.383.
    expect(dayMemory).toBeCloseTo((0.383 + 0.29) / 2, 9);
  });

  test("reads sunshine by the relation it is told", () => {
    const light = { kind: "sunshine" as const, hours: counted(40, 12) };
    const [fitted, fao] = (["fitted", "fao56"] as const).map(
      (relation) => blendClimate([share({ light })], SITE, relation).globalKWhM2[0],
    );
    expect(fao).toBeGreaterThan(fitted * 1.1);
    expect(blendClimate([share({ light })], SITE).globalKWhM2[0]).toBe(fitted);
  });
});
