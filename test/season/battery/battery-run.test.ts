import { describe, expect, test } from "vitest";
import type { BatteryModel, Harvest, LoadCutOff } from "../../../lib/circuit/index.ts";
import type { TopUp } from "../../../lib/circuit/top-up.ts";
import { outcomeOfDays } from "../../../lib/season/battery/battery-outcome.ts";
import { type BatteryDays, emptyBatteryDays, runBattery } from "../../../lib/season/battery/battery-run.ts";
import { airOfDays, type BatterySteps, batterySteps } from "../../../lib/season/battery/battery-steps.ts";
import { emptySkyColumns } from "../../../lib/sky/columns.ts";
import type { SeasonDay } from "../../../lib/sun/columns.ts";
import { sunColumns } from "../../../lib/sun/index.ts";

// Two days of four steps of six hours, sun in the middle two; a battery without losses that fills at once.
const STEPS: BatterySteps = {
  startsMs: [0, 86_400_000],
  stepMinutes: 360,
  perDay: 4,
  hours: 6,
  noonStep: 2,
  row: Int32Array.of(-1, 0, 1, -1, -1, 2, 3, -1),
  litShare: Float64Array.of(1, 0.5, 1, 1),
};

const BATTERY: BatteryModel = {
  capacityWh: 200,
  usableWh: 100,
  startWh: 50,
  chargeShare: 1,
  dischargeShare: 1,
  maxChargeW: 1e9,
  taperHours: 1e-9,
  selfDischargePerHour: 0,
  chargeAboveC: 0,
  heaterW: 0,
  dischargeAboveC: -20,
  keptAtC: null,
  followsAirH: 24,
  meanV: 12,
  chargingV: 12,
  chargeOhm: 0,
  restVAt: new Float64Array(11).fill(12),
  capacityShare: () => 1,
};

const steady = (...watts: readonly number[]): Float64Array => Float64Array.from(watts);
const everyStep = (days: Float64Array): Float64Array =>
  Float64Array.from({ length: 8 }, (_, step) => days[Math.floor(step / 4)]);
const NO_LOADS = steady(0, 0, 0, 0, 0, 0, 0, 0);
const LIGHT: Harvest = { kind: "power", watts: Float64Array.of(10, 10, 0, 0) };
const WARM = Float64Array.of(20, 20);

const run = (
  over: {
    readonly battery?: Partial<BatteryModel>;
    readonly loadW?: Float64Array;
    readonly ownW?: number;
    readonly topUp?: TopUp;
    readonly cutOff?: LoadCutOff;
    readonly harvest?: Harvest;
    /** The battery's temperature: of each day, or of each step. */
    readonly dayC?: Float64Array;
    readonly batteryC?: Float64Array;
  } = {},
): BatteryDays => {
  const battery = { ...BATTERY, ...over.battery };
  return runBattery(
    { battery, ownW: over.ownW ?? 0, cutOff: over.cutOff ?? null, topUp: over.topUp ?? null },
    STEPS,
    over.harvest ?? LIGHT,
    {
      batteryC: over.batteryC ?? everyStep(over.dayC ?? WARM),
      capacityShare: new Float64Array(8).fill(battery.capacityShare(20)),
      loadW: over.loadW ?? NO_LOADS,
    },
    emptyBatteryDays(2),
  );
};

