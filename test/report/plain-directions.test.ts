import { describe, expect, test } from "vitest";
import { compassWords, noonShadowWords, sunwardWords } from "../../lib/report/words/plain-directions.ts";
import { magneticDeclination } from "../../lib/sun/index.ts";

const NORTHERN_NOON = { bearingDeg: 180, altitudeDeg: 50 };
const SOUTHERN_NOON = { bearingDeg: 0.2, altitudeDeg: 60 };

describe("noonShadowWords", () => {
  test("turns from the line of the noon shadow, left of it to the east in the northern half", () => {
    expect(noonShadowWords(160, NORTHERN_NOON, "13:24")).toBe(
      "At solar noon (13:24) look along the shadow of an upright stick, from its tip to the stick's foot: that is true south. " +
        "Face the panel 20° to the left of that line (two fists at arm's length).",
    );
    expect(noonShadowWords(245, NORTHERN_NOON, "13:24")).toMatch(/65° to the right of that line\.$/);
  });

  test("looks north in the southern half, where east is to the right", () => {
    expect(noonShadowWords(30, SOUTHERN_NOON, "12:58")).toMatch(
      /that is true north\. Face the panel 30° to the right of that line \(three fists at arm's length\)\.$/,
    );
  });

  test("says straight along it when there is nothing to turn", () => {
    expect(noonShadowWords(180.3, NORTHERN_NOON, "12:00")).toMatch(
      /Face the panel straight along that line\.$/,
    );
  });

  test("has nothing to say in polar night or under a sun overhead", () => {
    expect(noonShadowWords(160, { bearingDeg: 180, altitudeDeg: -2 }, "12:00")).toBeNull();
    expect(noonShadowWords(160, { bearingDeg: 180, altitudeDeg: 81 }, "12:00")).toBeNull();
  });
});

describe("sunwardWords", () => {
  test("turns from the sun, and warns", () => {
    expect(sunwardWords(160, { bearingDeg: 135, altitudeDeg: 30 })).toBe(
      "Face the panel 25° to the right of the sun (three fists at arm's length); never look into it.",
    );
    expect(sunwardWords(5, { bearingDeg: 355, altitudeDeg: 30 })).toMatch(
      /10° to the right of the sun \(one fist/,
    );
    expect(sunwardWords(5, { bearingDeg: 5, altitudeDeg: 30 })).toMatch(/straight at the sun;/);
    expect(sunwardWords(5, { bearingDeg: 185, altitudeDeg: 30 })).toMatch(/straight away from the sun;/);
    expect(sunwardWords(5, { bearingDeg: 355, altitudeDeg: -1 })).toBeNull();
  });
});

describe("compassWords", () => {
  const at2027 = (latitude: number, longitude: number, year = 2027) =>
    magneticDeclination(latitude, longitude, 0, Date.UTC(year, 0, 1));

  test("takes the declination off, and names it", () => {
    expect(compassWords(125, at2027(52, 5))).toBe(
      "122° by compass (the needle points 3° east of true north here; WMM-2025, valid to 13 November 2029).",
    );
    expect(compassWords(2, at2027(52, 5))).toMatch(/^359° by compass/);
  });

  test("says when the model does not reach the date, and where a needle is no help", () => {
    expect(compassWords(125, at2027(52, 5, 2035))).toContain(
      "WMM-2025, which is valid from 13 November 2024 to 13 November 2029 only: look up a value for this date",
    );
    expect(compassWords(125, at2027(86, 150))).toBe(
      "A compass is of no use here: the magnetic pole is too near.",
    );
  });
});
