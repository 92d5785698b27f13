import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ANALOGY_KINDS } from "../../../lib/plan/climate.ts";
import { dayMemory, PUBLISHED_DAY_MEMORY } from "../../../lib/sky/climate/day-memory.ts";
import { monthSuns } from "../../../lib/sky/climate/month-sun.ts";
import { climateByAnalogy } from "../../../lib/sky/climate/place/analogy.ts";
import { ANALOGY_PLACES } from "../../../lib/sky/climate/place/analogy-places.ts";
import { climateNear, nearestPlaces } from "../../../lib/sky/climate/place/choose-place.ts";
import { placeLine, uncertaintyLine } from "../../../lib/sky/climate/place/chosen-climate.ts";
import { climateOfPlace, findPlaces } from "../../../lib/sky/climate/place/find-place.ts";
import { chosenClimate, climateNotes } from "../../../lib/sky/climate/place/plan-climate.ts";
import { distanceKm } from "../../../lib/sky/climate/spot.ts";
import { monthlyGlobal } from "../../../lib/sky/climate/station.ts";
import { PlanError } from "../../../lib/units/problem.ts";
import { placesAlone, shipped } from "./shipped.ts";

const bremerhaven = { latitudeDeg: 53.55, longitudeDeg: 8.58, elevationM: 3 };

describe("distanceKm", () => {
  test("is 111.2 km for a degree of latitude, and half the Earth's girth to the other side", () => {
    const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });
    expect(distanceKm(at(50, 10), at(51, 10))).toBeCloseTo(111.19, 2);
    expect(distanceKm(at(0, 0), at(0, 180))).toBeCloseTo(20015.1, 1);
    expect(distanceKm(at(60, 179.5), at(60, -179.5))).toBeCloseTo(55.6, 1);
  });
});

