import { describe, expect, test } from "vitest";
import { climateByAnalogy } from "../../../lib/sky/climate/place/analogy.ts";
import { ANALOGY_PLACES } from "../../../lib/sky/climate/place/analogy-places.ts";
import { climateNear, nearestPlaces } from "../../../lib/sky/climate/place/choose-place.ts";
import {
  type ChosenClimate,
  placeLine,
  uncertaintyLine,
} from "../../../lib/sky/climate/place/chosen-climate.ts";
import { climateOfPlace, findPlaces } from "../../../lib/sky/climate/place/find-place.ts";
import { chosenClimate, climateNotes, isRough } from "../../../lib/sky/climate/place/plan-climate.ts";
import { distanceKm } from "../../../lib/sky/climate/spot.ts";
import type { ClimateStation } from "../../../lib/sky/climate/station.ts";
import type { ClimateTable } from "../../../lib/sky/climate/table/climate-table.ts";
import { complaintsOf, counted, station, twelve } from "./stations.ts";

const SITE = { latitudeDeg: 50, longitudeDeg: 8, elevationM: 100 };

/** Degrees of latitude that are so many kilometres on a sphere of 6371 km. */
const degrees = (km: number): number => (km / 6371) * (180 / Math.PI);

/** A place so many kilometres north of the site. */
const north = (km: number, over: Partial<ClimateStation> = {}): ClimateStation =>
  station({ latitudeDeg: 50 + degrees(km), id: `n${km}`, place: `North ${km}`, ...over });

const weightsOf = (
  stations: readonly ClimateStation[],
  howMany?: number,
): readonly (readonly [string, number])[] =>
  nearestPlaces({ stations }, SITE, howMany).map(({ station: { id }, weight }) => [id, weight]);

const expectWeights = (
  stations: readonly ClimateStation[],
  expected: readonly (readonly [string, number])[],
): void => {
  const found = weightsOf(stations);
  expect(found.map(([id]) => id)).toEqual(expected.map(([id]) => id));
  for (const [at, [, weight]] of expected.entries()) expect(found[at][1]).toBeCloseTo(weight, 9);
};

describe("distanceKm", () => {
  test("along a meridian, along a parallel and over the date line, on a sphere of 6371 km", () => {
    const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });
    expect(distanceKm(at(50, 8), at(51, 8))).toBeCloseTo(111.19, 2);
    // One degree at 60 N is half of one at the equator, and a hair less along the great circle.
    expect(distanceKm(at(60, 179.5), at(60, -179.5))).toBeCloseTo(55.6, 1);
    // Haversine between 40 N 10 E and 60 N 50 E: sin^2(10) + cos 40 cos 60 sin^2(20) = 0.074959; 2 asin of its root.
    expect(distanceKm(at(40, 10), at(60, 50))).toBeCloseTo(2 * 6371 * Math.asin(Math.sqrt(0.0749594)), 0);
  });
});

