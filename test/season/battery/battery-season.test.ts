import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { balanceResidual, batteryModel, loadColumns } from "../../../lib/circuit/index.ts";
import { type PlanInput, readPlan } from "../../../lib/plan/index.ts";
import { SHORT_DAY_WH } from "../../../lib/season/battery/battery-outcome.ts";
import { emptyBatteryDays, runBattery } from "../../../lib/season/battery/battery-run.ts";
import {
  type BatterySeason,
  batterySeasons,
  meanOutcome,
  quantileOutcome,
} from "../../../lib/season/battery/battery-season.ts";
import { batterySteps } from "../../../lib/season/battery/battery-steps.ts";
import { harvestsOf } from "../../../lib/season/battery/harvests.ts";
import type { SetUp } from "../../../lib/season/battery/set-up.ts";
import { surroundingsOf } from "../../../lib/season/battery/surroundings.ts";
import { heldAim } from "../../../lib/season/light/aim-plan.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { readySkies } from "../../../lib/season/light/skies.ts";
import { skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { type SkySource, skySource } from "../../../lib/season/light/sky-source.ts";
import { skyAtRatio } from "../../../lib/sky/climate/days/cloud-skies.ts";
import { anyBattery, anyController } from "../../circuit/any.ts";

const input: PlanInput = {
  site: { latitudeDeg: 52, longitudeDeg: 6, timeZone: "Europe/Berlin" },
  season: { from: "2027-03-20", to: "2027-03-27", stepMinutes: 60 },
  sky: {
    source: "climate",
    from: { kind: "months", globalKWhM2: [0.6, 1.2, 2.5, 4, 5, 5.1, 5, 4.2, 2.9, 1.6, 0.8, 0.5] },
    seasons: 10,
    seed: 7,
  },
  panels: [{ name: "propped", module: { powerW: 100 } }],
  stand: { legs: [{ name: "long", lengthMm: 700 }] },
};

const plan = readPlan(input);
const planSkies = skiesOfPlan(plan, null);
const drawn = skySource(plan, planSkies);
const { sun } = planSkies.skies;
const [unit] = panelUnits(plan.panels);
const options = { timeZone: plan.site.timeZone, airC: plan.air.temperatureC };
const southwards = heldAim({ tiltDeg: 45, bearingDeg: 180 });
const flat = heldAim({ tiltDeg: 0, bearingDeg: 180 });

const setUp = (over: Partial<SetUp> = {}): SetUp => ({
  name: "as is",
  panels: [{ unit, aims: southwards }],
  circuit: plan.circuit,
  battery: plan.battery,
  loads: plan.loads,
  ...over,
});

const loadsOf = (watts: number) =>
  readPlan({
    ...input,
    loads: {
      appliances: [
        { name: "evening", watts, use: { kind: "at-times", times: [{ from: "18:00", to: "23:00" }] } },
        { name: "fridge", watts: watts / 2, use: { kind: "cooling", dutyPct: 40 } },
      ],
    },
  }).loads;

describe("batterySeasons over random plans", () => {
  const anyPlan = fc.record({
    battery: anyBattery,
    controller: anyController,
    wiring: fc.constant("parallel" as const),
    watts: fc.double({ min: 1, max: 120, noNaN: true }),
    bigger: fc.double({ min: 1, max: 4, noNaN: true }),
    // None, or more than a thousandth: the rounding of what is stored would be a share of a load of picowatts.
    kept: fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 1, noNaN: true })),
  });

  test("books close, charge stays within limits, and no remedy makes a single day worse", () => {
    fc.assert(
      fc.property(anyPlan, ({ battery, controller, watts, bigger, kept }) => {
        const loads = loadsOf(watts);
        const circuit = { ...plan.circuit, controller };
        const asIs = setUp({ battery, circuit, loads });
        const seasons = batterySeasons(
          drawn,
          [
            asIs,
            { ...asIs, battery: { ...battery, capacityAh: battery.capacityAh * bigger } },
            {
              ...asIs,
              loads: {
                ...loads,
                appliances: loads.appliances.map((one) => ({ ...one, watts: one.watts * kept })),
              },
            },
            { ...asIs, panels: [...asIs.panels, { unit, aims: flat }] },
          ],
          options,
        );
        const [now, ...remedies] = seasons;
        const floor = 1 - battery.usablePct / 100;
        for (const { outcomes } of seasons) {
          for (const { residual, lowest } of outcomes) {
            expect(Math.abs(residual)).toBeLessThanOrEqual(1e-9);
            expect(lowest).toBeGreaterThanOrEqual(floor - 1e-9);
            expect(lowest).toBeLessThanOrEqual(1 + 1e-9);
          }
        }
        now.outcomes.forEach((outcome, season) => {
          for (const remedy of remedies) {
            expect(remedy.outcomes[season].shortDays).toBeLessThanOrEqual(outcome.shortDays);
            expect(remedy.outcomes[season].shortWh).toBeLessThanOrEqual(
              outcome.shortWh + 1e-5 * (1 + outcome.wantedWh),
            );
          }
          const second = remedies[2].outcomes[season];
          expect(second.usedWh).toBeGreaterThanOrEqual(outcome.usedWh * (1 - 1e-6));
          expect(remedies[0].outcomes[season].usedWh).toBeGreaterThanOrEqual(outcome.usedWh * (1 - 1e-6));
        });
      }),
      { numRuns: 400 },
    );
  }, 120_000);
});

