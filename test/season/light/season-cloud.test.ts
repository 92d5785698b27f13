import { describe, expect, test } from "vitest";
import { readPlan } from "../../../lib/plan/read-plan.ts";
import { skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { shipped } from "../../sky/climate/shipped.ts";

const clearness = Array<number>(12).fill(0.4);

const notesAt = (latitudeDeg: number, from: string, to: string): string => {
  const plan = readPlan({
    site: { latitudeDeg, longitudeDeg: 15 },
    season: { from, to, stepMinutes: 30 },
    sky: { source: "climate", from: { kind: "months", clearness } },
    panels: [{ name: "panel", module: { powerW: 100 } }],
  });
  return skiesOfPlan(plan, null).notes.join("\n");
};

describe("months of a low sun", () => {
  // Noon stands at 90 - latitude + declination: at 69.6 N on 15 October about 12 degrees, in September 17 to 29.
  test("are named in the answer, and only those of the season", () => {
    expect(notesAt(69.6, "2027-09-01", "2027-11-30")).toContain(
      "In October and November the noon sun stays under 12",
    );
    expect(notesAt(69.6, "2027-09-01", "2027-09-30")).not.toContain("noon sun");
    expect(notesAt(-69.6, "2027-05-01", "2027-05-31")).toContain("In May the noon sun");
    expect(notesAt(47, "2027-12-01", "2027-12-31")).not.toContain("noon sun");
  });

  test("months of polar night have no sun to be warned of", () => {
    expect(notesAt(78, "2027-12-01", "2027-12-31")).not.toContain("noon sun");
  });
});

describe("a site's height", () => {
  const answer = (site: object, from: object) => {
    const plan = readPlan({
      site: { latitudeDeg: 39.8, longitudeDeg: -104.7, ...site },
      season: { from: "2027-06-01", to: "2027-06-03", stepMinutes: 30 },
      sky: { source: "climate", from },
      panels: [{ name: "panel", module: { powerW: 100 } }],
    });
    const { skies, notes } = skiesOfPlan(plan, null, shipped);
    return { clear: Math.max(...skies.clear.sky.beamNormal), notes: notes.join("\n") };
  };

  test("not stated, is that of the place, for the air as for the climate, and the answer says so", () => {
    const silent = answer({}, { kind: "place", name: "tmy3-725650" });
    const stated = answer({ elevationM: 1650 }, { kind: "place", name: "tmy3-725650" });
    expect(silent.clear).toBe(stated.clear);
    expect(silent.notes).toContain("Height above the sea: not stated; that of Denver, CO was taken, 1650 m");
    expect(stated.notes).not.toContain("Height above");
    expect(silent.notes).toContain("same height, typical year");
  });

  test("stated as 0, is 0: thicker air, and the places lie higher", () => {
    const low = answer({ elevationM: 0 }, { kind: "nearest" });
    expect(low.clear).toBeLessThan(answer({}, { kind: "nearest" }).clear - 10);
    expect(low.notes).toContain("1650 m higher, typical year");
  });

  test("is sea level where no place speaks for the site, and says so", () => {
    const clearness = Array<number>(12).fill(0.5);
    const typed = answer({}, { kind: "months", clearness });
    expect(typed.clear).toBe(answer({ elevationM: 0 }, { kind: "months", clearness }).clear);
    expect(typed.notes).toContain(
      "Height above the sea: not stated, and no place near tells one; sea level was taken.",
    );
  });
});
