import { describe, expect, it } from "vitest";
import { standSchema } from "../../lib/plan/stand.ts";
import { readingOfTilt, tiltOfReading, tiltWords } from "../../lib/stand/reading.ts";
import { flatTiltDeg, namedLegs, standGeometry } from "../../lib/stand/settings.ts";
import { PlanError } from "../../lib/units/problem.ts";

describe("namedLegs", () => {
  it("takes a length, a tilt from the ground, and a tilt from a post", () => {
    const stand = standSchema.parse({
      pivotMm: 700,
      legs: [
        { name: "long", lengthMm: 700, owned: true },
        { name: "middle", tiltDeg: 30, readFrom: "ground" },
        { name: "short", tiltDeg: 75, readFrom: "post" },
      ],
    });
    const legs = namedLegs(stand);
    expect(legs.map(({ name, owned }) => [name, owned])).toEqual([
      ["long", true],
      ["middle", false],
      ["short", false],
    ]);
    expect(legs.map(({ tiltDeg }) => Math.round(tiltDeg * 1e6) / 1e6)).toEqual([45, 30, 15]);
    expect(legs[1]?.legMm).toBeCloseTo(404.145, 2);
    // 700 x tan 15 = 700 x 0.267949
    expect(legs[2]?.legMm).toBeCloseTo(187.564, 2);
  });

  it("names every leg that can't stand", () => {
    const stand = standSchema.parse({
      legStyle: "plumb",
      pivotMm: 600,
      pivotInsetMm: 20,
      legs: [
        { name: "too long", lengthMm: 900 },
        { name: "fine", lengthMm: 300 },
        { name: "too steep", tiltDeg: 0, readFrom: "post" },
        { name: "steeper", tiltDeg: 89.5, readFrom: "ground" },
      ],
    });
    try {
      namedLegs(stand);
      expect.unreachable("three legs can't stand");
    } catch (error) {
      if (!(error instanceof PlanError)) throw error;
      // Values as the plan states them, not as the stand reckons.
      expect(error.problems.map(({ path, value }) => [path, value])).toEqual([
        ["stand.legs[0].lengthMm", "900 mm"],
        ["stand.legs[2].tiltDeg", "0 degrees from a post"],
        ["stand.legs[3].tiltDeg", "89.5 degrees from the ground"],
      ]);
    }
  });

  it("a plan's stand becomes a geometry, and no leg means the lie of the ground", () => {
    const stand = standSchema.parse({ legStyle: "strap", strapMm: 500, groundSlopeDeg: -4 });
    expect(standGeometry(stand)).toEqual({
      hold: { kind: "strap", strapMm: 500 },
      pivotMm: 700,
      pivotInsetMm: 0,
      heelSpacerMm: 0,
      groundSlopeDeg: -4,
    });
    expect(standGeometry(standSchema.parse({ legStyle: "plumb" })).hold).toEqual({ kind: "plumb" });
    // A strap that was not stated is taken as long as the pivot distance (the plan's check asks for it first).
    expect(standGeometry(standSchema.parse({ legStyle: "strap", pivotMm: 640 })).hold).toEqual({
      kind: "strap",
      strapMm: 640,
    });
    expect(flatTiltDeg(stand)).toBe(0);
    expect(flatTiltDeg(standSchema.parse({ groundSlopeDeg: 6 }))).toBe(6);
  });
});

describe("readings", () => {
  it("from ground and from post sum to 90", () => {
    for (let tilt = 0; tilt <= 90; tilt += 0.5) {
      expect(readingOfTilt(tilt, "ground").deg + readingOfTilt(tilt, "post").deg).toBe(90);
      expect(readingOfTilt(tilt, "ground")).toEqual({ deg: tilt, from: "ground" });
      expect(readingOfTilt(tilt, "post").from).toBe("post");
      expect(tiltOfReading(readingOfTilt(tilt, "post"))).toBe(tilt);
    }
  });

  it("are always labelled, and the printed numbers sum to 90 too", () => {
    expect(tiltWords(35)).toBe("35° from the ground (55° from a post)");
    expect(tiltWords(44.5)).toBe("45° from the ground (45° from a post)");
    expect(tiltWords(30.25, 1)).toBe("30.3° from the ground (59.7° from a post)");
  });
});
