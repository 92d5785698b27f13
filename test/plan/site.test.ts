import { expect, test } from "vitest";
import { sunZone } from "../../lib/plan/site.ts";
import { linesOf, planWith } from "./plan-with.ts";

// Names of the IANA database: Etc/GMT-1 is one hour ahead of UTC.
test.each([
  [0, "Etc/UTC"],
  [7.4, "Etc/UTC"],
  [-7.4, "Etc/UTC"],
  [7.6, "Etc/GMT-1"],
  [-7.6, "Etc/GMT+1"],
  [180, "Etc/GMT-12"],
  [-180, "Etc/GMT+12"],
])("the sun's own zone at %d degrees is %s", (longitudeDeg, zone) => {
  expect(sunZone(longitudeDeg)).toBe(zone);
});

test("a site's zone is kept when it is one, and refused when it is none", () => {
  const site = { latitudeDeg: 57, longitudeDeg: -5 };
  expect(planWith({ site: { ...site, timeZone: "Europe/London" } }).site.timeZone).toBe("Europe/London");
  expect(planWith({ site }).site.timeZone).toBe("Etc/UTC");
  expect(linesOf({ site: { ...site, timeZone: "Europe/Nowhere" } })).toEqual([
    'site.timeZone "Europe/Nowhere": must be an IANA time zone; such as "Europe/Berlin"; left out, whole hours from the longitude',
  ]);
});

test("a site's ground may be a kind, a number or twelve, and a complaint names them all", () => {
  const site = { latitudeDeg: 57, longitudeDeg: -5 };
  expect(planWith({ site: { ...site, ground: 0.3 } }).site.ground).toBe(0.3);
  expect(planWith({ site: { ...site, ground: Array(12).fill(0.2) } }).site.ground).toHaveLength(12);
  const hint =
    "a reflectance 0 to 1, twelve of them, or one of: grass, bare soil, dry sand, gravel, forest, water, asphalt, fresh snow, old snow, sea ice";
  expect(linesOf({ site: { ...site, ground: "lawn" } })).toEqual([
    `site.ground "lawn": is none of the forms it may take; ${hint}`,
  ]);
  expect(linesOf({ site: { ...site, ground: 2 } })).toEqual([
    `site.ground 2: must be 0 to 1 of the light sent back; ${hint}`,
  ]);
  expect(linesOf({ site: { ...site, ground: [...Array(11).fill(0.2), 7] } })).toEqual([
    `site.ground[11] 7: must be 0 to 1 of the light sent back`,
  ]);
});