describe("climateNear", () => {
  test("a newcomer anywhere on land gets twelve months below the light above the air, or is told why not", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: 0, max: 4000, noNaN: true }),
        (latitudeDeg, longitudeDeg, elevationM) => {
          const site = { latitudeDeg, longitudeDeg, elevationM };
          try {
            const { climate, shares, says } = climateNear(shipped, site);
            expect(shares.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(
              shares.length > 0 ? 1 : 0,
              12,
            );
            expect(shares.length).toBeLessThanOrEqual(4);
            expect(says).toContain(shares.length > 0 ? "km away" : "a world grid");
            for (const [month, global] of climate.globalKWhM2.entries()) {
              expect(global).toBeGreaterThanOrEqual(0);
              expect(global).toBeLessThanOrEqual(
                0.9 * monthSuns(latitudeDeg)[month].extraterrestrialKWhM2 + 1e-9,
              );
            }
            if (climate.air !== null) {
              for (const [month, low] of climate.air.lowC.entries()) {
                expect(low).toBeLessThanOrEqual(climate.air.highC[month]);
              }
            }
          } catch (error) {
            expect(error).toBeInstanceOf(PlanError);
            expect(String(error)).toContain("cool wet coast, dry mountain");
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test("the nearest places come first, with distance, height and kind on the answer", () => {
    const { shares, says, warnings, climate } = climateNear(shipped, bremerhaven);
    expect(shares[0].station.place).toBe("Bremerhaven");
    expect(says).toMatch(
      /^Bremerhaven, Germany \(\d+ km away, (?:same height|\d+ m (?:lower|higher)), typical year\)/,
    );
    expect(warnings).toContain("Part of the light is estimated from hours of sunshine.");
    expect(warnings.some((line) => line.includes("too far"))).toBe(false);
    // The typical year says 1016 kWh/m2; its neighbours may move it a little.
    const year = climate.globalKWhM2.reduce((sum, value, month) => sum + value * monthSuns(0)[month].days, 0);
    expect(year).toBeGreaterThan(980);
    expect(year).toBeLessThan(1060);
  });

  test("warns when far, and when high above the places", () => {
    const sahara = climateNear(shipped, { latitudeDeg: 22, longitudeDeg: 14, elevationM: 600 });
    expect(sahara.warnings[0]).toMatch(/^The nearest place is \d+ km away: too far to trust/);
    const peak = climateNear(shipped, { latitudeDeg: 46.5, longitudeDeg: 8.0, elevationM: 4100 });
    expect(peak.warnings.join(" ")).toMatch(/The site is \d+ m above or below the places/);
  });

  test("distance adds to the uncertainty", () => {
    const near = climateNear(shipped, bremerhaven).climate.uncertainty;
    const far = climateNear(shipped, { latitudeDeg: 22, longitudeDeg: 14, elevationM: 600 }).climate
      .uncertainty;
    expect(Math.min(...far.month)).toBeGreaterThan(Math.min(...near.month));
    expect(far.year).toBeGreaterThan(near.year);
  });

  test("in mid-ocean no place speaks, and the message names the analogies; the world grid does", () => {
    const ocean = { latitudeDeg: -50, longitudeDeg: -130, elevationM: 0 };
    expect(() => climateNear(placesAlone, ocean)).toThrow(
      /within 700 km of the site; name a climate by analogy: cool wet/,
    );
    for (const { weight } of nearestPlaces(shipped, ocean)) expect(weight).toBeGreaterThan(0);
    // What is known of the world speaks there too, and says what it is.
    const { says, warnings, climate } = climateNear(shipped, ocean);
    expect(says).toBe("a world grid, some 300 km fine");
    expect(warnings).toHaveLength(1);
    // The southern summer is the bright half; the roaring forties and fifties are cloudy.
    expect(climate.globalKWhM2[0]).toBeGreaterThan(4);
    expect(climate.globalKWhM2[0]).toBeLessThan(6);
    expect(climate.uncertainty.year).toBeGreaterThan(0.07);
  });

  test("air gets cooler with height by the standard atmosphere", () => {
    const low = climateNear(shipped, bremerhaven).climate.air;
    const high = climateNear(shipped, { ...bremerhaven, elevationM: 1003 }).climate.air;
    // The higher site weighs its neighbours a little differently; 6.5 K a kilometre is the rule.
    expect((low?.lowC[6] ?? 0) - (high?.lowC[6] ?? 0)).toBeCloseTo(6.5, 0);
  });
});

describe("findPlaces", () => {
  test("by name, whatever the case and accents, whole names first", () => {
    expect(findPlaces(shipped, "punta arenas")[0]).toMatchObject({ country: "Chile" });
    expect(findPlaces(shipped, "stotten")[0]?.place).toBe("Stötten");
    expect(findPlaces(shipped, "denver").map(({ place }) => place)).toContain("Denver, CO");
    expect(findPlaces(shipped, "wmo-55591")[0]?.place).toBe("Lhasa");
    expect(findPlaces(shipped, "reykjavik iceland")[0]?.country).toBe("Iceland");
    expect(findPlaces(shipped, "  ")).toEqual([]);
    expect(findPlaces(shipped, "airport", 3)).toHaveLength(3);
  });
});

describe("climateOfPlace", () => {
  test("of namesakes takes the one nearest to the site", () => {
    const atSite = climateOfPlace(shipped, "Brest", { latitudeDeg: 52, longitudeDeg: 24, elevationM: 140 });
    expect(atSite.shares[0].station.country).toBe("Belarus");
    expect(atSite.shares).toHaveLength(1);
  });

  test("does not know every place, and offers the nearest name", () => {
    expect(() => climateOfPlace(shipped, "Lhassa", bremerhaven)).toThrow('did you mean "Lhasa"?');
    expect(() => climateOfPlace(shipped, "cool wet cost", bremerhaven)).toThrow(
      'did you mean "cool wet coast"?',
    );
  });
});

describe("climateByAnalogy", () => {
  test.each(ANALOGY_KINDS)(
    "%s has all its places in the shipped tables, and says that it is rough",
    (kind) => {
      const ids: readonly string[] = ANALOGY_PLACES[kind];
      expect(shipped.stations.filter(({ id }) => ids.includes(id))).toHaveLength(ids.length);
      const latitudeDeg = kind === "polar coast" ? 70 : kind === "tropical wet and dry" ? 12 : 40;
      const chosen = climateByAnalogy(shipped, kind, { latitudeDeg, longitudeDeg: 0, elevationM: 100 });
      expect(chosen.warnings[0]).toMatch(/^Rough:/);
      expect(Math.min(...chosen.climate.uncertainty.month)).toBeGreaterThan(0.08);
      // The same kind in the other half of the Earth has the same year, six months on.
      const south = climateByAnalogy(shipped, kind, {
        latitudeDeg: -latitudeDeg,
        longitudeDeg: 0,
        elevationM: 100,
      });
      const clearness = (climate: typeof chosen.climate, latitude: number): readonly number[] =>
        climate.globalKWhM2.map((global, month) => global / monthSuns(latitude)[month].extraterrestrialKWhM2);
      const [here, there] = [clearness(chosen.climate, latitudeDeg), clearness(south.climate, -latitudeDeg)];
      for (let month = 0; month < 12; month++) {
        if (Number.isFinite(here[month])) expect(there[(month + 6) % 12]).toBeCloseTo(here[month], 6);
      }
    },
  );

  test("deserts are brighter than wet coasts", () => {
    const site = { latitudeDeg: 45, longitudeDeg: 0, elevationM: 0 };
    const [desert, coast] = (["hot desert", "cool wet coast"] as const).map(
      (kind) => climateByAnalogy(shipped, kind, site).climate.globalKWhM2,
    );
    for (const [month, light] of desert.entries()) expect(light).toBeGreaterThan(coast[month]);
  });
});

describe("chosenClimate", () => {
  const months = { kind: "months", windHeightM: 10 } as const;
  const globalKWhM2 = [0.6, 1.2, 2.5, 3.9, 4.9, 5.3, 5.0, 4.3, 3.0, 1.7, 0.8, 0.5];

  test("takes twelve typed numbers at their word", () => {
    const chosen = chosenClimate({ ...months, globalKWhM2 }, { stations: [] }, bremerhaven);
    for (const [month, value] of chosen.climate.globalKWhM2.entries())
      expect(value).toBeCloseTo(globalKWhM2[month], 10);
    expect(uncertaintyLine(chosen.climate)).toBeNull();
    expect(climateNotes(chosen)).toEqual(["Cloud from the climate of twelve months as stated in the plan."]);
  });

  test("typed sunshine carries its uncertainty", () => {
    const sunshineHours = [40, 70, 120, 180, 230, 220, 220, 200, 150, 100, 50, 30];
    const chosen = chosenClimate({ ...months, sunshineHours }, { stations: [] }, bremerhaven);
    expect(uncertaintyLine(chosen.climate)).toBe(
      "a month's light may be off by 11 % to 15 %, a year's by 7 % (one standard deviation)",
    );
  });

  test("names the field of what cannot be", () => {
    const mj = globalKWhM2.map((value) => value * 3.6);
    expect(() => chosenClimate({ ...months, globalKWhM2: mj }, { stations: [] }, bremerhaven)).toThrow(
      /sky\.from\.globalKWhM2\[\d+\] .*these look like MJ/,
    );
    const atSouth = { ...bremerhaven, latitudeDeg: -34 };
    const dim = globalKWhM2.map((value) => 0.4 * value + 1.5);
    expect(() => chosenClimate({ ...months, globalKWhM2: dim }, { stations: [] }, atSouth)).toThrow(
      "the northern half of the Earth",
    );
  });

  test("FAO-56's constants can be asked for", () => {
    const winterSunshine = shipped.stations.find(({ id }) => id === "wmo-03026");
    const [fao, fitted] = (["fao56", "fitted"] as const).map((relation) =>
      monthlyGlobal(winterSunshine!.light, winterSunshine!.latitudeDeg, relation),
    );
    // The published constants read more light into dark winters.
    expect(fao[11]).toBeGreaterThan(fitted[11] * 1.15);
  });
});

describe("placeLine", () => {
  test("says how far, how high and what kind", () => {
    const [share] = nearestPlaces(shipped, { latitudeDeg: 39.8, longitudeDeg: -104.7, elevationM: 1600 });
    expect(placeLine(share)).toBe("Denver, CO, United States (5 km away, 50 m higher, typical year)");
  });
});

describe("a shipped place's day-to-day memory", () => {
  const site = { latitudeDeg: 50.8, longitudeDeg: 6.02, elevationM: 231 };

  test("is that of its own days, leaning halfway to the published one for a single year", () => {
    const { climate } = climateOfPlace(shipped, "aachen-2021", site);
    expect(climate.dayMemory).toBeCloseTo((0.29 + 0.04 + 1.09 * 0.41) / 2, 6);
  });

  test("is the published one where only months are known", () => {
    expect(climateOfPlace(shipped, "Punta Arenas", site).climate.dayMemory).toBe(PUBLISHED_DAY_MEMORY);
  });

  test("is blended by weight", () => {
    const { climate, shares } = climateNear(shipped, {
      latitudeDeg: 51.5,
      longitudeDeg: 9.5,
      elevationM: 300,
    });
    const mean = shares.reduce((sum, { station, weight }) => sum + weight * dayMemory(station.dayMemory), 0);
    expect(shares.length).toBeGreaterThan(1);
    expect(climate.dayMemory).toBeCloseTo(mean, 12);
  });
});
