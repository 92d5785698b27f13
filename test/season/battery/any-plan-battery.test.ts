import fc from "fast-check";
import { expect, test } from "vitest";
import { type PlanInput, readPlan } from "../../../lib/plan/index.ts";
import {
  batterySummary,
  batteryTable,
  csvText,
  ruleWords,
  wiringSummary,
  wiringTable,
  worthSummary,
  worthTable,
} from "../../../lib/report/index.ts";
import { batteryOfPlan, skiesOfPlan, worthOfPlan } from "../../../lib/season/index.ts";
import { PlanError } from "../../../lib/units/problem.ts";

const share = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });

const anyUse: fc.Arbitrary<NonNullable<NonNullable<PlanInput["loads"]>["appliances"]>[number]["use"]> =
  fc.constantFrom(
    { kind: "at-times" as const, times: [{ from: "22:00", to: "03:00" }] },
    { kind: "for-hours" as const, hours: 2 },
    { kind: "cooling" as const },
  );

/** Any plan that a person could write: any place, month, sky, panels, wiring, battery and loads. */
const anyPlan: fc.Arbitrary<PlanInput> = fc
  .record({
    latitudeDeg: share(-85, 85),
    longitudeDeg: share(-180, 180),
    month: fc.integer({ min: 1, max: 12 }),
    clearness: fc.option(share(0.25, 0.7)),
    panels: fc.array(
      fc.record({
        powerW: share(5, 500),
        howMany: fc.integer({ min: 1, max: 3 }),
        tiltDeg: fc.option(share(0, 90)),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    controller: fc.record({
      kind: fc.constantFrom("pwm" as const, "mppt" as const),
      maxCurrentA: share(1, 60),
    }),
    wiring: fc.constantFrom("parallel" as const, "own-controllers" as const),
    blockingDiodeV: fc.constantFrom(0, 0.4),
    cable: fc.record({
      size: fc.constantFrom<number | string>(0.2, 1, 2.5, 16, 300, "18 AWG", "4/0 AWG"),
      material: fc.constantFrom("copper" as const, "aluminium" as const),
      lengthM: share(0.05, 100),
    }),
    battery: fc.record({
      chemistry: fc.constantFrom("LiFePO4" as const, "AGM" as const, "gel" as const, "flooded" as const),
      capacityAh: share(1, 500),
      systemV: fc.constantFrom(12 as const, 24 as const, 48 as const),
      usablePct: share(5, 100),
    }),
    loads: fc.array(
      fc.record({
        watts: share(0, 300),
        supply: fc.constantFrom("battery" as const, "inverter" as const),
        use: anyUse,
      }),
      { maxLength: 4 },
    ),
    legs: fc.boolean(),
    now: fc.constantFrom("flat" as const, "legs" as const),
  })
  .map((any): PlanInput => {
    const month = String(any.month).padStart(2, "0");
    return {
      site: { latitudeDeg: any.latitudeDeg, longitudeDeg: any.longitudeDeg },
      season: { from: `2027-${month}-10`, to: `2027-${month}-13`, stepMinutes: 60 },
      sky:
        any.clearness === null
          ? { source: "clear" }
          : {
              source: "climate",
              from: { kind: "months", clearness: new Array<number>(12).fill(any.clearness) },
              seasons: 10,
            },
      panels: any.panels.map(({ powerW, howMany, tiltDeg }, index) => ({
        name: `panel ${index}`,
        howMany,
        module: { powerW },
        mount: tiltDeg === null ? { kind: "stand" } : { kind: "fixed", tiltDeg, bearingDeg: 90 },
      })),
      stand: any.legs ? { legs: [{ name: "leg", lengthMm: 500 }] } : {},
      circuit: {
        panelCable: any.cable,
        controller: any.controller,
        wiring: any.wiring,
        blockingDiodeV: any.blockingDiodeV,
      },
      battery: any.battery,
      loads: { appliances: any.loads.map((load, index) => ({ name: `load ${index}`, ...load })) },
      worth: { now: any.now },
    };
  });

/** Remedies that cannot make anything worse under the same skies; a panel with a controller of its own pays for that one. */
const NEVER_WORSE = ["bigger battery", "fewer loads", "second panel on the roof", "second panel on legs"];

const refusalOf = (work: () => unknown): PlanError | null => {
  try {
    work();
    return null;
  } catch (error) {
    if (error instanceof PlanError) return error;
    throw error;
  }
};

test("any plan: books close, no remedy makes a season worse, and every word and table can be written", () => {
  fc.assert(
    fc.property(anyPlan, (input) => {
      const plan = readPlan(input);
      const skies = skiesOfPlan(plan, null);
      // A cable that drops all there is is refused in words, and nothing is worked out for it.
      const refused = refusalOf(() => batteryOfPlan(plan, skies));
      if (refused !== null) {
        expect(refused.problems.map(({ path }) => path)).toEqual(
          refused.problems.map(() => expect.stringMatching(/^circuit\./)),
        );
        return;
      }
      const { season, wiring, rule } = batteryOfPlan(plan, skies);
      const { answer } = worthOfPlan(plan, skies);
      const today = answer.asIs.season.outcomes;
      for (const { residual } of [...season.outcomes, ...today])
        expect(Math.abs(residual)).toBeLessThanOrEqual(1e-9);
      for (const row of answer.rows) {
        if (!NEVER_WORSE.includes(row.name)) continue;
        if (row.name.startsWith("second") && plan.circuit.wiring === "own-controllers") continue;
        row.season.outcomes.forEach(({ shortDays, usedWh, residual }, at) => {
          expect(shortDays).toBeLessThanOrEqual(today[at].shortDays);
          expect(Math.abs(residual)).toBeLessThanOrEqual(1e-9);
          if (row.name !== "fewer loads")
            expect(usedWh).toBeGreaterThanOrEqual(today[at].usedWh * (1 - 1e-6) - 1e-4);
        });
      }
      const words = [
        ...batterySummary(season),
        ...wiringSummary(wiring),
        ...ruleWords(rule),
        ...worthSummary(answer, plan.worth, []),
      ].join(" ");
      expect(words).not.toMatch(/NaN|undefined|Infinity/);
      // csvText refuses a figure that is none.
      csvText(batteryTable(season));
      csvText(wiringTable(wiring));
      csvText(worthTable(answer, plan.worth));
    }),
    { numRuns: 40 },
  );
}, 120_000);
