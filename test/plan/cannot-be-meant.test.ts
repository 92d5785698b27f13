import { describe, expect, test } from "vitest";
import { cableProblems } from "../../lib/circuit/cable-drops.ts";
import { checkPlan, type PlanInput, problemLine, readPlan } from "../../lib/plan/index.ts";

const plan: PlanInput = {
  site: { latitudeDeg: 57.75, longitudeDeg: 12 },
  season: { from: "2027-04-01", to: "2027-09-30" },
  panels: [{ name: "prop", module: { powerW: 100 } }],
};

const pathsOf = (given: object): readonly string[] => {
  const reading = checkPlan({ ...plan, ...given });
  return reading.ok ? [] : reading.problems.map(({ path }) => path);
};

describe("what cannot be meant is told", () => {
  // Offsets of zones: the IANA time zone database; none of these places is in doubt.
  test.each([
    ["Europe/Stockholm", 12],
    ["Asia/Shanghai", 75.9],
    ["America/Adak", 173],
    ["Pacific/Kiritimati", -157.4],
    ["Pacific/Apia", -171.8],
    ["Europe/Madrid", -8.9],
    ["America/Argentina/Ushuaia", -68.3],
    ["Etc/UTC", 150],
  ])("%s suits longitude %d", (timeZone, longitudeDeg) => {
    expect(pathsOf({ site: { latitudeDeg: 40, longitudeDeg, timeZone } })).toEqual([]);
  });

  test.each([
    ["Europe/Stockholm", -78],
    ["America/Denver", 105],
    ["Australia/Perth", -116],
  ])("%s cannot be the zone of longitude %d", (timeZone, longitudeDeg) => {
    expect(pathsOf({ site: { latitudeDeg: 40, longitudeDeg, timeZone } })).toEqual(["site.timeZone"]);
  });

  test("says by how many hours, and which sign to look at", () => {
    const reading = checkPlan({
      ...plan,
      site: { latitudeDeg: 40, longitudeDeg: 105, timeZone: "America/Denver" },
    });
    expect(reading.ok ? [] : reading.problems.map(problemLine)).toEqual([
      // Summer time, 6 hours behind UTC, at a longitude 7 hours ahead of it.
      'site.timeZone "America/Denver": must be a zone of the place: its clocks are 11 hours ahead of the sun at longitude 105; is the longitude\'s sign right? west is negative; left out, the zone follows the longitude',
    ]);
  });

  test("a panel of 1 W with 200 cells", () => {
    const module = (powerW: number, cellsInSeries: number) => ({
      panels: [{ name: "prop", module: { powerW, cellsInSeries } }],
    });
    expect(pathsOf(module(1, 200))).toEqual(["panels[0].module.cellsInSeries"]);
    expect(pathsOf(module(1000, 1))).toEqual(["panels[0].module.cellsInSeries"]);
    expect(pathsOf(module(1, 12))).toEqual([]);
    expect(pathsOf(module(700, 66))).toEqual([]);
  });

  test("a cable that would drop all the voltage there is", () => {
    const problems = (circuit: PlanInput["circuit"]) =>
      cableProblems(readPlan({ ...plan, circuit })).map(({ path }) => path);
    expect(problems({})).toEqual([]);
    // 2 x 20 m of 0.5 mm2 at 39 ohm/km is 1.6 ohm: 9 V of 18 V at 5.6 A is bad, and may be meant.
    expect(problems({ panelCable: { size: 0.5, lengthM: 20 } })).toEqual([]);
    expect(problems({ panelCable: { size: 0.5, lengthM: 60 } })).toEqual(["circuit.panelCable.size"]);
    expect(problems({ batteryCable: { size: 0.5, lengthM: 30 } })).toEqual(["circuit.batteryCable.size"]);
  });
});
