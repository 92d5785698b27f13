import { describe, expect, test } from "vitest";
import { linesOf, planWith } from "./plan-with.ts";

const longStand = { pivotMm: 700 };

describe("dates of a season", () => {
  test.each([
    ["1950-01-01", "1950-01-01"],
    ["2100-12-31", "2100-12-31"],
    // A leap year is 366 days, both ends counted.
    ["2028-01-01", "2028-12-31"],
  ])("%s to %s can be asked for", (from, to) => {
    expect(linesOf({ season: { from, to } })).toEqual([]);
  });

  test("outside 1950 to 2100, or no dates at all, are refused in words", () => {
    const said = 'must be a date from 1950-01-01 to 2100-12-31; written as "2027-04-01"';
    expect(linesOf({ season: { from: "1949-12-31", to: "1950-02-01" } })).toEqual([
      `season.from "1949-12-31": ${said}`,
    ]);
    expect(linesOf({ season: { from: "2100-12-01", to: "2101-01-01" } })).toEqual([
      `season.to "2101-01-01": ${said}`,
    ]);
    expect(linesOf({ season: { from: "1 April", to: "2027-10-01" } })).toEqual([
      'season.from "1 April": must be a date; written as "2027-04-01"',
    ]);
    expect(linesOf({ season: { from: "2027-01-01", to: "2028-01-02" } })).toEqual([
      'season.to "2028-01-02": must make a season of at most 366 days, both ends counted; written as "2027-04-01"',
    ]);
  });
});

describe("a stand", () => {
  test("has legs of different names, none of them flat", () => {
    const twice = [
      { name: "long", lengthMm: 500 },
      { name: "long", lengthMm: 400 },
    ];
    expect(linesOf({ stand: { legs: twice } })).toEqual([
      'stand.legs[1].name "long": must differ from the other legs\' names',
    ]);
    expect(linesOf({ stand: { legs: [{ name: "flat", lengthMm: 500 }] } })).toEqual([
      'stand.legs[0].name "flat": must differ from the other legs\' names; "flat" is the setting with no leg',
    ]);
  });

  test("with a strap states the strap", () => {
    expect(linesOf({ stand: { legStyle: "strap", strapMm: 900 } })).toEqual([]);
    expect(linesOf({ stand: { legStyle: "plumb" } })).toEqual([]);
  });

  test("is cut between its least and its greatest leg", () => {
    const complaints = (cutting: object) => linesOf({ stand: { cutting } });
    expect(complaints({ leastMm: 300, greatestMm: 300 })).toEqual([]);
    expect(complaints({ leastMm: 300 })).toEqual([]);
    expect(complaints({ greatestMm: 300 })).toEqual([]);
    expect(complaints({ leastMm: 301, greatestMm: 300 })).toEqual([
      "stand.cutting.leastMm 301: must be at most stand.cutting.greatestMm, 300 mm",
    ]);
  });

  test("has a frame at least as deep as the laminate in it", () => {
    expect(linesOf({ stand: { frame: { depthMm: 20, laminateMm: 20 } } })).toEqual([]);
    expect(linesOf({ stand: { frame: { depthMm: 20, laminateMm: 21 } } })).toEqual([
      "stand.frame.laminateMm 21: must be at most stand.frame.depthMm, 20 mm",
    ]);
  });

  test("has its pivot on every panel that stands on it", () => {
    const panel = { name: "short", lengthMm: 700, module: { powerW: 100 } };
    expect(linesOf({ stand: longStand, panels: [panel] })).toEqual([]);
    expect(linesOf({ stand: longStand, panels: [{ ...panel, lengthMm: 699 }] })).toEqual([
      'stand.pivotMm 700: must be at most 699 mm, the length of panels[0] "short"; it is measured along the frame from the panel\'s bottom edge',
    ]);
    expect(
      linesOf({ stand: longStand, panels: [{ ...panel, lengthMm: 699, mount: { kind: "fixed" } }] }),
    ).toEqual([]);
  });

  test("is still looked at where the panels are no list", () => {
    expect(linesOf({ panels: {}, stand: { frame: { depthMm: 20, laminateMm: 21 } } })).toEqual([
      "panels {}: must be a list [ ]",
      "stand.frame.laminateMm 21: must be at most stand.frame.depthMm, 20 mm",
    ]);
  });
});

test("panels have different names", () => {
  const named = (...names: readonly string[]) => ({
    panels: names.map((name) => ({ name, module: { powerW: 50 } })),
  });
  expect(linesOf(named("left", "right"))).toEqual([]);
  expect(linesOf(named("left", "right", "left"))).toEqual([
    'panels[2].name "left": must differ from the other panels\' names',
  ]);
});

test("the last aim's hour comes after the first's", () => {
  expect(linesOf({ aiming: { earliest: "08:00", latest: "08:01" } })).toEqual([]);
  for (const latest of ["08:00", "07:00"]) {
    expect(linesOf({ aiming: { earliest: "08:00", latest } })).toEqual([
      `aiming.latest "${latest}": must come after aiming.earliest, 08:00; 24-hour clock, "18:30"`,
    ]);
  }
});

test("an appliance is on for some time", () => {
  const lamp = (from: string, to: string) => ({
    loads: { appliances: [{ name: "lamp", watts: 5, use: { kind: "at-times", times: [{ from, to }] } }] },
  });
  expect(linesOf(lamp("18:00", "22:00"))).toEqual([]);
  expect(linesOf(lamp("22:00", "02:00"))).toEqual([]);
  expect(linesOf(lamp("18:00", "18:00"))).toEqual([
    'loads.appliances[0].use.times[0].to "18:00": must differ from `from`; a whole day is "00:00" to "24:00"',
  ]);
  expect(linesOf(lamp("18:00", "25:00"))).toEqual([
    'loads.appliances[0].use.times[0].to "25:00": must be a clock time; 24-hour clock, "18:30"',
  ]);
});

test("a length is a number or text with its unit, and nothing else", () => {
  const { stand } = planWith({ stand: { pivotMm: "600 mm" } });
  expect(stand.pivotMm).toBe(600);
  expect(linesOf({ stand: { pivotMm: true } })).toEqual([
    'stand.pivotMm true: must be a number, 50 to 2500 mm; a bare number is millimetres; inches are text with a unit, "21.5 in"',
  ]);
});

test("a fixed panel faces the equator unless it is told where", () => {
  const facing = (latitudeDeg: number, mount: object) =>
    planWith({
      site: { latitudeDeg, longitudeDeg: 8.5 },
      panels: [{ name: "roof", module: { powerW: 50 }, mount: { kind: "fixed", tiltDeg: 30, ...mount } }],
    }).panels.map(({ mount: read }) => (read.kind === "fixed" ? read.bearingDeg : null));
  expect(facing(-35, {})).toEqual([0]);
  expect(facing(35, {})).toEqual([180]);
  expect(facing(0, {})).toEqual([180]);
  expect(facing(-35, { bearingDeg: 180 })).toEqual([180]);
});

test("a coefficient of power that is not stated is not read as if it were", () => {
  const [panel] = planWith({ panels: [{ name: "prop", module: { powerW: 100, vocPctPerK: -0.25 } }] }).panels;
  expect(panel?.module.powerPctPerK).toBeUndefined();
});
