import { describe, expect, test } from "vitest";
import { heightNote, placeHeight } from "../../../lib/sky/climate/place/place-height.ts";
import { parseClimateTable } from "../../../lib/sky/climate/table/climate-table.ts";
import { shipped } from "./shipped.ts";

const months = Array.from({ length: 12 }, (_, month) => String(month + 1).padStart(2, "0"));
/** An invented table: a hill of unknown height nearest, then a valley, then a summit. */
const table = parseClimateTable(
  [
    `place,latitude_deg,longitude_deg,elevation_m,${months.map((month) => `clearness_${month}`).join(",")}`,
    ...["hill,47,11,", "valley,47,11.3,600", "summit,47,11.6,2200"].map(
      (row) => `${row},${months.map(() => "0.45").join(",")}`,
    ),
  ].join("\n"),
);

describe("placeHeight", () => {
  const spot = { latitudeDeg: 47, longitudeDeg: 11 };

  test("is the lower of two near places whose height is known, with what lies near", () => {
    const valley = { place: "valley", elevationM: 600, among: [600, 2200] };
    expect(placeHeight({ kind: "nearest" }, table, spot)).toEqual(valley);
    const atSummit = { ...spot, longitudeDeg: 11.6 };
    expect(placeHeight({ kind: "table", file: "mine.csv" }, table, atSummit)).toEqual(valley);
  });

  test("is the middle one of the nearest three", () => {
    const third = { ...table.stations[1], id: "town", place: "town", longitudeDeg: 11.1, elevationM: 900 };
    const fourth = { ...third, id: "far", place: "far", longitudeDeg: 12, elevationM: 700 };
    const four = { stations: [...table.stations, third, fourth] };
    expect(placeHeight({ kind: "nearest" }, four, spot)).toEqual({
      place: "town",
      elevationM: 900,
      among: [600, 2200],
    });
  });

  test("is that of a place asked for by name, near or far; of those near it where its own is not known", () => {
    expect(placeHeight({ kind: "place", name: "summit" }, table, spot)?.elevationM).toBe(2200);
    expect(placeHeight({ kind: "place", name: "Denver, CO" }, shipped, spot)?.elevationM).toBe(1650);
    // The hill's own is not known: of those near it.
    expect(placeHeight({ kind: "place", name: "hill" }, table, spot)?.place).toBe("valley");
    expect(() => placeHeight({ kind: "place", name: "sumit" }, table, spot)).toThrow(
      'did you mean "summit"?',
    );
  });

  test("reaches 150 km and no further", () => {
    // A degree of latitude is 111.2 km.
    expect(placeHeight({ kind: "nearest" }, table, { latitudeDeg: 48.3, longitudeDeg: 11.45 })?.place).toBe(
      "valley",
    );
    expect(placeHeight({ kind: "nearest" }, table, { latitudeDeg: 48.4, longitudeDeg: 11.6 })).toBeNull();
  });

  test("climates that are of no place know none", () => {
    expect(placeHeight({ kind: "months", windHeightM: 10 }, table, spot)).toBeNull();
    expect(placeHeight({ kind: "analogy", like: "dry mountain" }, table, spot)).toBeNull();
  });

  test("is told with where it can be stated; where near places differ by more than 300 m it must be", () => {
    expect(heightNote({ place: "Denver, CO", elevationM: 1650, among: [1500, 1800] })).toBe(
      "Height above the sea: not stated; that of Denver, CO was taken, 1650 m (site.elevationM states another).",
    );
    expect(heightNote({ place: "valley", elevationM: 600, among: [600, 2200] }, "--elevation")).toBe(
      "Height above the sea: not stated; that of valley was taken, 600 m. Places near lie from 600 to 2200 m: state yours (--elevation).",
    );
  });

  test("sea level is never taken in silence", () => {
    expect(heightNote(null)).toMatch(
      /^Height above the sea: not stated, and no place near tells one; sea level was taken\./,
    );
  });
});
