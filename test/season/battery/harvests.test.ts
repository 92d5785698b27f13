import { describe, expect, test } from "vitest";
import { batteryModel, type Harvest } from "../../../lib/circuit/index.ts";
import { controllerSchema } from "../../../lib/plan/circuit.ts";
import { harvestsOf } from "../../../lib/season/battery/harvests.ts";
import type { SetUp } from "../../../lib/season/battery/set-up.ts";
import { heldAim } from "../../../lib/season/light/aim-plan.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { readySkies } from "../../../lib/season/light/skies.ts";
import type { SkySource } from "../../../lib/season/light/sky-source.ts";
import { clearSkies } from "../random-plan.ts";
import { quickPlan } from "./battery-plan.ts";

const plan = quickPlan();
const { sun, clear } = clearSkies(plan);
const [unit] = panelUnits(plan.panels);
const south = heldAim({ tiltDeg: 45, bearingDeg: 180 });
const pwm = { ...plan.circuit, controller: controllerSchema.parse({ kind: "pwm" }) };

const base: SetUp = {
  name: "as is",
  panels: [{ unit, aims: south }],
  circuit: plan.circuit,
  battery: plan.battery,
  loads: plan.loads,
};

const dimmed = (share: number) =>
  readySkies(sun, clear.sky, [
    {
      weight: 1,
      sky: {
        ...clear.sky,
        beamNormal: clear.sky.beamNormal.map((watts) => share * watts),
        diffuse: clear.sky.diffuse.map((watts) => share * watts),
        global: clear.sky.global.map((watts) => share * watts),
      },
    },
  ]).expected[0];

const years: SkySource = { kind: "years", sun, skies: [clear, dimmed(0.5)], cloudIn: true };

const harvestsFor = (source: SkySource, setUps: readonly SetUp[]) =>
  harvestsOf(
    source,
    setUps,
    setUps.map(({ battery }) => batteryModel(battery)),
  );

const valuesOf = (harvest: Harvest): Float64Array =>
  harvest.kind === "power" ? harvest.watts.slice() : harvest.amps.slice();

const harvestOf = (source: SkySource, setUp: SetUp, season = 0): Float64Array =>
  valuesOf(harvestsFor(source, [setUp]).under(season)[0]);

describe("harvestsOf: what is shared", () => {
  const numbersOf = (...setUps: readonly SetUp[]) => harvestsFor(years, setUps).ofSetUp;

  test("loads and the size of the battery do not change what a tracking controller could give", () => {
    const bigger = { ...base, battery: { ...base.battery, capacityAh: 400 } };
    const idle = { ...base, loads: { ...base.loads, appliances: [] } };
    expect(numbersOf(base, bigger, idle)).toEqual([0, 0, 0]);
  });

  test("a controller that holds the panel at the battery sees its resistance, which goes with its size", () => {
    const on = { ...base, circuit: pwm };
    const bigger = { ...on, battery: { ...on.battery, capacityAh: 400 } };
    expect(numbersOf(on, bigger, on)).toEqual([0, 1, 0]);
  });

  test("another aim, mount, panel, count, dust, cable or voltage is another harvest", () => {
    const [roof, dusty, other] = panelUnits(
      quickPlan({
        panels: [
          { name: "roof", module: { powerW: 100 }, mount: { kind: "fixed" } },
          { name: "dusty", module: { powerW: 100 }, dustPct: 10 },
          { name: "other", module: { powerW: 60 } },
        ],
      }).panels,
    );
    const withUnit = (one: typeof unit): SetUp => ({ ...base, panels: [{ unit: one, aims: south }] });
    expect(
      numbersOf(
        base,
        { ...base, panels: [{ unit, aims: heldAim({ tiltDeg: 45, bearingDeg: 180 }) }] },
        withUnit({ ...unit, howMany: 2 }),
        withUnit({ ...unit, model: { ...unit.model, heatLoss: roof.model.heatLoss } }),
        withUnit({ ...unit, model: { ...unit.model, shareLeft: dusty.model.shareLeft } }),
        withUnit(other),
        { ...base, circuit: { ...base.circuit, panelCable: { ...base.circuit.panelCable, lengthM: 20 } } },
        { ...base, battery: { ...base.battery, systemV: 24 } },
        { ...base, panels: [...base.panels, ...base.panels] },
        base,
      ),
    ).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 0]);
  });

  test("only the cooling that differs between mounts makes other light: u0 or u1 alone is enough", () => {
    const { u0, u1 } = unit.model.heatLoss;
    const warmer = (heatLoss: typeof unit.model.heatLoss): SetUp => ({
      ...base,
      panels: [{ unit: { ...unit, model: { ...unit.model, heatLoss } }, aims: south }],
    });
    const still = { ...base, name: "still" };
    expect(numbersOf(base, warmer({ u0: u0 / 2, u1 }), warmer({ u0, u1: u1 / 2 }), still)).toEqual([
      0, 1, 2, 0,
    ]);
    // Warmer cells give less at midday.
    const noon = harvestOf(years, base);
    const warm = harvestOf(years, warmer({ u0: u0 / 2, u1 }));
    expect(Math.max(...warm)).toBeLessThan(0.97 * Math.max(...noon));
  });
});