describe("runBattery", () => {
  test("is the sum of its days: what goes in is used, lost, curtailed or stored", () => {
    const loads = loadsOf(30);
    const steps = batterySteps(sun);
    const model = batteryModel(plan.battery);
    const one = setUp({ loads });
    const harvests = harvestsOf(drawn, [one], [model]);
    const [harvest] = harvests.under(0);
    const columns = loadColumns(loads, steps, options.timeZone);
    const [round] = surroundingsOf(drawn, steps, [{ battery: plan.battery, loads: columns }], 10)(0);
    const days = runBattery(
      { battery: model, ownW: 0.25, cutOff: null, topUp: null },
      steps,
      harvest,
      round,
      emptyBatteryDays(sun.days.length),
    );
    let stored = 1;
    for (let day = 0; day < sun.days.length; day += 1) {
      const gained = (days.atEnd[day] - stored) * model.capacityWh;
      const spent = days.usedWh[day] + days.lostWh[day] + days.curtailedWh[day];
      expect(days.offeredWh[day]).toBeCloseTo(gained + spent, 6);
      expect(days.wantedWh[day]).toBeCloseTo(days.usedWh[day] + days.shortWh[day], 9);
      stored = days.atEnd[day];
    }
    expect(Math.abs(days.residual)).toBeLessThan(1e-12);
  });

  test("a day that begins full stays so until it is drawn on, and a battery too small for one night goes short each night", () => {
    const loads = loadsOf(60);
    const tiny = { ...plan.battery, capacityAh: 1 };
    const [season] = batterySeasons(drawn, [setUp({ loads, battery: tiny })], options);
    expect(meanOutcome(season, "shortDays")).toBe(sun.days.length);
    expect(season.outcomes[0].firstShort).toBe("2027-03-20");
    const [idle] = batterySeasons(drawn, [setUp({})], options);
    expect(meanOutcome(idle, "shortDays")).toBe(0);
    expect(idle.outcomes[0].firstShort).toBeNull();
    expect(meanOutcome(idle, "lowest")).toBeGreaterThan(0.95);
  });
});

