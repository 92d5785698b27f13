import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import { applianceDayWh, coolingDuty, dayLoadWh, loadColumns } from "../../lib/circuit/index.ts";
import { clockOfMinutes } from "../../lib/plan/clock.ts";
import { type Loads, loadsSchema, WEEKDAYS } from "../../lib/plan/loads.ts";

const loads = (...appliances: readonly object[]): Loads => loadsSchema.parse({ appliances });

const HOUR_MS = 3_600_000;
const sum = (column: Float64Array): number => column.reduce((total, value) => total + value, 0);

/** Days of 24 hours from midnight UTC, hourly. */
const daysFrom = (date: string, days: number, stepMinutes = 60) => ({
  startsMs: Array.from({ length: days }, (_, day) => Date.parse(date) + day * 24 * HOUR_MS),
  stepMinutes,
});

describe("loadColumns", () => {
  test("clock times are those of the site's zone: 18:00 to 21:30 in Berlin's summer is 16:00 to 19:30 UTC", () => {
    const lamp = loads({
      name: "lamp",
      watts: 10,
      use: { kind: "at-times", times: [{ from: "18:00", to: "21:30" }] },
    });
    const { steadyW, cooling } = loadColumns(lamp, daysFrom("2027-06-21", 1), "Europe/Berlin");
    expect(cooling).toEqual([]);
    expect(Array.from(steadyW.subarray(15, 21))).toEqual([0, 10, 10, 10, 5, 0]);
    expect(sum(steadyW)).toBeCloseTo(35, 9);
  });

  test("a window over midnight belongs to the day it begins on, and reaches into the first step of a season", () => {
    const pump = loads({
      name: "pump",
      watts: 60,
      use: { kind: "at-times", times: [{ from: "23:30", to: "01:00" }] },
      days: ["sat"],
    });
    // 2027-06-19 is a Saturday.
    const { steadyW } = loadColumns(pump, daysFrom("2027-06-19", 3), "Etc/UTC");
    expect(steadyW[23]).toBeCloseTo(30, 9);
    expect(steadyW[24]).toBeCloseTo(60, 9);
    expect(sum(steadyW)).toBeCloseTo(90, 9);
    const sunday = loadColumns(pump, daysFrom("2027-06-20", 1), "Etc/UTC");
    expect(sunday.steadyW[0]).toBeCloseTo(60, 9);
  });

  test("weekdays are those of the site: late on Sunday in Auckland is still Sunday noon in UTC", () => {
    const lamp = loads({
      name: "lamp",
      watts: 10,
      use: { kind: "at-times", times: [{ from: "22:00", to: "24:00" }] },
      days: ["sun"],
    });
    // 22:00 on Sunday 2027-06-20 in Auckland (UTC+12) is 10:00 UTC.
    const { steadyW } = loadColumns(lamp, daysFrom("2027-06-20", 1), "Pacific/Auckland");
    expect(steadyW[10]).toBe(10);
    expect(sum(steadyW)).toBeCloseTo(20, 9);
  });

  test("a window over the change of clocks is an hour shorter in spring and longer in autumn", () => {
    const heater = loads({
      name: "fan",
      watts: 1,
      use: { kind: "at-times", times: [{ from: "00:00", to: "06:00" }] },
    });
    const spring = loadColumns(heater, daysFrom("2027-03-28", 1), "Europe/Berlin");
    const autumn = loadColumns(heater, daysFrom("2027-10-31", 1), "Europe/Berlin");
    // Berlin's midnight is 23:00 UTC in winter, 22:00 in summer; the part before the day's start is not in the grid.
    expect(sum(spring.steadyW.subarray(0, 12))).toBeCloseTo(4, 9);
    expect(sum(autumn.steadyW.subarray(0, 12))).toBeCloseTo(5, 9);
  });

  test("hours of use are spread over their part of the day, and energy is the same at any step", () => {
    const laptop = loads({
      name: "laptop",
      watts: 60,
      use: { kind: "for-hours", hours: 2, between: { from: "09:00", to: "21:00" } },
    });
    for (const stepMinutes of [10, 15, 60]) {
      const { steadyW } = loadColumns(laptop, daysFrom("2027-06-21", 2, stepMinutes), "Europe/Lisbon");
      expect((sum(steadyW) * stepMinutes) / 60).toBeCloseTo(240, 9);
      expect(Math.max(...steadyW)).toBeCloseTo(10, 9);
    }
  });

  test("days whose starts drift, as solar days do, keep the clock", () => {
    const lamp = loads({
      name: "lamp",
      watts: 10,
      use: { kind: "at-times", times: [{ from: "12:00", to: "13:00" }] },
    });
    const startsMs = [0, 1, 2].map(
      (day) => Date.parse("2027-02-01") + day * (24 * HOUR_MS + 20_000) + 900_000,
    );
    const { steadyW } = loadColumns(lamp, { startsMs, stepMinutes: 60 }, "Etc/UTC");
    expect(steadyW[11]).toBeCloseTo(2.5, 6);
    expect(steadyW[12]).toBeCloseTo(7.5, 6);
    // A day later the step ends 20 s later on the clock: 920 s of 3600.
    expect(steadyW[24 + 11]).toBeCloseTo(2.5556, 4);
    expect(steadyW[48 + 11]).toBeCloseTo(2.6111, 4);
    expect(sum(steadyW)).toBeCloseTo(30, 9);
  });

  test("are what a clock on the wall says, quarter of an hour by quarter, in any zone, on any weekdays", () => {
    const anyClock = fc.integer({ min: 0, max: 95 });
    fc.assert(
      fc.property(
        // Zones whose clocks stay, and one whose clocks go forward on 28 March 2027 between 02:00 and 03:00.
        fc.constantFrom("Etc/UTC", "Pacific/Kiritimati", "Pacific/Niue", "Asia/Kathmandu", "Europe/Berlin"),
        fc.tuple(anyClock, anyClock).filter(([from, to]) => from !== to),
        fc.subarray([...WEEKDAYS], { minLength: 1 }),
        fc.integer({ min: -48, max: 48 }),
        (timeZone, [fromQuarter, toQuarter], days, shift) => {
          const inChange = (quarter: number) => quarter >= 8 && quarter < 12;
          fc.pre(timeZone !== "Europe/Berlin" || !(inChange(fromQuarter) || inChange(toQuarter)));
          const lamp = loads({
            name: "lamp",
            watts: 8,
            howMany: 2,
            use: {
              kind: "at-times",
              times: [{ from: clockOfMinutes(15 * fromQuarter), to: clockOfMinutes(15 * toQuarter) }],
            },
            days,
          });
          const { startsMs } = daysFrom("2027-03-24", 9);
          const starts = startsMs.map((ms) => ms + shift * 900_000);
          const { steadyW, length } = loadColumns(lamp, { startsMs: starts, stepMinutes: 15 }, timeZone);
          expect(length).toBe(9 * 96);
          expect(steadyW).toHaveLength(length);
          const wrong: number[] = [];
          for (let step = 0; step < length; step += 1) {
            const now = Temporal.Instant.fromEpochMilliseconds(starts[0] + step * 900_000).toZonedDateTimeISO(
              timeZone,
            );
            const quarter = 4 * now.hour + now.minute / 15;
            const overMidnight = toQuarter < fromQuarter;
            const sinceYesterday = overMidnight && quarter < toQuarter;
            const on = sinceYesterday || (quarter >= fromQuarter && (overMidnight || quarter < toQuarter));
            const begun = sinceYesterday ? now.subtract({ days: 1 }) : now;
            const wanted = on && days.includes(WEEKDAYS[begun.dayOfWeek - 1]) ? 16 : 0;
            if (Math.abs(steadyW[step] - wanted) > 1e-9) wrong.push(step);
          }
          expect(wrong).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });

  test("several uses add up, and an appliance on the inverter costs its loss and its own draw", () => {
    const list = loads(
      {
        name: "lamp",
        watts: 10,
        use: {
          kind: "at-times",
          times: [
            { from: "06:00", to: "08:00" },
            { from: "07:00", to: "09:00" },
          ],
        },
      },
      {
        name: "laptop",
        watts: 44,
        howMany: 2,
        supply: "inverter",
        use: { kind: "for-hours", hours: 1, between: { from: "07:00", to: "09:00" } },
      },
      { name: "clock", watts: 0, supply: "inverter", use: { kind: "for-hours", hours: 24 } },
    );
    const { steadyW } = loadColumns(list, daysFrom("2027-06-21", 1), "Etc/UTC");
    // 88 W / 0.88 + 6 W, half of the time.
    expect(Array.from(steadyW.subarray(5, 10))).toEqual([0, 10, 20 + 53, 10 + 53, 0]);
    expect(dayLoadWh(list, "mon", 20)).toBeCloseTo(40 + 106, 9);
  });

  test("an inverter left on draws day and night, once, whatever runs on it", () => {
    const list = loadsSchema.parse({
      inverterOn: "all-day",
      inverterOwnW: 8,
      appliances: [
        { name: "laptop", watts: 88, supply: "inverter", use: { kind: "for-hours", hours: 3 } },
        { name: "lamp", watts: 10, use: { kind: "for-hours", hours: 2 } },
      ],
    });
    const { steadyW } = loadColumns(list, daysFrom("2027-06-21", 2), "Etc/UTC");
    // 8 W for 24 h, 100 W for 3 h, 10 W for 2 h: a day.
    expect(sum(steadyW)).toBeCloseTo(2 * (192 + 300 + 20), 6);
    expect(dayLoadWh(list, "mon", 20)).toBeCloseTo(512, 9);
    expect(applianceDayWh(list.appliances[0], list, 20)).toBeCloseTo(300, 9);
    // On with its loads only: 8 W for the three hours of the laptop.
    const saving = { ...list, inverterOn: "with-its-loads" as const };
    expect(dayLoadWh(saving, "mon", 20)).toBeCloseTo(24 + 300 + 20, 9);
  });

  test("no day, no step", () => {
    const lamp = loads({ name: "lamp", watts: 10, use: { kind: "for-hours", hours: 24 } });
    expect(loadColumns(lamp, { startsMs: [], stepMinutes: 60 }, "Etc/UTC").length).toBe(0);
  });

  test("coolers are kept apart, because they follow the air", () => {
    const fridge = loads({ name: "fridge", watts: 40, use: { kind: "cooling", dutyPct: 30, roomC: 25 } });
    const { steadyW, cooling } = loadColumns(fridge, daysFrom("2027-06-21", 1), "Etc/UTC");
    expect(sum(steadyW)).toBe(0);
    expect(sum(cooling[0].runningW)).toBeCloseTo(960, 9);
    expect(cooling[0].duty(-10)).toBeCloseTo(0.3, 12);
    const weekend = loads({ name: "box", watts: 40, use: { kind: "cooling" }, days: ["sat"] });
    const box = loadColumns(weekend, daysFrom("2027-06-18", 3), "Etc/UTC").cooling[0];
    expect([0, 24, 48].map((step) => box.runningW[step])).toEqual([0, 40, 0]);
    // 35 % at 25 degC with 5 degC inside: 17.5 % at 15 degC.
    expect(box.duty(15)).toBeCloseTo(0.175, 12);
  });

  test("no appliance, no load", () => {
    expect(sum(loadColumns(loads(), daysFrom("2027-06-21", 2), "Etc/UTC").steadyW)).toBe(0);
  });
});

describe("coolingDuty", () => {
  const use = { kind: "cooling" as const, dutyPct: 40, statedAtC: 25, insideC: 5 };

  test("goes with the difference of temperatures: half of 20 K is half the duty", () => {
    expect(coolingDuty(use, 25)).toBeCloseTo(0.4, 12);
    expect(coolingDuty(use, 15)).toBeCloseTo(0.2, 12);
  });

  test("never below nothing or above always", () => {
    expect(coolingDuty(use, -20)).toBe(0);
    expect(coolingDuty(use, 90)).toBe(1);
  });
});

describe("dayLoadWh", () => {
  test("a worked list: 4 h x 12 W, 2 h x 50 W through an 88 % inverter that draws 6 W, a fridge of 45 W at 35 %", () => {
    const list = loads(
      { name: "light", watts: 12, use: { kind: "at-times", times: [{ from: "19:00", to: "23:00" }] } },
      { name: "laptop", watts: 50, supply: "inverter", use: { kind: "for-hours", hours: 2 } },
      { name: "fridge", watts: 45, use: { kind: "cooling" } },
    );
    const expected = 48 + (50 / 0.88 + 6) * 2 + 45 * 0.35 * 24;
    expect(dayLoadWh(list, "wed", 25)).toBeCloseTo(expected, 9);
    expect(applianceDayWh(list.appliances[0], list, 25)).toBe(48);
  });

  test("only on the days stated", () => {
    const saw = loads({
      name: "saw",
      watts: 500,
      use: { kind: "for-hours", hours: 1 },
      days: ["sat", "sun"],
    });
    expect(dayLoadWh(saw, "fri", 20)).toBe(0);
    expect(dayLoadWh(saw, "sun", 20)).toBeCloseTo(500, 9);
  });
});
