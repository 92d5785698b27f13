import { describe, expect, test } from "vitest";
import { readPlan } from "../../lib/plan/read-plan.ts";
import { skiesOfPlan } from "../../lib/season/skies-of-plan.ts";

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