describe("nearestPlaces, by hand", () => {
  test("weights fall with the square of the distance, and within 50 km all is alike", () => {
    expectWeights(
      [north(120), north(60)],
      [
        ["n60", 0.8],
        ["n120", 0.2],
      ],
    );
    expectWeights(
      [north(50), north(10), north(100)],
      [
        ["n50", 4 / 9],
        ["n10", 4 / 9],
        ["n100", 1 / 9],
      ],
    );
  });

  test("a hundred metres of height count like ten kilometres, an unknown height like two hundred", () => {
    // 600 m higher and 80 km away: hypot(80, 60) = 100 km; the other 50 km: 4 to 1.
    expectWeights(
      [north(50), north(80, { elevationM: 700 })],
      [
        ["n50", 0.8],
        ["n80", 0.2],
      ],
    );
    // hypot(99, 20) = 101 km.
    expectWeights(
      [north(50), north(99, { elevationM: null })],
      [
        ["n50", 1 / (1 + 2500 / (99 ** 2 + 400))],
        ["n99", 2500 / (99 ** 2 + 400) / (1 + 2500 / (99 ** 2 + 400))],
      ],
    );
  });

  test("a height that was borrowed from a place does not make that place win", () => {
    // A coast without a stated height; the nearest place is a mountain's observatory, whose height was borrowed.
    const stations = [north(60, { elevationM: 2500 }), north(70, { elevationM: 5 })];
    const borrowed = nearestPlaces({ stations }, { ...SITE, elevationM: 2500, heightBorrowed: true });
    // An unknown height counts like 20 km: 60^2 + 20^2 to 70^2 + 20^2.
    expect(borrowed.map(({ weight }) => weight)[0]).toBeCloseTo(5300 / (4000 + 5300), 9);
  });

  test("measured years and sunshine pull half as much", () => {
    expectWeights(
      [
        north(20, { source: "sunshine" }),
        north(30, { source: "measured year" }),
        north(40, { source: "own table" }),
      ],
      [
        ["n40", 0.5],
        ["n20", 0.25],
        ["n30", 0.25],
      ],
    );
  });

  test("less than a tenth is left out, and more than four", () => {
    // 1 to 1/9 to 1/10.24: the last has 0.081 of the pull.
    expect(weightsOf([north(50), north(160), north(150)]).map(([id]) => id)).toEqual(["n50"]);
    expect(weightsOf([north(50), north(140)]).map(([id]) => id)).toEqual(["n50", "n140"]);
    expect(weightsOf([north(60), north(61), north(62), north(63), north(64)]).map(([id]) => id)).toEqual([
      "n60",
      "n61",
      "n62",
      "n63",
    ]);
    expect(weightsOf([north(60), north(61)], 1)).toEqual([["n60", 1]]);
  });

  test("each share says how far and how much higher", () => {
    const [{ distanceKm, heightDifferenceM }] = nearestPlaces(
      { stations: [north(70, { elevationM: 40 })] },
      SITE,
    );
    expect(distanceKm).toBeCloseTo(70, 6);
    expect(heightDifferenceM).toBe(60);
    expect(
      nearestPlaces({ stations: [north(70, { elevationM: null })] }, SITE)[0].heightDifferenceM,
    ).toBeNull();
  });
});

describe("climateNear", () => {
  const near = (stations: readonly ClimateStation[], site = SITE): ChosenClimate =>
    climateNear({ stations }, site);

  test("distance adds to the uncertainty: 1.5 % a month and 0.6 % a year for each 100 km beyond 50", () => {
    const { climate, kind } = near([north(250)]);
    expect(kind).toBe("nearest places");
    expect(climate.uncertainty.month[3]).toBeCloseTo(Math.hypot(0.08, 0.03), 9);
    expect(climate.uncertainty.year).toBeCloseTo(Math.hypot(0.035, 0.012), 9);
    expect(near([north(50)]).climate.uncertainty.year).toBeCloseTo(0.035, 12);
    // The height has its part in it: hypot(90, 120) = 150 km.
    expect(near([north(90, { elevationM: 1300 })]).climate.uncertainty.month[0]).toBeCloseTo(
      Math.hypot(0.08, 0.015),
      6,
    );
    // Of two places the weighted mean of their distances: 0.8 x 60 + 0.2 x 120 = 72.
    expect(near([north(60), north(120)]).climate.uncertainty.year).toBeCloseTo(
      Math.hypot(0.035, 0.006 * 0.22),
      9,
    );
  });

  test("says each place in a line, and warns of the far and the high", () => {
    const { says, warnings } = near([north(60), north(120)]);
    expect(says).toBe(
      "North 60 (60 km away, same height, typical year); North 120 (120 km away, same height, typical year)",
    );
    expect(warnings).toEqual([]);
    expect(near([north(151)]).warnings).toEqual([
      "The nearest place is 151 km away: too far to trust near mountains and coasts.",
    ]);
    expect(near([north(149)]).warnings).toEqual([]);
    // Of several the nearest counts.
    expect(near([north(149), north(180)]).warnings).toEqual([]);
    expect(near([north(60, { elevationM: 500 })]).warnings).toEqual([
      "The site is 400 m above or below the places: cloud may differ much.",
    ]);
    expect(near([north(60, { elevationM: 399 })]).warnings).toEqual([]);
    // 0.8 of a place at the site's height, 0.2 of one 1000 m below would be 200 m.
    expect(near([north(60, { elevationM: 600 }), north(60.5, { elevationM: null })]).warnings).toEqual([]);
  });

  test("warns of sunshine, all of the light or a part from a fifth on, and of the tropics", () => {
    const light = { kind: "sunshine" as const, hours: twelve(100) };
    const sunny = (km: number, over = {}) => north(km, { light, source: "sunshine", ...over });
    expect(near([sunny(60)]).warnings).toEqual(["The light is estimated from hours of sunshine."]);
    // Half as trusted at the same distance: a third of the weight.
    expect(near([sunny(60), north(60)]).warnings).toEqual([
      "Part of the light is estimated from hours of sunshine.",
    ]);
    // At 100 km half of 25/100: 1 to 0.125, a ninth.
    expect(near([sunny(100), north(50)]).warnings).toEqual([]);
    const tropical = near([sunny(60, { latitudeDeg: 10 })], { ...SITE, latitudeDeg: 10 });
    expect(tropical.warnings).toEqual([
      "The light is estimated from hours of sunshine.",
      "Such estimates are hardly tested in the tropics and the south.",
    ]);
  });

  test("beyond 700 km there is none, and the complaint says what to do", () => {
    const hint =
      "name a climate by analogy: cool wet coast, dry mountain, hot desert, humid subtropical, tropical wet and dry, continental, polar coast; or give twelve numbers of your own";
    const allowed = "must have a place with a climate within 700 km of the site";
    expect(complaintsOf(() => near([north(701)]))).toEqual([
      { path: "sky", value: "nearest place 701 km away", allowed, hint },
    ]);
    expect(complaintsOf(() => near([]))).toEqual([
      { path: "sky", value: "nearest place none", allowed, hint },
    ]);
    expect(complaintsOf(() => near([north(699)]))).toEqual([]);
  });
});

