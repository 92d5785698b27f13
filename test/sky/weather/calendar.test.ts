import { describe, expect, test } from "vitest";
import { fileShift } from "../../../lib/sky/weather/read/calendar.ts";

const at = (text: string): number => Date.parse(`${text}Z`);

/** Where an instant of a season lies in a file. */
const inFile = (from: string, to: string, yearsOn: number, instant: string): string => {
  const shift = fileShift(at(from), at(to), yearsOn)(at(instant));
  return Number.isNaN(shift) ? "nowhere" : new Date(at(instant) + shift).toISOString().slice(0, 16);
};

describe("fileShift", () => {
  test("is the same month, day and hour of the year that is wanted", () => {
    expect(inFile("2001-01-01T00:00", "2002-01-01T00:00", -26, "2027-06-21T15:30")).toBe("2001-06-21T15:30");
    expect(inFile("2001-01-01T00:00", "2005-01-01T00:00", -24, "2027-06-21T15:30")).toBe("2003-06-21T15:30");
    expect(inFile("2025-01-01T00:00", "2030-01-01T00:00", 0, "2027-06-21T15:30")).toBe("2027-06-21T15:30");
  });

  test("else of the nearest year that has it", () => {
    // The file ends in May 2003: June is taken from 2002.
    expect(inFile("2001-01-01T00:00", "2003-05-01T00:00", -24, "2027-06-21T15:30")).toBe("2002-06-21T15:30");
    expect(inFile("2001-07-01T00:00", "2003-05-01T00:00", -26, "2027-06-21T15:30")).toBe("2002-06-21T15:30");
    expect(inFile("2001-07-01T00:00", "2002-05-01T00:00", -26, "2027-06-21T15:30")).toBe("nowhere");
  });

  test("the first instant of a file is in it, the one after its last is not", () => {
    expect(inFile("2001-06-01T00:00", "2001-06-02T00:00", -26, "2027-06-01T00:00")).toBe("2001-06-01T00:00");
    expect(inFile("2001-06-01T00:00", "2001-06-02T00:00", -26, "2027-06-01T23:59")).toBe("2001-06-01T23:59");
    expect(inFile("2001-06-01T00:00", "2001-06-02T00:00", -26, "2027-06-02T00:00")).toBe("nowhere");
    expect(inFile("2001-06-01T00:00", "2001-06-02T00:00", -26, "2027-05-31T23:59")).toBe("nowhere");
  });

  test("29 February is read from the 28th of a common year, and is itself in a leap year", () => {
    expect(inFile("2001-01-01T00:00", "2002-01-01T00:00", -27, "2028-02-29T10:00")).toBe("2001-02-28T10:00");
    expect(inFile("2000-01-01T00:00", "2001-01-01T00:00", -28, "2028-02-29T10:00")).toBe("2000-02-29T10:00");
    expect(inFile("2001-01-01T00:00", "2002-01-01T00:00", -27, "2028-03-01T10:00")).toBe("2001-03-01T10:00");
  });

  test("each day is looked up anew", () => {
    const shiftAt = fileShift(at("2001-01-01T00:00"), at("2002-01-01T00:00"), -27);
    const [leapDay, nextDay] = ["2028-02-29T10:00", "2028-03-01T10:00"].map((instant) =>
      new Date(at(instant) + shiftAt(at(instant))).toISOString().slice(0, 10),
    );
    expect([leapDay, nextDay]).toEqual(["2001-02-28", "2001-03-01"]);
  });
});