describe("drawn seasons between rungs of cloud", () => {
  /** What eight days bring between rungs and under their own sky, at many ratios. */
  const besides = (toPlane: "perez" | "isotropic"): readonly (readonly [between: number, own: number])[] => {
    const source = skySource({ ...plan, sky: { ...plan.sky, toPlane } }, planSkies);
    const { cloud, skies } = planSkies;
    if (cloud === null || source.kind !== "drawn") throw new Error("expected a climate");
    const [low, high] = [source.rungs[1].ratio, source.rungs.at(-2)?.ratio ?? 1];
    const count = Math.floor((high - low) / 0.023);
    return Array.from({ length: count }, (_, at) => {
      const ratio = low + 0.01 + 0.023 * at;
      const columns = [{ weight: 1, sky: skyAtRatio(sun, skies.clear.sky, cloud.days, ratio) }];
      const ratios = new Float64Array(sun.days.length).fill(ratio);
      const own = readySkies(sun, skies.clear.sky, columns, toPlane).expected;
      const sources: readonly SkySource[] = [
        { ...source, sequences: { seasons: 1, days: sun.days.length, ratio: ratios } },
        { kind: "years", sun, skies: own, cloudIn: true },
      ];
      const [a, b] = sources.map((one) =>
        meanOutcome(batterySeasons(one, [setUp({})], options)[0], "offeredWh"),
      );
      return [a, b];
    });
  };

  test("a day between two rungs brings what its own sky brings, within 0.5 %", () => {
    for (const [between, own] of besides("isotropic"))
      expect(Math.abs(between / own - 1)).toBeLessThan(0.005);
  });

  test("the jumps between the bins of Perez et al. are evened out: 4 % of a day at worst, 0.3 % over all ratios", () => {
    const pairs = besides("perez");
    for (const [between, own] of pairs) expect(Math.abs(between / own - 1)).toBeLessThan(0.04);
    const [between, own] = [0, 1].map((side) => pairs.reduce((sum, pair) => sum + pair[side], 0));
    expect(Math.abs(between / own - 1)).toBeLessThan(0.003);
  });

  test("same seed, same skies for every set-up: two alike set-ups come to exactly the same", () => {
    const [a, b] = batterySeasons(
      drawn,
      [setUp({ loads: loadsOf(40) }), setUp({ loads: loadsOf(40) })],
      options,
    );
    expect(a.outcomes).toEqual(b.outcomes);
  });

  test("bands are in order and only given where there are seasons enough to tell", () => {
    const [season] = batterySeasons(drawn, [setUp({ loads: loadsOf(40) })], options);
    const band = season.lowest;
    if (band === null) throw new Error("expected a band over ten seasons");
    for (let day = 0; day < sun.days.length; day += 1) {
      expect(band.p10[day]).toBeLessThanOrEqual(band.p50[day]);
      expect(band.p50[day]).toBeLessThanOrEqual(band.p90[day]);
    }
    const clear: SkySource = { kind: "years", sun, skies: [planSkies.skies.clear], cloudIn: false };
    const [alone] = batterySeasons(clear, [setUp({})], options);
    expect(alone.lowest).toBeNull();
    expect(quantileOutcome(alone, "shortDays", 0.9)).toBeNull();
  });

  test("progress is told season by season", () => {
    const heard: number[] = [];
    batterySeasons(drawn, [setUp({})], { ...options, onProgress: (done) => heard.push(done) });
    expect(heard).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });
});

describe("what a season came to", () => {
  const outcome = (season: BatterySeason) => season.outcomes[0];

  test("a short day is one that lacks a watt-hour or more", () => {
    expect(SHORT_DAY_WH).toBe(1);
    const [season] = batterySeasons(
      drawn,
      [setUp({ loads: loadsOf(50), battery: { ...plan.battery, capacityAh: 60 } })],
      options,
    );
    const { shortDays, shortWh, wantedWh, usedWh } = outcome(season);
    expect(shortDays).toBeGreaterThan(0);
    expect(shortDays).toBeLessThan(sun.days.length);
    expect(usedWh + shortWh).toBeCloseTo(wantedWh, 6);
  });
});

test("balanceResidual finds a slip", () => {
  const ledger = {
    offered: 100,
    toppedUp: 0,
    used: 60,
    short: 0,
    ownUse: 5,
    heater: 0,
    chargeLoss: 3,
    dischargeLoss: 2,
    selfDischarge: 0,
    tooCold: 0,
    curtailed: 10,
  };
  expect(balanceResidual(ledger, 50, 70)).toBe(0);
  expect(balanceResidual({ ...ledger, curtailed: 9 }, 50, 70)).toBeCloseTo(1 / 199, 9);
  expect(
    balanceResidual(
      { ...ledger, offered: 0, used: 0, ownUse: 0, chargeLoss: 0, dischargeLoss: 0, curtailed: 0 },
      5,
      5,
    ),
  ).toBe(0);
});