describe("runBattery, by hand", () => {
  test("fills, turns away, is drawn on and goes short", () => {
    // Day 1: 50 Wh, morning 10 W x 6 h fills it (10 curtailed), noon's 10 W x half a step x 6 h = 30 is curtailed,
    // 5 W x 6 h at night leave 70. Day 2: 10 W x 6 h leave 10, of the next 30 wanted 10 are there: 20 short.
    const days = run({ loadW: steady(0, 0, 0, 5, 10, 5, 0, 0) });
    expect([...days.offeredWh]).toEqual([90, 0]);
    expect([...days.curtailedWh]).toEqual([40, 0]);
    expect([...days.usedWh]).toEqual([30, 70]);
    expect([...days.shortWh]).toEqual([0, 20]);
    expect([...days.wantedWh]).toEqual([30, 90]);
    expect([...days.lostWh]).toEqual([0, 0]);
    // Of 200 Wh in all, 100 are the reserve below the floor.
    expect([...days.lowest]).toEqual([0.75, 0.5]);
    expect([...days.atEnd]).toEqual([0.85, 0.5]);
    // Full first in the second of four steps, whose middle is 3 hours before noon; never on the second day.
    expect([...days.fullAfterNoonH]).toEqual([-3, Number.NaN]);
    expect(days.residual).toBe(0);
  });

  test("every day begins with what the one before left, and its lowest is its own", () => {
    const days = run({ loadW: steady(0, 0, 0, 10, 0, 0, 0, 0) });
    expect([...days.lowest]).toEqual([0.7, 0.7]);
    const rising = run({ harvest: { kind: "power", watts: Float64Array.of(0, 0, 5, 0) } });
    expect([...rising.lowest]).toEqual([0.75, 0.75]);
    expect([...rising.atEnd]).toEqual([0.75, 0.9]);
  });

  test("controllers draw day and night: that is lost, not used", () => {
    const days = run({ ownW: 1, harvest: { kind: "power", watts: new Float64Array(4) } });
    expect([...days.lostWh]).toEqual([24, 24]);
    expect([...days.atEnd].map((share) => Math.round(share * 200))).toEqual([126, 102]);
  });

  test("counts as full from 98 % of what it fills to, and only with the sun up", () => {
    const filled = (startWh: number) => [...run({ battery: { startWh, chargeAboveC: 30 } }).fullAfterNoonH];
    expect(filled(98)).toEqual([-3, -3]);
    expect(filled(97.9)).toEqual([Number.NaN, Number.NaN]);
    // In the cold it fills to less, and is full with less.
    expect([...run({ battery: { startWh: 50, capacityShare: () => 0.5 } }).fullAfterNoonH]).toEqual([-3, -3]);
  });

  test("a cold battery is not charged, hour by hour: a warm afternoon charges it on a day that began in frost", () => {
    const frost = run({ dayC: Float64Array.of(-5, -5) });
    expect([...frost.curtailedWh]).toEqual([90, 0]);
    // Of the 90 Wh it would have taken, in each hour: 50, since none of them filled it, and half a step's 30.
    expect([...frost.tooColdWh]).toEqual([80, 0]);
    expect([...run({ dayC: Float64Array.of(-5, 20) }).atEnd]).toEqual([0.75, 0.75]);
    const thawing = run({ batteryC: Float64Array.of(-8, -4, 2, 0, 20, 20, 20, 20) });
    expect(thawing.atEnd[0]).toBeCloseTo((100 + 50 + 30) / 200, 12);
    expect(thawing.tooColdWh[0]).toBeCloseTo(50, 6);
    expect([...run({ dayC: Float64Array.of(0, 0) }).tooColdWh]).toEqual([0, 0]);
  });

  test("nothing is lost to the cold where the battery was full or has a heater", () => {
    expect([...run({ dayC: Float64Array.of(-5, -5), battery: { startWh: 100 } }).tooColdWh]).toEqual([0, 0]);
    expect([...run({ dayC: Float64Array.of(-5, -5), battery: { heaterW: 2 } }).tooColdWh]).toEqual([0, 0]);
  });

  test("below its limit of discharge a battery gives nothing: the loads go without, the charge stays", () => {
    const days = run({ dayC: Float64Array.of(-25, -25), loadW: steady(1, 1, 1, 1, 1, 1, 1, 1) });
    // Two steps of the first day are lit, one of them for half: 1 W of 24 h is had in them, 0.5 step's light carries the whole.
    expect([...days.usedWh]).toEqual([12, 0]);
    expect([...days.shortWh]).toEqual([12, 24]);
    expect([...days.atEnd]).toEqual([0.75, 0.75]);
  });

  test("one stay at a hook-up fills the battery: not every short day costs a night", () => {
    // 50 Wh, 10 W day and night, no sun: the first step of six hours would empty it, so a stay of 12 hours begins: the loads'
    // 60 Wh a step are carried and 50 Wh fill it. The next step takes 60 of 100 Wh, and the one after it begins another stay.
    const loadW = steady(10, 10, 10, 10, 10, 10, 10, 10);
    const dark: Harvest = { kind: "power", watts: new Float64Array(4) };
    expect([...run({ loadW, harvest: dark }).shortWh]).toEqual([190, 240]);
    const days = run({ loadW, harvest: dark, topUp: { powerW: 30, hours: 12, untilFull: false } });
    expect([...days.shortWh]).toEqual([0, 0]);
    expect([...days.topUps]).toEqual([2, 1]);
    // Plugged in for steps 1, 2 and 4 of the first day, 1, 3 and 4 of the second.
    expect([...days.topUpHours]).toEqual([18, 18]);
    expect(days.toppedUpWh[0]).toBeCloseTo(3 * 60 + 50 + 60, 6);
    expect([...days.curtailedWh]).toEqual([0, 0]);
    expect(Math.abs(days.residual)).toBeLessThan(1e-12);
  });

  test("a generator stops when the battery is full, a drive lasts its minutes, the sun is taken first", () => {
    const loadW = steady(10, 10, 10, 10, 10, 10, 10, 10);
    const dark: Harvest = { kind: "power", watts: new Float64Array(4) };
    const generator = run({ loadW, harvest: dark, topUp: { powerW: 1000, hours: 24, untilFull: true } });
    // One step of six hours fills it each time: steps 1 and 3.
    expect([...generator.topUpHours]).toEqual([12, 12]);
    const drive = run({ loadW, harvest: dark, topUp: { powerW: 40, hours: 3, untilFull: false } });
    // Half a step at 40 W: 120 Wh, 60 for the loads and 50 into the battery; every other step.
    expect([...drive.topUpHours]).toEqual([6, 6]);
    expect(drive.toppedUpWh[0]).toBeCloseTo(110 + 120, 6);
    // With 10 W of sun in a lit step the same stay gives what the sun does not.
    const sunny = run({
      loadW: steady(0, 30, 0, 0, 0, 0, 0, 0),
      topUp: { powerW: 40, hours: 6, untilFull: false },
    });
    expect(sunny.offeredWh[0]).toBe(90);
    expect(sunny.toppedUpWh[0]).toBeCloseTo(180 + 50 - 60, 6);
  });

  test("who tops up a frozen battery warms it first", () => {
    const frost = run({
      dayC: Float64Array.of(-5, -5),
      loadW: steady(10, 10, 10, 10, 10, 10, 10, 10),
      harvest: { kind: "power", watts: new Float64Array(4) },
      topUp: { powerW: 30, hours: 12, untilFull: false },
    });
    expect([...frost.topUps]).toEqual([2, 1]);
  });

  test("all kinds of loss are added up", () => {
    // Charge 50 Wh short of full at 80 %: 62.5 in for 50 kept; drawing 10 W x 6 h at 90 %: 66.67 out for 60.
    const lossy = run({
      battery: { chargeShare: 0.8, dischargeShare: 0.9 },
      harvest: { kind: "power", watts: Float64Array.of(20, 0, 0, 0) },
      loadW: steady(0, 0, 0, 10, 0, 0, 0, 0),
    });
    expect(lossy.lostWh[0]).toBeCloseTo(12.5 + 60 / 0.9 - 60, 9);
    const heated = run({ battery: { heaterW: 2 }, dayC: Float64Array.of(-5, -5) });
    // Two steps of six hours with light over.
    expect(heated.lostWh[0]).toBeCloseTo(2 * 12, 9);
    // 1 % an hour for 24 hours leaves exp(-0.24) of 50 Wh.
    const leaking = run({
      battery: { selfDischargePerHour: 0.01 },
      harvest: { kind: "power", watts: new Float64Array(4) },
    });
    expect(leaking.lostWh[0]).toBeCloseTo(50 * (1 - Math.exp(-0.24)), 9);
    // Every kind of loss by itself closes the season's books: rounding alone is left.
    const own = run({ ownW: 1 });
    const drawn = run({ loadW: steady(0, 0, 0, 10, 0, 0, 0, 0), battery: { dischargeShare: 0.9 } });
    for (const { residual } of [lossy, heated, leaking, own, drawn])
      expect(Math.abs(residual)).toBeLessThan(1e-12);
  });

  test("a load cut-off that waits keeps loads off until the charge is back, day and night", () => {
    const loads = steady(10, 10, 10, 10, 10, 10, 10, 10);
    // 50 Wh: 10 W x 6 h at night empty it, 10 short. Lit steps bring 60 and 30 Wh. Without a cut-off they feed the loads.
    const harvest: Harvest = { kind: "power", watts: Float64Array.of(10, 10, 10, 10) };
    const plain = run({ loadW: loads, harvest });
    expect([...plain.shortWh]).toEqual([10 + 0 + 30 + 60, 60 + 0 + 0 + 60]);
    // With one that waits for 80 Wh: off through both lit steps (60, 90 stored), back on for the night, which takes 60 of 90;
    // the next night finds 30, goes off; 60 + 60 bring it back after the second lit step.
    const waits = run({ loadW: loads, harvest, cutOff: { backAtWh: 80, backAtV: Number.POSITIVE_INFINITY } });
    expect([...waits.shortWh]).toEqual([10 + 60 + 60 + 0, 30 + 60 + 60 + 0]);
    expect([...waits.usedWh]).toEqual([50 + 60, 30 + 60]);
    expect(waits.residual).toBe(0);
    // Nothing above the floor to begin with: off from the start.
    const empty = run({
      loadW: loads,
      harvest,
      battery: { startWh: 0 },
      cutOff: { backAtWh: 80, backAtV: Number.POSITIVE_INFINITY },
    });
    expect(empty.usedWh[0]).toBe(60);
  });

  test("a cut-off by voltage sees the charging current at the terminals", () => {
    const loads = steady(10, 10, 10, 10, 10, 10, 10, 10);
    const harvest: Harvest = { kind: "power", watts: Float64Array.of(12, 0, 0, 0) };
    // 12 W at 12 V are 1 A: over 0.5 ohm the terminals stand at 12.5 V, at rest again 12 V.
    const back = (backAtV: number) =>
      run({
        loadW: loads,
        harvest,
        battery: { startWh: 0, chargeOhm: 0.5 },
        cutOff: { backAtWh: Number.POSITIVE_INFINITY, backAtV },
      }).usedWh[0];
    expect(back(12.49)).toBeGreaterThan(0);
    expect(back(12.51)).toBe(0);
  });

  test("a harvest of current comes in at the battery's voltage, each row from its own nodes", () => {
    const amps = new Float64Array(4 * 11);
    amps.fill(0.5, 0, 11);
    amps.fill(0.25, 22, 33);
    const days = run({ harvest: { kind: "current", nodes: 11, amps }, battery: { usableWh: 1000 } });
    // 0.5 A x 12 V x 6 h on the first day, half of that on the second.
    expect(days.offeredWh[0]).toBeCloseTo(36, 6);
    expect(days.offeredWh[1]).toBeCloseTo(18, 6);
    const half = run({
      harvest: { kind: "current", nodes: 11, amps: amps.map((_, at) => (at >= 11 && at < 22 ? 1 : 0)) },
      battery: { usableWh: 1000 },
    });
    // The second row's step is lit for half of it.
    expect(half.offeredWh[0]).toBeCloseTo(36, 6);
    // A day of its own warmth.
    const cold = run({
      harvest: { kind: "current", nodes: 11, amps: new Float64Array(44).fill(0.1) },
      dayC: Float64Array.of(20, -5),
      battery: { usableWh: 1000 },
    });
    expect(cold.curtailedWh[0]).toBeCloseTo(0, 9);
    expect(cold.curtailedWh[1]).toBeCloseTo(0.1 * 12 * 12, 9);
  });
});