describe("findPlaces", () => {
  const table: ClimateTable = {
    stations: [
      ["a1", "Newport Beach", "Land"],
      ["a2", "Port", "Land"],
      ["a3", "Port Alma", "Land"],
      ["a4", "Portsea", "Land"],
      ["a5", "Old Port", "Land"],
      ["a6", "Airport", "Land"],
      ["a7", "São-Paulo", "Port"],
      ["X-9", "Elsewhere", "Land"],
    ].map(([id, place, country]) => station({ id, place, country })),
  };
  const names = (search: string, most?: number) => findPlaces(table, search, most).map(({ place }) => place);

  test("the whole name, its first word, its beginning, every word's beginning, a part", () => {
    expect(names("port")).toEqual([
      "Port",
      "Port Alma",
      "Portsea",
      "Old Port",
      "São-Paulo",
      "Airport",
      "Newport Beach",
    ]);
  });

  test("accents, case and punctuation do not count; the country may be part of it; an id finds its row", () => {
    expect(names("SAO paulo")).toEqual(["São-Paulo"]);
    expect(names("são, paulo")).toEqual(["São-Paulo"]);
    expect(names("port land")[0]).toBe("Port");
    expect(names("land newp")).toEqual(["Newport Beach"]);
    expect(names(" x-9 ")).toEqual(["Elsewhere"]);
    expect(names("...")).toEqual([]);
    expect(names("nowhere")).toEqual([]);
    expect(names("port", 2)).toEqual(["Port", "Port Alma"]);
  });

  test("at most ten unless more are asked for", () => {
    const many = {
      stations: Array.from({ length: 12 }, (_, i) => station({ id: `b${i}`, place: `Bay ${i}` })),
    };
    expect(findPlaces(many, "bay")).toHaveLength(10);
    expect(findPlaces(many, "bay", 12)).toHaveLength(12);
  });
});

describe("climateOfPlace", () => {
  const table: ClimateTable = {
    stations: [
      north(400, { id: "far", place: "Brook", country: "Farland", elevationM: null }),
      north(90, { id: "near", place: "Brook", country: "Nearland", elevationM: 340 }),
      north(10, { id: "other", place: "Brookfield" }),
    ],
  };

  test("of equally good matches takes the nearest, whatever lies nearer by another name", () => {
    const chosen = climateOfPlace(table, "brook", SITE);
    expect(chosen.kind).toBe("named place");
    expect(chosen.shares).toHaveLength(1);
    expect(chosen.says).toBe("Brook, Nearland (90 km away, 240 m higher, typical year)");
    expect(chosen.shares[0]).toMatchObject({ heightDifferenceM: -240, weight: 1 });
    expect(climateOfPlace(table, "brook farland", SITE).says).toBe(
      "Brook, Farland (400 km away, height not known, typical year)",
    );
  });

  test("no such name: the nearest one, or what to do", () => {
    expect(complaintsOf(() => climateOfPlace(table, "Brok", SITE))).toEqual([
      {
        path: "sky.from.name",
        value: "Brok",
        allowed: "must be a place of the climate tables",
        hint: 'did you mean "Brook"?',
      },
    ]);
    expect(complaintsOf(() => climateOfPlace(table, "Zzyzx", SITE))[0].hint).toBe(
      "try a larger town nearby, or leave it out to take the nearest places",
    );
  });
});

