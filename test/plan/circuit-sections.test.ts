import { describe, expect, test } from "vitest";
import { checkPlan, type PlanInput, problemLine, readPlan } from "../../lib/plan/index.ts";

const least: PlanInput = {
  site: { latitudeDeg: 53.5, longitudeDeg: 8.5 },
  season: { from: "2027-04-01", to: "2027-10-01" },
  panels: [{ name: "prop", module: { powerW: 100 } }],
};

const linesOf = (given: object): readonly string[] => {
  const reading = checkPlan({ ...least, ...given });
  return reading.ok ? [] : reading.problems.map(problemLine);
};

describe("circuit, battery, loads and worth", () => {
  test("the least plan is filled from stated defaults", () => {
    const { circuit, battery, loads, worth } = readPlan(least);
    expect(circuit.panelCable).toMatchObject({
      size: 4,
      lengthM: 6,
      material: "copper",
      strands: "flexible",
    });
    expect(circuit.controller.kind).toBe("mppt");
    expect(battery).toMatchObject({ chemistry: "LiFePO4", capacityAh: 100, systemV: 12, usablePct: 90 });
    expect(loads.appliances).toEqual([]);
    expect(worth).toMatchObject({ years: 5, now: "legs", stepMinutes: 60 });
  });

  test("defaults follow the chemistry", () => {
    const battery = (chemistry: "LiFePO4" | "AGM" | "gel" | "flooded") =>
      readPlan({ ...least, battery: { chemistry } }).battery;
    expect(battery("flooded").usablePct).toBe(50);
    expect(battery("LiFePO4").chargeAboveC).toBe(0);
    expect(battery("AGM").taperHours).toBe(1);
    expect(battery("gel").selfDischargePctPerMonth).toBe(2);
  });

  test("gauges and feet are read, spelled one way, and read again as they were written", () => {
    const plan = readPlan({
      ...least,
      circuit: { panelCable: { size: "00 AWG", lengthM: "20 ft" }, batteryCable: { size: 10 } },
    });
    expect(plan.circuit.panelCable.size).toBe("2/0 AWG");
    expect(plan.circuit.panelCable.lengthM).toBeCloseTo(6.096, 9);
    expect(readPlan(plan)).toEqual(plan);
  });

  test("hours of use may fill their part of the day, and a cooler may be a degree above the air it keeps", () => {
    const uses = [
      { kind: "for-hours", hours: 2, between: { from: "10:00", to: "12:00" } },
      { kind: "for-hours", hours: 24 },
      { kind: "cooling", statedAtC: 6, insideC: 5 },
    ] as const;
    const { loads } = readPlan({
      ...least,
      loads: { appliances: uses.map((use, at) => ({ name: `use ${at}`, watts: 5, use })) },
    });
    expect(loads.appliances.map(({ use }) => use)).toMatchObject(uses);
  });

  test("says everything that is wrong at once, with the nearest key and the mending hint", () => {
    expect(
      linesOf({
        circuit: {
          panelCable: { size: "12 AWGG" },
          batteryCable: { lengthM: 0 },
          controller: {
            kind: "mppt",
            efficiency: [
              { loadPct: 50, efficiencyPct: 97 },
              { loadPct: 20, efficiencyPct: 96 },
            ],
          },
          wirring: "parallel",
        },
        battery: { chemistry: "AGM", capacityAh: -3, usablePctt: 50 },
        loads: {
          appliances: [
            { name: "lamp", watts: 5, use: { kind: "at-times", times: [{ from: "25:00", to: "08:00" }] } },
            {
              name: "pump",
              watts: 5,
              use: { kind: "for-hours", hours: 3, between: { from: "10:00", to: "12:00" } },
            },
            { name: "box", watts: 5, use: { kind: "cooling", statedAtC: 5, insideC: 5 } },
            { name: "fan", watts: 5, use: { kind: "at-times", times: [{ from: "08:00", to: "08:00" }] } },
          ],
        },
        worth: { years: 0 },
      }),
    ).toEqual([
      'circuit.panelCable.size "12 AWGG": must be a gauge from 24 AWG to 4/0 AWG; mm2 as a number, or a gauge as text, "12 AWG"',
      'circuit.batteryCable.lengthM 0: must be 0.05 to 200 m one way; a bare number is metres, one way; feet are text with a unit, "16 ft"',
      'circuit.controller.efficiency [{"loadPct":50,"efficiencyPct":97},{"loadPct":20,"efficiency...: must have rising loads',
      'circuit.wirring "parallel": is not a key of a plan here; did you mean "wiring"?',
      "battery.capacityAh -3: must be 1 to 5000 Ah; the nameplate's, at its 20-hour rate",
      'battery.usablePctt 50: is not a key of a plan here; did you mean "usablePct"?',
      'loads.appliances[0].use.times[0].from "25:00": must be a clock time; 24-hour clock, "18:30"',
      "loads.appliances[1].use.hours 3: must fit into the part of the day between the two clock times",
      "loads.appliances[2].use.statedAtC 5: must be above the temperature kept inside; the air at which the maker states how long it runs, usually 25 degC",
      'loads.appliances[3].use.times[0].to "08:00": must differ from `from`; a whole day is "00:00" to "24:00"',
      "worth.years 0: must be 1 to 40 years of use, one season each",
    ]);
  });
});