describe("batterySteps", () => {
  const sun = sunColumns(
    { latitudeDeg: 50, longitudeDeg: 8, timeZone: "Europe/Berlin" },
    { from: "2027-03-01", to: "2027-03-02" },
    60,
  );

  test("lays out every hour of every day, with the sun's rows where they belong", () => {
    const steps = batterySteps(sun);
    expect(steps).toMatchObject({ perDay: 24, hours: 1, stepMinutes: 60 });
    // A quarter of an hour after each solar midnight, so that noon is 11.75 steps on.
    expect(steps.startsMs).toEqual(sun.days.map(({ startMs }) => startMs + 900_000));
    expect(steps.noonStep).toBe(11.75);
    expect(steps.row).toHaveLength(48);
    sun.days.forEach(({ first, end, startMs }, day) => {
      const rows = [...steps.row.subarray(24 * day, 24 * (day + 1))];
      expect(rows.filter((row) => row >= 0)).toEqual(
        Array.from({ length: end - first }, (_, at) => first + at),
      );
      rows.forEach((row, at) => {
        if (row < 0) return;
        expect(sun.timeMs[row]).toBeGreaterThanOrEqual(startMs + 900_000 + at * 3_600_000);
        expect(sun.timeMs[row]).toBeLessThan(startMs + 900_000 + (at + 1) * 3_600_000);
      });
    });
  });

  // The sun's steps begin a quarter of a step after solar midnight; a battery's must not begin elsewhere, or a short first
  // row of the morning falls into the same step as the next one and is lost.
  test.each([
    [53.5, 60],
    [53.5, 10],
    [-43, 30],
    [66.4, 60],
    [90, 60],
  ])("no row is lost at latitude %d in steps of %d minutes", (latitudeDeg, stepMinutes) => {
    const season = sunColumns(
      { latitudeDeg, longitudeDeg: 8.6, timeZone: "Europe/Berlin" },
      { from: "2027-03-01", to: "2027-04-30" },
      stepMinutes,
    );
    const steps = batterySteps(season);
    const placed = [...steps.row].filter((row) => row >= 0);
    expect(placed).toEqual(Array.from({ length: season.length }, (_, row) => row));
    const lit = placed.reduce((sum, row) => sum + steps.litShare[row] * steps.hours, 0);
    expect(lit).toBeCloseTo(
      season.hours.reduce((sum, hours) => sum + hours, 0),
      9,
    );
  });

  test("where the sun dips within a step the longer of its two rows is kept", () => {
    const [day] = sun.days;
    const { first } = day;
    const twice = { ...sun, days: [day], timeMs: sun.timeMs.slice(), hours: sun.hours.slice() };
    twice.timeMs[first] = twice.timeMs[first + 1];
    twice.hours[first] = 0.25;
    expect([...batterySteps(twice).row]).not.toContain(first);
    twice.hours[first + 1] = 0.2;
    expect([...batterySteps(twice).row]).not.toContain(first + 1);
  });

  test("a step at sunrise is lit for its part", () => {
    const { litShare } = batterySteps(sun);
    const [{ first }] = sun.days;
    expect(litShare[first]).toBeCloseTo(sun.hours[first], 12);
    expect(litShare[first]).toBeLessThan(1);
    expect(litShare[first + 3]).toBe(1);
    const half = batterySteps({ ...sun, stepMinutes: 30, hours: sun.hours.map((hours) => hours / 2) });
    expect(half).toMatchObject({ perDay: 48, hours: 0.5 });
    expect(half.litShare[first]).toBeCloseTo(sun.hours[first], 12);
  });

  test("a row a hair past either end of its day stays within it", () => {
    const [day] = sun.days;
    const moved = { ...sun, days: [day], timeMs: sun.timeMs.slice() };
    moved.timeMs[day.first] = day.startMs - 1;
    moved.timeMs[day.end - 1] = day.startMs + 86_400_000;
    const { row } = batterySteps(moved);
    expect(row).toHaveLength(24);
    expect(row[0]).toBe(day.first);
    expect(row[23]).toBe(day.end - 1);
  });
});

