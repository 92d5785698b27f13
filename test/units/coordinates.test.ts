import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { writtenCoordinates } from "../../lib/units/coordinates.ts";

const read = (text: string): readonly [number | undefined, number | undefined] => {
  const found = writtenCoordinates(text);
  return [found?.latitudeDeg, found?.longitudeDeg];
};

describe("coordinates as people write them", () => {
  // Sixtieths worked out by hand: 30' is 0.5, 13' is 0.21667, 30.5' is 0.50833, 13.2' is 0.22 degrees.
  test.each([
    ["57.4778, -4.2247", 57.4778, -4.2247],
    ["57.4778,-4.2247", 57.4778, -4.2247],
    ["57.4778 -4.2247", 57.4778, -4.2247],
    ["57,4778 -4,2247", 57.4778, -4.2247],
    ["57,4778, \u22124,2247", 57.4778, -4.2247],
    ["57.4778 / -4.2247", 57.4778, -4.2247],
    ["57°30'N 4°13'W", 57.5, -4.21667],
    ["57\u00ba30\u2032N, 4\u00ba13\u2032W", 57.5, -4.21667],
    ["4°13'W 57°30'N", 57.5, -4.21667],
    ["n57 30.5 w4 13.2", 57.50833, -4.22],
    ["57.5N4.2W", 57.5, -4.2],
    ["57 30 4 13", 57.5, 4.21667],
    ["57 degrees north, 4 degrees west", 57, -4],
    ["-0°30', 0°15'", -0.5, 0.25],
    ["42.15 S", -42.15, undefined],
    ["4.2247 W", undefined, -4.2247],
  ])("%s", (text, latitudeDeg, longitudeDeg) => {
    const [latitude, longitude] = read(text);
    if (latitudeDeg === undefined) expect(latitude).toBeUndefined();
    else expect(latitude).toBeCloseTo(latitudeDeg, 5);
    if (longitudeDeg === undefined) expect(longitude).toBeUndefined();
    else expect(longitude).toBeCloseTo(longitudeDeg, 5);
  });

  test("the example of a geo address in RFC 5870, section 6.1 (from memory)", () => {
    expect(read("geo:13.4125,103.8667")).toEqual([13.4125, 103.8667]);
  });

  test("the form for people of ISO 6709:2008, annex D (from memory): decimals of a second after a comma", () => {
    const [latitude, longitude] = read("50°40\u203246,461\u2033N 095°48\u203226,533\u2033W");
    expect(latitude).toBeCloseTo(50 + 40 / 60 + 46.461 / 3600, 9);
    expect(longitude).toBeCloseTo(-(95 + 48 / 60 + 26.533 / 3600), 9);
  });

  test.each(["", "hello", "57", "57,4", "91, 0", "10, 181", "95 N", "57.5 N 4.2 N", "-57 S, 4 E"])(
    "%j is no place, or more than one",
    (text) => {
      expect(writtenCoordinates(text)).toBeNull();
    },
  );

  test.each(["57 61 N 4 10 W", "57.5 30 N 4 10 W", "57°30'", "57 30 15", "57:30", "57 4 2 1 3"])(
    "%j can't be degrees and minutes of a place",
    (text) => {
      expect(writtenCoordinates(text)).toBeNull();
    },
  );

  test("whatever place is written, with signs or letters, is read back", () => {
    const lettered = (value: number, [positive, negative]: readonly [string, string]): string =>
      `${Math.abs(value)}${value < 0 ? negative : positive}`;
    const tenThousandths = (most: number) =>
      fc.integer({ min: -most * 10_000, max: most * 10_000 }).map((value) => value / 10_000 + 0);
    fc.assert(
      fc.property(tenThousandths(90), tenThousandths(180), (latitude, longitude) => {
        const place = { latitudeDeg: latitude, longitudeDeg: longitude };
        expect(writtenCoordinates(`${latitude}, ${longitude}`)).toEqual(place);
        const letters = `${lettered(latitude, ["N", "S"])} ${lettered(longitude, ["E", "W"])}`;
        expect(writtenCoordinates(letters)).toEqual(place);
      }),
    );
  });
});
