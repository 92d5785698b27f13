import { describe, expect, test } from "vitest";
import { nearestName } from "../../lib/plan/nearest-name.ts";

describe("nearestName", () => {
  test("finds a name typed without its unit, in another case, or with a slip", () => {
    expect(nearestName("tilt", ["name", "tiltDeg"])).toBe("tiltDeg");
    expect(nearestName("TILTDEG", ["name", "tiltDeg"])).toBe("tiltDeg");
    expect(nearestName("tiltdge", ["name", "tiltDeg"])).toBe("tiltDeg");
  });

  test("forgives two slips in a short word and two letters in five in a long one", () => {
    expect(nearestName("abcd", ["abxy"])).toBe("abxy");
    expect(nearestName("abcd", ["axyz"])).toBeNull();
    expect(nearestName("abcdefghij", ["abcdefwxyz"])).toBe("abcdefwxyz");
    expect(nearestName("abcdefghij", ["abcdevwxyz"])).toBeNull();
  });

  test("prefers the whole name to one that lacks its unit, and the first of equals", () => {
    expect(nearestName("span", ["spanMm", "span"])).toBe("span");
    expect(nearestName("bat", ["cat", "rat"])).toBe("cat");
    expect(nearestName("bat", ["rat", "cat"])).toBe("rat");
  });

  test("is null where nothing is known", () => {
    expect(nearestName("anything", [])).toBeNull();
  });
});
