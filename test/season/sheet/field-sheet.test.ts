import { describe, expect, test } from "vitest";
import { readPlan } from "../../../lib/plan/index.ts";
import {
  batteryOfPlan,
  fieldSheet,
  judgedWh,
  panelUnits,
  reaim,
  seasonYield,
  settingsOf,
  skiesOfPlan,
  totalWh,
} from "../../../lib/season/index.ts";

const given = {
  name: "raft",
  site: { latitudeDeg: 52, longitudeDeg: 6, timeZone: "Europe/Amsterdam" },
  season: { from: "2027-05-20", to: "2027-06-18", stepMinutes: 30 },
  panels: [
    { name: "prop", module: { powerW: 100 } },
    { name: "roof", module: { powerW: 150 }, mount: { kind: "fixed", tiltDeg: 3 } },
  ],
  stand: { legs: [{ name: "only", lengthMm: 420 }] },
};

const sheetOf = (more: object, aims = 2) => {
  const plan = readPlan({ ...given, ...more });
  const planSkies = skiesOfPlan(plan, null);
  const units = panelUnits(plan.panels);
  return { plan, planSkies, units, sheet: fieldSheet(plan, planSkies.skies, units, aims) };
};

describe("turning beside a roof panel", () => {
  const { plan, planSkies, units, sheet } = sheetOf({});
  const { skies } = planSkies;
  const days = skies.sun.days.length;
  const meanOf = (some: typeof units, tilt: (typeof units)[number]["fixedAim"] | "leg") => {
    const settings = settingsOf(plan);
    const setting = tilt === "leg" ? settings[1]! : settings[0]!;
    return totalWh(judgedWh(seasonYield(skies, some, [setting]).settings[0]!)) / days;
  };
  const roof = meanOf([units[1]!], null);
  const prop = meanOf([units[0]!], "leg");
  const turned = reaim({ ...plan, aiming: { ...plan.aiming, mostAims: 2 } }, skies, units).periods[0]!
    .routines[1]!.dayWh;

  test("is told over all panels, not over the one that is turned", () => {
    expect(sheet.panelsDayWh).toBeCloseTo(roof + prop, 6);
    expect(sheet.turning!.dayWh).toBeCloseTo(roof + turned, 6);
    const told = sheet.turning!.dayWh / sheet.panelsDayWh - 1;
    const ofStandAlone = turned / prop - 1;
    expect(told).toBeLessThan(0.6 * ofStandAlone);
    expect(told).toBeGreaterThan(0.02);
    expect(sheet.turning!.pays).toBe(true);
  });

  test("does not pay where the roof outweighs it: less than 2 % of all panels", () => {
    const big = sheetOf({
      panels: [given.panels[0], { ...given.panels[1]!, howMany: 20 }],
    }).sheet;
    expect(big.turning!.dayWh / big.panelsDayWh - 1).toBeGreaterThan(0);
    expect(big.turning!.dayWh / big.panelsDayWh - 1).toBeLessThan(0.02);
    expect(big.turning!.pays).toBe(false);
  });
});

describe("what reaches the battery", () => {
  test("is what the battery's own answer says that the circuit offers, with the stand on its one leg", () => {
    const { plan, planSkies, sheet } = sheetOf({ worth: { now: "legs" } });
    const { season } = batteryOfPlan(plan, planSkies);
    const offered = totalWh(season.meanOfferedWh) / season.days.length;
    expect(sheet.batteryDayWh).toBeCloseTo(offered, 6);
    expect(sheet.batteryDayWh).toBeLessThan(sheet.panelsDayWh);
  });

  test("is far less than the panels make behind a PWM controller and a thin cable", () => {
    const thin = { panelCable: { size: 1, lengthM: 12 } };
    const { sheet } = sheetOf({ circuit: { ...thin, controller: { kind: "pwm" } } });
    const wide = sheetOf({ circuit: { controller: { kind: "mppt" } } }).sheet;
    expect(sheet.panelsDayWh).toBe(wide.panelsDayWh);
    expect(sheet.batteryDayWh).toBeLessThan(0.93 * wide.batteryDayWh);
    const [may] = sheet.months;
    expect(may!.batteryWh / may!.panelsWh).toBeCloseTo(sheet.batteryDayWh / sheet.panelsDayWh, 2);
  });

  test("of a season is the mean of its days, not of its months", () => {
    const { sheet } = sheetOf({ season: { from: "2027-05-30", to: "2027-06-30", stepMinutes: 60 } }, 1);
    const [may, june] = sheet.months;
    expect(sheet.batteryDayWh).toBeCloseTo((2 * may!.batteryWh + 30 * june!.batteryWh) / 32, 6);
    expect(sheet.panelsDayWh).toBeCloseTo((2 * may!.panelsWh + 30 * june!.panelsWh) / 32, 6);
  });
});