describe("climateByAnalogy, by hand", () => {
  const [first, second] = ANALOGY_PLACES["dry mountain"];
  const table: ClimateTable = {
    stations: [
      station({ id: first, place: "Heights", light: { kind: "clearness", index: twelve(0.5) } }),
      station({ id: "else", place: "Elsewhere", light: { kind: "clearness", index: twelve(0.1) } }),
      station({
        id: second,
        place: "Peaks",
        elevationM: null,
        light: { kind: "clearness", index: twelve(0.6) },
      }),
    ],
  };

  test("is the mean of the kind's places, and uncertain by their scatter", () => {
    const { climate, shares, says, warnings, kind } = climateByAnalogy(table, "dry mountain", SITE);
    expect(kind).toBe("analogy");
    expect(shares.map(({ weight }) => weight)).toEqual([0.5, 0.5]);
    expect(shares.map(({ heightDifferenceM }) => heightDifferenceM)).toEqual([0, null]);
    expect(says).toBe("a dry mountain, like Heights, Peaks");
    expect(warnings).toEqual([
      "Rough: the light of a dry mountain elsewhere, not of this place. Any table of the region is better.",
    ]);
    // Yearly clearness 0.5 and 0.6: a scatter of 0.05 about 0.55.
    expect(climate.uncertainty.month[0]).toBeCloseTo(Math.hypot(0.08, 0.05 / 0.55), 9);
    expect(climate.uncertainty.year).toBeCloseTo(Math.hypot(0.035, 0.05 / 0.55), 9);
  });

  test("needs the shipped tables", () => {
    expect(complaintsOf(() => climateByAnalogy({ stations: [station()] }, "hot desert", SITE))).toEqual([
      {
        path: "sky.from.like",
        value: "hot desert",
        allowed: "needs the shipped climate tables; none of its places is in the table given",
      },
    ]);
  });
});

describe("the words of a climate", () => {
  const line = (
    over: Partial<ClimateStation>,
    distanceKm: number,
    heightDifferenceM: number | null,
  ): string => placeLine({ station: station(over), distanceKm, heightDifferenceM, weight: 1 });

  test("a place: name, country, distance, height, source", () => {
    expect(line({ country: "Land" }, 12.4, 80.2)).toBe("Inn, Land (12 km away, 80 m lower, typical year)");
    expect(line({ source: "own table" }, 0, -80.6)).toBe("Inn (0 km away, 81 m higher, own table)");
    expect(line({ country: "Inn" }, 3, 0.9)).toBe("Inn (3 km away, same height, typical year)");
    expect(line({}, 3, 1)).toBe("Inn (3 km away, 1 m lower, typical year)");
    expect(line({}, 3, null)).toBe("Inn (3 km away, height not known, typical year)");
  });

  test("uncertainty: one figure where the months are alike, none where a table is taken at its word", () => {
    const climate = { globalKWhM2: twelve(3), air: null, wind: null, dayMemory: 0.29 };
    const lineOf = (month: readonly number[], year: number) =>
      uncertaintyLine({ ...climate, uncertainty: { month, year } });
    expect(lineOf(twelve(0.08), 0.035)).toBe(
      "a month's light may be off by 8 %, a year's by 4 % (one standard deviation)",
    );
    expect(lineOf([...twelve(0.08).slice(1), 0.15], 0.07)).toBe(
      "a month's light may be off by 8 % to 15 %, a year's by 7 % (one standard deviation)",
    );
    expect(lineOf([...twelve(0.081).slice(1), 0.084], 0.07)).toBe(
      "a month's light may be off by 8 %, a year's by 7 % (one standard deviation)",
    );
    expect(lineOf(twelve(0), 0)).toBeNull();
  });
});