describe("airOfDays", () => {
  const day = (first: number, end: number, month: number): SeasonDay => ({
    date: "2027-01-01",
    dayOfYear: 1,
    month,
    first,
    end,
    startMs: 0,
    noonMs: 0,
    noonAltitudeDeg: 0,
    sunHours: 0,
  });
  const sun = sunColumns(
    { latitudeDeg: 0, longitudeDeg: 0, timeZone: "UTC" },
    { from: "2027-01-01", to: "2027-01-01" },
    60,
  );
  const air = { ...emptySkyColumns(4), airC: Float64Array.of(1, 3, 10, 20) };

  test("is the mean of the sunlit steps, in the dark what the plan says of the month", () => {
    const days = { ...sun, days: [day(0, 2, 1), day(2, 2, 12), day(2, 4, 2)] };
    const months = Array.from({ length: 12 }, (_, month) => 100 + month);
    expect([...airOfDays(days, air, months)]).toEqual([2, 111, 15]);
    expect([...airOfDays(days, air, 7)]).toEqual([2, 7, 15]);
  });
});

describe("outcomeOfDays, by hand", () => {
  const calendar: readonly SeasonDay[] = [
    "2027-06-01",
    "2027-06-02",
    "2027-06-03",
    "2027-06-04",
    "2027-06-05",
  ].map((date, at) => ({
    date,
    dayOfYear: 152 + at,
    month: 6,
    first: 0,
    end: 0,
    startMs: 0,
    noonMs: 0,
    noonAltitudeDeg: 0,
    sunHours: 0,
  }));
  const column = (...values: readonly number[]): Float64Array => Float64Array.from(values);
  const days: BatteryDays = {
    offeredWh: column(10, 10, 10, 110, 100),
    wantedWh: column(20, 20, 20, 90, 90),
    usedWh: column(20, 20, 19, 90, 89.5),
    shortWh: column(0, 0, 1, 0, 0.5),
    curtailedWh: column(0, 0, 0, 7, 8),
    lostWh: column(1, 2, 3, 20, 10),
    tooColdWh: column(0, 0.9, 1, 3, 0),
    toppedUpWh: column(0, 0, 40, 0, 0),
    topUps: column(0, 0, 1, 1, 0),
    topUpHours: column(0, 0, 2, 3, 0),
    lowest: column(0.9, 0.5, 0.2, 0.3, 0.4),
    atEnd: column(0, 0, 0, 0, 0),
    fullAfterNoonH: column(Number.NaN, -2, 0.5, 0.6, Number.NaN),
    residual: 1e-15,
  };

  test("counts short days from one watt-hour, and days full by half an hour past noon", () => {
    expect(outcomeOfDays(calendar, days)).toEqual({
      shortDays: 1,
      // Two bad days before the short one; the fourth just breaks even.
      longestBadRunSurvived: 2,
      firstShort: "2027-06-03",
      wantedWh: 240,
      usedWh: 238.5,
      shortWh: 1.5,
      offeredWh: 240,
      curtailedWh: 15,
      lostWh: 36,
      topUps: 2,
      topUpHours: 5,
      toppedUpWh: 40,
      blockedDays: 2,
      tooColdWh: 4.9,
      lowest: 0.2,
      fullByNoonDays: 2,
      longestWithoutFull: 1,
      residual: 1e-15,
    });
  });

  test("a season without a short day names none, and its first day may be one", () => {
    expect(outcomeOfDays(calendar, { ...days, shortWh: column(0, 0, 0, 0, 0.99) })).toMatchObject({
      shortDays: 0,
      firstShort: null,
      longestBadRunSurvived: 3,
    });
    expect(outcomeOfDays(calendar, { ...days, shortWh: column(5, 0, 0, 0, 0) }).firstShort).toBe(
      "2027-06-01",
    );
  });

  test("losses count: a day that brings what the loads want, but not the losses, is a bad one", () => {
    const even = { ...days, offeredWh: column(20, 20, 20, 90, 90), shortWh: column(0, 0, 0, 0, 0) };
    expect(outcomeOfDays(calendar, even).longestBadRunSurvived).toBe(5);
    expect(outcomeOfDays(calendar, { ...even, lostWh: column(0, 0, 1, 1, 0) }).longestBadRunSurvived).toBe(2);
  });
});
