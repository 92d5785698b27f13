import { describe, expect, test } from "vitest";
import { batteryModel } from "../../../lib/circuit/battery.ts";
import { loadCutOffOf } from "../../../lib/circuit/load-cut-off.ts";
import { loadColumns } from "../../../lib/circuit/loads.ts";
import { topUpBy } from "../../../lib/circuit/top-up.ts";
import { type Plan, type PlanInput, readPlan } from "../../../lib/plan/index.ts";
import { type BatteryDays, emptyBatteryDays, runBattery } from "../../../lib/season/battery/battery-run.ts";
import { batterySteps } from "../../../lib/season/battery/battery-steps.ts";
import { harvestsOf } from "../../../lib/season/battery/harvests.ts";
import { surroundingsOf } from "../../../lib/season/battery/surroundings.ts";
import { todayOf } from "../../../lib/season/battery/today.ts";
import { skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { skySource } from "../../../lib/season/light/sky-source.ts";

/*
 * Ten days of December lived through twice: by the library, hour by hour in closed form, and by a plain stepper of six
 * seconds that shares no code with it. The stepper is given what the controller could put out in each hour, and nothing
 * else: it reads the air off the same file, warms and cools the battery, keeps its books, and obeys the stated rules of blocked
 * charging, load cut-off and topping up. Invented days: this checks the living, not the light.
 */

const FROM = Date.parse("2027-12-01T00:00Z");
const HOUR_MS = 3_600_000;
const DAYS = 10;

/** A cold spell that comes and goes, hour by hour; days of sun and days without. */
const airAt = (hour: number): number =>
  1.5 - 5 * Math.sin((2 * Math.PI * hour) / (24 * 7)) + 4 * Math.sin((2 * Math.PI * (hour - 9)) / 24);
const lightAt = (hour: number): number =>
  Math.max(0, Math.sin((Math.PI * ((hour % 24) + 0.5 - 8)) / 8)) *
  330 *
  [1, 0.2, 0.9, 0.1, 0.15, 1, 0.7, 0.05, 0.9, 1, 0.5, 0.6][Math.floor(hour / 24) % 12];
const HOURS = Array.from({ length: 24 * (DAYS + 2) }, (_, at) => at - 24);
const stamp = (hour: number): string => new Date(FROM + (hour + 1) * HOUR_MS).toISOString().slice(0, 16);
const WEATHER = [
  "time_utc,ghi_W_m2,air_degC",
  ...HOURS.map((hour) => `${stamp(hour)}Z,${lightAt(hour + 24).toFixed(3)},${airAt(hour).toFixed(4)}`),
].join("\n");
const AIR = HOURS.map((hour) => Number(airAt(hour).toFixed(4)));

const planOf = (changes: Partial<PlanInput>): Plan =>
  readPlan({
    site: { latitudeDeg: 40, longitudeDeg: 0, timeZone: "UTC", elevationM: 0 },
    season: { from: "2027-12-01", to: "2027-12-10", stepMinutes: 60 },
    sky: { source: "weather", file: "invented.csv", checkClock: false },
    panels: [
      { name: "flat", module: { powerW: 150 }, mount: { kind: "fixed", tiltDeg: 45, bearingDeg: 180 } },
    ],
    circuit: { controller: { kind: "mppt", maxCurrentA: 10 } },
    battery: { chemistry: "LiFePO4", capacityAh: 30, stands: "outside", startPct: 70 },
    loads: {
      appliances: [
        { name: "lamp", watts: 14, use: { kind: "at-times", times: [{ from: "16:30", to: "23:00" }] } },
        { name: "logger", watts: 5, use: { kind: "for-hours", hours: 24 } },
      ],
    },
    ...changes,
  });

/** By the library. */
const lived = (plan: Plan) => {
  const skies = skiesOfPlan(plan, WEATHER);
  const source = skySource(plan, skies);
  const { asIs } = todayOf(plan, skies.skies);
  const battery = batteryModel(plan.battery);
  const steps = batterySteps(source.sun);
  const harvests = harvestsOf(source, [asIs], [battery]);
  const [harvest] = harvests.under(0);
  if (harvest.kind !== "power") throw new Error("expected watts");
  const loads = loadColumns(plan.loads, steps, plan.site.timeZone);
  const [round] = surroundingsOf(source, steps, [{ battery: plan.battery, loads }], plan.air.temperatureC)(0);
  const { inUse } = plan.worth.instead;
  const days = runBattery(
    {
      battery,
      ownW: harvests.harvesters[0].ownW,
      cutOff: loadCutOffOf(plan.circuit, battery),
      topUp: inUse === undefined ? null : topUpBy(inUse, plan.worth, battery),
    },
    steps,
    harvest,
    round,
    emptyBatteryDays(DAYS),
  );
  const offered = Array.from(steps.row, (row) => (row < 0 ? 0 : harvest.watts[row] * steps.litShare[row]));
  return { days, offered, startsMs: steps.startsMs };
};

interface Rules {
  readonly chargeAboveC: number;
  readonly reconnectPct: number | null;
  readonly plug: { readonly watts: number; readonly hours: number; readonly untilFull: boolean } | null;
}

interface Told {
  used: number;
  short: number;
  blocked: number;
  toppedUp: number;
  topUps: number;
  stored: number;
}

// The figures of the plan above, written out: 30 Ah at 12.8 V, nine tenths of it used, 97 % in and 98 % out, half the capacity an
// hour, a taper of six minutes, 2 % a month.
const CAPACITY = 30 * 12.8;
const USABLE = 0.9 * CAPACITY;
const [IN, OUT, TAPER_H, MOST_IN_W, OWN_W] = [0.97, 0.98, 0.1, CAPACITY / 2, 0.25];
const LEAK_PER_H = -Math.log(0.98) / 730;
const FOLLOWS_H = 2;

const capacityAt = (c: number): number => {
  if (c >= 20) return 1;
  if (c >= 0) return 0.9 + (0.1 * c) / 20;
  if (c >= -10) return 0.8 + (0.1 * (c + 10)) / 10;
  return c >= -20 ? 0.65 + (0.15 * (c + 20)) / 10 : 0.65;
};

/** By the plain stepper. */
const replayed = (offered: readonly number[], startsMs: readonly number[], rules: Rules): readonly Told[] => {
  const timeOf = (hour: number): number => startsMs[Math.floor(hour / 24)] + (hour % 24) * HOUR_MS;
  /** Straight between the middles of the file's hours. */
  const air = (ms: number): number => {
    const at = (ms - FROM) / HOUR_MS + 24 - 0.5;
    const lower = Math.floor(at);
    return AIR[lower] + (at - lower) * (AIR[lower + 1] - AIR[lower]);
  };
  const lampShare = (ms: number): number => {
    const into = ((ms % 86_400_000) + 86_400_000) % 86_400_000;
    const [on, off] = [16.5 * HOUR_MS, 23 * HOUR_MS];
    return Math.max(0, Math.min(off, into + HOUR_MS) - Math.max(on, into)) / HOUR_MS;
  };
  const airs = Array.from({ length: 24 * DAYS }, (_, hour) => air(timeOf(hour) + HOUR_MS / 2));
  let batteryC = airs.slice(0, 24).reduce((sum, c) => sum + c, 0) / 24;
  let stored = 0.7 * CAPACITY - (CAPACITY - USABLE);
  let off = false;
  let plugged = 0;

  const STEPS = 600;
  const h = 1 / STEPS;
  /** An hour in steps of six seconds. What the cold blocks is what the hour would have filled in, had it been warm. */
  const hour = (
    start: number,
    sunW: number,
    plugW: number,
    loadW: number,
    tooCold: boolean,
    full: number,
  ) => {
    const told = { used: 0, short: 0, blocked: 0, toppedUp: 0, stored: start };
    let unused = 0;
    for (let i = 0; i < STEPS; i += 1) {
      told.stored -= told.stored * LEAK_PER_H * h;
      const over = sunW + plugW - loadW - OWN_W;
      if (over >= 0) {
        const would =
          Math.max(
            0,
            Math.min(IN * Math.min(over, MOST_IN_W), (full - told.stored - IN * told.blocked) / TAPER_H),
          ) * h;
        if (tooCold) told.blocked += would / IN;
        else told.stored += would;
        unused += over * h - (tooCold ? 0 : would / IN);
        told.used += loadW * h;
      } else {
        const drawn = Math.min(told.stored, (-over * h) / OUT);
        told.stored -= drawn;
        const got = Math.max(0, (sunW + plugW) * h + drawn * OUT - OWN_W * h);
        told.used += Math.min(got, loadW * h);
        told.short += loadW * h - Math.min(got, loadW * h);
      }
    }
    // Settled by the hour, as the library's books are: the sun is taken first.
    told.toppedUp = plugW - Math.min(unused, plugW);
    return told;
  };

  return Array.from({ length: DAYS }, (_, day): Told => {
    const sum: Told = { used: 0, short: 0, blocked: 0, toppedUp: 0, topUps: 0, stored: 0 };
    for (let at = 24 * day; at < 24 * (day + 1); at += 1) {
      batteryC += (1 - Math.exp(-1 / FOLLOWS_H)) * (airs[at] - batteryC);
      const full = USABLE * capacityAt(batteryC);
      let tooCold = batteryC < rules.chargeAboveC;
      const wantedW = 5 + 14 * lampShare(timeOf(at));
      let loadW = off ? 0 : wantedW;
      let plugW = 0;
      if (rules.plug !== null) {
        if (plugged === 0 && hour(stored, offered[at], 0, loadW, tooCold, full).stored < 1e-9) {
          plugged = rules.plug.hours;
          sum.topUps += 1;
        }
        if (plugged > 0) {
          plugW = rules.plug.watts * Math.min(1, plugged);
          plugged = Math.max(0, plugged - 1);
          tooCold = false;
          off = false;
          loadW = wantedW;
        }
      }
      const told = hour(stored, offered[at], plugW, loadW, tooCold, full);
      stored = told.stored;
      if (rules.plug?.untilFull === true && stored >= 0.98 * full) plugged = 0;
      sum.used += told.used;
      sum.short += told.short;
      // What a cut-off keeps off asked for it nevertheless.
      if (rules.reconnectPct !== null) {
        if (off) {
          sum.short += wantedW;
          off = stored < (rules.reconnectPct / 100) * CAPACITY - (CAPACITY - USABLE);
        } else off = stored < 1e-9;
      }
      sum.blocked += told.blocked;
      sum.toppedUp += told.toppedUp;
    }
    return { ...sum, stored };
  });
};

const RULES: Rules = { chargeAboveC: 0, reconnectPct: null, plug: null };

/** Watt-hours a day by which the two may differ. */
const CLOSE_WH = 0.5;

const expectAlike = (days: BatteryDays, told: readonly Told[]): void => {
  told.forEach((one, day) => {
    const endWh = days.atEnd[day] * CAPACITY - (CAPACITY - USABLE);
    for (const [name, ours, theirs] of [
      ["used", days.usedWh[day], one.used],
      ["short", days.shortWh[day], one.short],
      ["too cold", days.tooColdWh[day], one.blocked],
      ["topped up", days.toppedUpWh[day], one.toppedUp],
      ["stored", endWh, one.stored],
    ] as const)
      expect(
        Math.abs(ours - theirs),
        `day ${day + 1}: ${name} ${ours.toFixed(2)}, replayed ${theirs.toFixed(2)}`,
      ).toBeLessThan(CLOSE_WH);
    expect(days.topUps[day]).toBe(one.topUps);
  });
};

const sum = (told: readonly Told[], of: keyof Told): number =>
  told.reduce((total, one) => total + one[of], 0);

describe("ten days replayed by a plain stepper", () => {
  test("charging blocked by the cold, and days that go short of it", () => {
    const { days, offered, startsMs } = lived(planOf({}));
    const told = replayed(offered, startsMs, RULES);
    // Both kinds of day are there.
    expect(told.filter(({ blocked }) => blocked > 1).length).toBeGreaterThan(1);
    expect(told.filter(({ blocked }) => blocked === 0).length).toBeGreaterThan(1);
    expect(sum(told, "short")).toBeGreaterThan(100);
    expectAlike(days, told);
  });

  test("a load cut-off that waits for the charge to recover", () => {
    const plan = planOf({
      circuit: { controller: { kind: "mppt", maxCurrentA: 10 }, loadCutOff: { reconnectPct: 40 } },
    });
    const { days, offered, startsMs } = lived(plan);
    const told = replayed(offered, startsMs, { ...RULES, reconnectPct: 40 });
    expect(sum(told, "short")).toBeGreaterThan(sum(replayed(offered, startsMs, RULES), "short") + 20);
    expectAlike(days, told);
  });

  test("nights at a hook-up: fewer than the days that were short without them", () => {
    const plan = planOf({ worth: { instead: { inUse: "hook-up", hookUpHours: 10 } } });
    const { days, offered, startsMs } = lived(plan);
    const told = replayed(offered, startsMs, {
      ...RULES,
      plug: { watts: 0.15 * CAPACITY, hours: 10, untilFull: false },
    });
    const shortDays = replayed(offered, startsMs, RULES).filter(({ short }) => short >= 1).length;
    expect(sum(told, "topUps")).toBeGreaterThan(0);
    expect(sum(told, "topUps")).toBeLessThan(shortDays);
    expect(sum(told, "short")).toBeLessThan(CLOSE_WH);
    expectAlike(days, told);
  });

  test("a generator that stops when full, beside a load cut-off", () => {
    const plan = planOf({
      circuit: { controller: { kind: "mppt", maxCurrentA: 10 }, loadCutOff: { reconnectPct: 40 } },
      worth: { instead: { inUse: "generator", generatorHourWh: 120, generatorHours: 2.5 } },
    });
    const { days, offered, startsMs } = lived(plan);
    const told = replayed(offered, startsMs, {
      ...RULES,
      reconnectPct: 40,
      plug: { watts: 120, hours: 2.5, untilFull: true },
    });
    expect(sum(told, "topUps")).toBeGreaterThan(0);
    expectAlike(days, told);
  });
});