describe("chosenClimate", () => {
  const table: ClimateTable = { stations: [north(60), north(120, { id: "b", place: "Brook" })] };
  const months = { kind: "months", windHeightM: 10 } as const;

  test("goes where the plan says: near, named, by analogy, or its own months", () => {
    expect(chosenClimate({ kind: "nearest" }, table, SITE)).toEqual(climateNear(table, SITE));
    expect(chosenClimate({ kind: "table", file: "my.csv" }, table, SITE)).toEqual(climateNear(table, SITE));
    expect(chosenClimate({ kind: "place", name: "brook" }, table, SITE).says).toContain("Brook");
    expect(
      complaintsOf(() => chosenClimate({ kind: "analogy", like: "hot desert" }, table, SITE))[0].path,
    ).toBe("sky.from.like");
  });

  test("stated months in any form, with air, wind and memory where they are stated", () => {
    const kWh = [0.6, 1.2, 2.5, 3.9, 4.9, 5.3, 5.0, 4.3, 3.0, 1.7, 0.8, 0.5];
    const own = chosenClimate({ ...months, globalKWhM2: kWh }, table, SITE);
    expect(own).toMatchObject({
      kind: "own table",
      shares: [],
      says: "twelve months as stated in the plan",
      warnings: [],
    });
    expect(own.climate).toMatchObject({ air: null, wind: null, uncertainty: { month: twelve(0), year: 0 } });
    const mega = chosenClimate({ ...months, globalMJM2: kWh.map((value) => 3.6 * value) }, table, SITE);
    mega.climate.globalKWhM2.forEach((value, month) => {
      expect(value).toBeCloseTo(kWh[month], 9);
    });
    const clear = chosenClimate({ ...months, clearness: twelve(0.4) }, table, SITE).climate.globalKWhM2;
    const clearer = chosenClimate({ ...months, clearness: twelve(0.5) }, table, SITE).climate.globalKWhM2;
    clear.forEach((value, month) => {
      expect(clearer[month] / value).toBeCloseTo(1.25, 9);
    });
    const sunny = chosenClimate(
      { ...months, sunshineHours: [40, 70, 120, 180, 230, 220, 220, 200, 150, 100, 50, 30] },
      table,
      SITE,
    );
    expect(sunny.warnings).toEqual(["The light is estimated from hours of sunshine."]);
    const full = chosenClimate(
      {
        ...months,
        clearness: twelve(0.5),
        airLowC: counted(0),
        airHighC: counted(8),
        windMs: counted(2),
        windHeightM: 10,
      },
      table,
      SITE,
    ).climate;
    expect(full.air?.highC[3]).toBeCloseTo(11, 9);
    expect(full.wind?.ms[3]).toBeCloseTo(5, 9);
    expect(
      chosenClimate({ ...months, clearness: twelve(0.5), airLowC: counted(0) }, table, SITE).climate.air,
    ).toBeNull();
  });

  test("complaints name the field and the month of the plan", () => {
    const pathsOf = (stated: object) =>
      complaintsOf(() => chosenClimate({ ...months, ...stated }, table, SITE)).map(({ path }) => path);
    expect(pathsOf({ clearness: twelve(0.5).with(4, 1.2) })).toEqual(["sky.from.clearness[4]"]);
    const mega = [2, 4, 9, 14, 18, 19, 18, 15, 11, 6, 3, 2];
    expect(pathsOf({ globalMJM2: mega })).toEqual([]);
    expect(pathsOf({ globalMJM2: mega.with(0, -1) })).toEqual(["sky.from.globalMJM2[0]"]);
    expect(pathsOf({ sunshineHours: twelve(100).with(5, 600) })).toEqual(["sky.from.sunshineHours[5]"]);
    expect(pathsOf({})).toHaveLength(12);
    expect(pathsOf({})[0]).toBe("sky.from.globalKWhM2[0]");
  });

  test("notes: where from, how sure, what to beware of; rough by analogy or beyond 9 % a year", () => {
    const near = climateNear(table, SITE);
    expect(isRough(near)).toBe(false);
    expect(climateNotes(near)[0]).toBe(`Cloud from the climate of ${near.says}.`);
    expect(climateNotes(near)[1]).toMatch(
      /^Expected figures: a month's light may be off by 8 %, .*; the bands hold it\.$/,
    );
    const withUncertainty = (year: number): ChosenClimate => ({
      ...near,
      climate: { ...near.climate, uncertainty: { ...near.climate.uncertainty, year } },
      warnings: ["Beware."],
    });
    expect(isRough(withUncertainty(0.09))).toBe(false);
    expect(isRough(withUncertainty(0.091))).toBe(true);
    expect(climateNotes(withUncertainty(0.2))[1]).toMatch(
      /^Every expected figure here is rough: a month's light/,
    );
    expect(climateNotes(withUncertainty(0.2)).at(-1)).toBe("Beware.");
    expect(isRough({ ...near, kind: "analogy" })).toBe(true);
  });
});