describe("harvestsOf: years", () => {
  test("each season has its own sky, each set-up its own panels", () => {
    const flat = { ...base, panels: [{ unit, aims: heldAim({ tiltDeg: 0, bearingDeg: 180 }) }] };
    const harvests = harvestsFor(years, [base, flat]);
    const bright = harvests.under(0).map(valuesOf);
    const dull = harvests.under(1).map(valuesOf);
    expect(bright).toHaveLength(2);
    for (const [at, setUp] of [base, flat].entries()) {
      expect([...bright[at]]).toEqual([...harvestOf(years, setUp, 0)]);
      expect([...dull[at]]).toEqual([...harvestOf(years, setUp, 1)]);
    }
    expect(Math.max(...dull[0])).toBeLessThan(0.6 * Math.max(...bright[0]));
    expect(Math.max(...bright[1])).toBeLessThan(Math.max(...bright[0]));
  });
});

describe("harvestsOf: seasons drawn between rungs of cloud", () => {
  const rungs = [0.4, 0.6, 0.8].map((ratio) => ({ ratio, sky: dimmed(ratio) }));
  const drawn = (...ratio: readonly number[]): SkySource => ({
    kind: "drawn",
    sun,
    rungs,
    sequences: {
      seasons: ratio.length / sun.days.length,
      days: sun.days.length,
      ratio: Float64Array.from(ratio),
    },
  });
  const atRung = (rung: number, circuit = base.circuit): Float64Array =>
    harvestOf({ kind: "years", sun, skies: [rungs[rung].sky], cloudIn: true }, { ...base, circuit });

  const expectDay = (
    found: Float64Array,
    day: number,
    perRow: number,
    course: (value: number) => number,
  ): void => {
    const { first, end } = sun.days[day];
    for (let value = first * perRow; value < end * perRow; value += 1)
      expect(found[value]).toBeCloseTo(course(value), 9);
  };

  test.each([
    ["watts", base.circuit, 1],
    ["amperes", pwm, 11],
  ] as const)(
    "a day lies straight between the rungs on either side of its ratio, in %s",
    (_, circuit, perRow) => {
      const [low, middle, high] = [0, 1, 2].map((rung) => atRung(rung, circuit));
      // On a rung, half-way, a quarter of the way up from the middle, and a day without a ratio: it has no sun.
      const found = harvestOf(drawn(0.4, 0.5, 0.65, Number.NaN), { ...base, circuit });
      expect(found).toHaveLength(sun.length * perRow);
      expectDay(found, 0, perRow, (at) => low[at]);
      expectDay(found, 1, perRow, (at) => (low[at] + middle[at]) / 2);
      expectDay(found, 2, perRow, (at) => 0.75 * middle[at] + 0.25 * high[at]);
      expectDay(found, 3, perRow, () => 0);
      expect(Math.max(...high)).toBeGreaterThan(Math.max(...low) * 1.2);
    },
  );

  test("the top rung is reached, and each season has ratios of its own", () => {
    const high = atRung(2);
    const source = drawn(0.8, 0.8, 0.8, 0.8, 0.4, 0.8, 0.4, 0.4);
    const found = harvestOf(source, base);
    expectDay(found, 0, 1, (at) => high[at]);
    expectDay(found, 3, 1, (at) => high[at]);
    const second = harvestOf(source, base, 1);
    expectDay(second, 0, 1, (at) => atRung(0)[at]);
    expectDay(second, 1, 1, (at) => high[at]);
  });

  test("a day without a ratio brings nothing, whatever the season before had brought on it", () => {
    const source = drawn(0.8, 0.8, 0.8, 0.8, Number.NaN, 0.8, 0.8, Number.NaN);
    const harvests = harvestsFor(source, [{ ...base, circuit: pwm }]);
    expect(Math.max(...valuesOf(harvests.under(0)[0]))).toBeGreaterThan(1);
    const second = valuesOf(harvests.under(1)[0]);
    expectDay(second, 0, 11, () => 0);
    expectDay(second, 3, 11, () => 0);
    expect(Math.max(...second)).toBeGreaterThan(1);
  });

  test("a single rung is the sky of every day", () => {
    const one: SkySource = {
      kind: "drawn",
      sun,
      rungs: [{ ratio: 1, sky: dimmed(0.4) }],
      sequences: { seasons: 1, days: sun.days.length, ratio: new Float64Array(sun.days.length).fill(1) },
    };
    expect([...harvestOf(one, base)]).toEqual([...atRung(0)]);
  });
});
