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

  test("is that of the nearest place whose height is known", () => {
    expect(placeHeight({ kind: "nearest" }, table, spot)).toEqual({ place: "valley", elevationM: 600 });
    expect(placeHeight({ kind: "table", file: "mine.csv" }, table, { ...spot, longitudeDeg: 11.7 })).toEqual({
      place: "summit",
      elevationM: 2200,
    });
  });

  test("is that of a place asked for by name, near or far; none where the name's own is not known", () => {
    expect(placeHeight({ kind: "place", name: "summit" }, table, spot)?.elevationM).toBe(2200);
    expect(placeHeight({ kind: "place", name: "Denver, CO" }, shipped, spot)?.elevationM).toBe(1650);
    expect(placeHeight({ kind: "place", name: "hill" }, table, spot)).toBeNull();
    expect(() => placeHeight({ kind: "place", name: "sumit" }, table, spot)).toThrow(
      'did you mean "summit"?',
    );
  });

  test("reaches 150 km and no further", () => {
    // A degree of latitude is 111.2 km.
    expect(placeHeight({ kind: "nearest" }, table, { latitudeDeg: 48.3, longitudeDeg: 11.6 })?.place).toBe(
      "summit",
    );
    expect(placeHeight({ kind: "nearest" }, table, { latitudeDeg: 48.4, longitudeDeg: 11.6 })).toBeNull();
  });

  test("climates that are of no place know none", () => {
    expect(placeHeight({ kind: "months", windHeightM: 10 }, table, spot)).toBeNull();
    expect(placeHeight({ kind: "analogy", like: "dry mountain" }, table, spot)).toBeNull();
  });

  test("is told with where it can be stated", () => {
    expect(heightNote({ place: "Denver, CO", elevationM: 1650 })).toBe(
      "Height above the sea: that of Denver, CO, 1650 m, since the plan states none (site.elevationM).",
    );
  });
});
