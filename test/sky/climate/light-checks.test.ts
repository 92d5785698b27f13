import { describe, expect, test } from "vitest";
import { monthSuns } from "../../../lib/sky/climate/month-sun.ts";
import type { MonthlyLight } from "../../../lib/sky/climate/station.ts";
import { monthlyClearness, monthlyGlobal } from "../../../lib/sky/climate/station.ts";
import {
  clearnessOfSunshine,
  globalOfSunshine,
  sunshineMonthSpread,
  sunshineShare,
} from "../../../lib/sky/climate/sunshine.ts";
import { isPolarNight, lightProblems } from "../../../lib/sky/climate/table/light-checks.ts";
import { twelve } from "./stations.ts";

const problemsOf = (light: MonthlyLight, latitudeDeg = 54) =>
  lightProblems(light, latitudeDeg, (month) => `month ${month}`);
const ofGlobal = (kWhM2Day: readonly number[], latitudeDeg = 54) =>
  problemsOf({ kind: "global", kWhM2Day }, latitudeDeg);
const ofSunshine = (hours: readonly number[], latitudeDeg = 54) =>
  problemsOf({ kind: "sunshine", hours }, latitudeDeg);
const ofClearness = (index: readonly number[]) => problemsOf({ kind: "clearness", index });

/** A northern year in kWh/m2 a day, and one of sunshine hours. */
const NORTHERN = [0.6, 1.2, 2.5, 3.9, 4.9, 5.3, 5.0, 4.3, 3.0, 1.7, 0.8, 0.5];
const HOURS = [40, 70, 120, 180, 230, 220, 220, 200, 150, 100, 50, 30];

describe("light that can be", () => {
  test("a northern year in each form has nothing to be said against it", () => {
    expect(ofGlobal(NORTHERN)).toEqual([]);
    expect(ofSunshine(HOURS)).toEqual([]);
    expect(ofClearness(twelve(0.5))).toEqual([]);
  });

  test("up to nine tenths of what arrives above the air, and a hair of rounding", () => {
    const most = monthSuns(54).map(({ extraterrestrialKWhM2 }) => 0.9 * extraterrestrialKWhM2);
    expect(ofGlobal(most)).toEqual([]);
    expect(ofGlobal(most.map((value) => value + 0.009))).toEqual([]);
    expect(ofGlobal(most.map((value) => value + 0.011))).toHaveLength(12);
  });
});

describe("global light that can't be", () => {
  test("too bright a month is told with what arrives at all", () => {
    const top = monthSuns(54)[3].extraterrestrialKWhM2;
    expect(ofGlobal(NORTHERN.with(3, 99))).toEqual([
      {
        path: "month 3",
        value: 99,
        allowed: `must be at most ${(0.9 * top).toFixed(2)} kWh/m2 a day; ${top.toFixed(2)} is all that reaches the top of the air at this latitude in that month`,
        hint: "mean of a day, not the sum of a month? latitude right?",
      },
    ]);
  });

  test("megajoules are known by being possible as such", () => {
    const problems = ofGlobal(NORTHERN.map((value) => 3.6 * value));
    expect(problems.length).toBeGreaterThan(6);
    for (const { hint } of problems)
      expect(hint).toBe("these look like MJ/m2 a day: say so, or divide by 3.6");
  });

  test("megajoules are complained of in megajoules", () => {
    const top = 3.6 * monthSuns(54)[3].extraterrestrialKWhM2;
    const light: MonthlyLight = { kind: "global", kWhM2Day: NORTHERN.with(3, 99.9 / 3.6) };
    expect(lightProblems(light, 54, (month) => `month ${month}`, "MJ/m2")).toEqual([
      {
        path: "month 3",
        value: 99.9,
        allowed: `must be at most ${(0.9 * top).toFixed(2)} MJ/m2 a day; ${top.toFixed(2)} is all that reaches the top of the air at this latitude in that month`,
        hint: "mean of a day, not the sum of a month? latitude right?",
      },
    ]);
  });

  test("negative light is told as such, beside what else is wrong", () => {
    expect(ofGlobal(NORTHERN.with(0, -0.1).with(6, 50))).toMatchObject([
      { path: "month 0", value: -0.1, allowed: "must not be negative" },
      { path: "month 6", value: 50 },
    ]);
  });

  test("a year darker than any place: 0.21 of what arrives", () => {
    const bound = monthSuns(54).map(({ extraterrestrialKWhM2 }) => extraterrestrialKWhM2);
    const mean = bound.reduce((sum, value) => sum + value, 0) / 12;
    const share = (of: number) => ofGlobal(bound.map((value) => of * value));
    expect(share(0.211)).toEqual([]);
    expect(share(0.209)).toEqual([
      {
        path: "month 0",
        value: `${(0.209 * mean).toFixed(2)} in the mean of the year`,
        allowed: `must come to more than ${(0.21 * mean).toFixed(2)} kWh/m2 a day over the year; no place is darker`,
        hint: "is the unit kWh/m2 a day?",
      },
    ]);
  });
});

describe("clearness that can't be", () => {
  test.each([0, 0.01])("a year of clearness %s is refused, as the same darkness in kWh is", (index) => {
    expect(ofClearness(new Array(12).fill(index)).map(({ allowed }) => allowed)).toEqual([
      expect.stringMatching(/no place is darker/),
    ]);
  });

  const allowed = "must be a clearness index, 0 to 0.9: no more light than above the air";

  test("above 0.9 or below 0, each month by itself", () => {
    expect(ofClearness(twelve(0.5).with(2, 0.91).with(7, -0.1))).toEqual([
      { path: "month 2", value: 0.91, allowed },
      { path: "month 7", value: -0.1, allowed },
    ]);
    expect(ofClearness(twelve(0.9).with(3, 0))).toEqual([]);
  });

  test("per cent are known by all being so, dark months aside", () => {
    const hint = "these look like per cent: divide by 100";
    expect(ofClearness(twelve(45).with(0, 0).with(1, 100))).toHaveLength(11);
    expect(ofClearness(twelve(45).with(0, 0))[0]).toEqual({ path: "month 1", value: 45, allowed, hint });
    expect(ofClearness(twelve(45).with(0, 0.5))[0].hint).toBeUndefined();
    expect(ofClearness(twelve(45).with(0, 101))[0].hint).toBeUndefined();
    expect(ofClearness(twelve(45).with(0, 1))[1].hint).toBeUndefined();
  });
});

describe("sunshine that can't be", () => {
  test("hours a day given as hours a month", () => {
    const perDay = HOURS.map((hours) => hours / 30);
    expect(ofSunshine(perDay)).toEqual([
      {
        path: "month 0",
        value: perDay[0],
        allowed: "must be hours in the whole month",
        hint: "these look like hours a day: multiply by the days of the month",
      },
    ]);
    // A place that hardly sees the sun is no slip of unit: mean below an hour.
    expect(ofSunshine(twelve(0.9))).toEqual([]);
  });

  test("more than the sun is up, by five per cent and ten grazing hours", () => {
    const { days, dayHours } = monthSuns(54)[5];
    const most = days * dayHours;
    expect(ofSunshine(HOURS.with(5, 1.05 * most + 9.9))).toEqual([]);
    expect(ofSunshine(HOURS.with(5, 1.05 * most + 10.1))).toEqual([
      {
        path: "month 5",
        value: 1.05 * most + 10.1,
        allowed: `must be 0 to ${Math.round(most)} hours; the sun is not up longer in that month`,
        hint: "latitude right? hours of the whole month?",
      },
    ]);
    expect(ofSunshine(HOURS.with(0, -1))).toMatchObject([{ path: "month 0", value: -1 }]);
  });
});

describe("months that are missing", () => {
  test("are told one by one, and so is a thirteenth", () => {
    const allowed = "must be a number: twelve months are needed, January first";
    expect(ofGlobal(NORTHERN.slice(0, 11))).toEqual([{ path: "month 11", value: undefined, allowed }]);
    expect(
      ofGlobal(NORTHERN.with(4, Number.NaN).with(8, Number.POSITIVE_INFINITY)).map(({ path }) => path),
    ).toEqual(["month 4", "month 8"]);
    expect(ofGlobal([...NORTHERN, 7])).toEqual([
      { path: "month 12", value: 7, allowed: "must be the last of twelve months" },
    ]);
  });
});

describe("the seasons of the other half of the Earth", () => {
  const southern = [...NORTHERN.slice(6), ...NORTHERN.slice(0, 6)].map((value) => 0.4 * value + 1.5);

  test("are told with what they follow", () => {
    expect(ofGlobal(southern, 34)).toEqual([
      {
        path: "month 0",
        value: southern[0],
        allowed: "must follow the northern seasons at latitude 34",
        hint: "the bright months are those of the southern half of the Earth: is the latitude's sign right, are the months January first?",
      },
    ]);
    const northern = NORTHERN.map((value) => 0.4 * value + 1.5);
    expect(ofGlobal(northern, -34)[0]).toMatchObject({
      allowed: "must follow the southern seasons at latitude -34",
      hint: expect.stringContaining("those of the northern half"),
    });
    expect(ofGlobal(southern, -34)).toEqual([]);
    const hours = [...HOURS.slice(6), ...HOURS.slice(0, 6)].map((value) => value / 2 + 60);
    expect(ofSunshine(hours, 34)).toHaveLength(1);
  });

  test("are not looked for within 30 degrees of the equator, nor in clearness", () => {
    expect(ofGlobal(southern, 29.9)).toEqual([]);
    expect(ofGlobal(southern, 30)).toHaveLength(1);
    const clearness = monthlyClearness({ kind: "global", kWhM2Day: southern }, 34);
    expect(problemsOf({ kind: "clearness", index: clearness }, 34)).toEqual([]);
  });

  test("a winter-sunny coast runs against its sun and is still believed, down to a correlation of -0.8", () => {
    // Light that follows its own sun by -c and a saw-tooth of its own by the rest: correlation is what it is made to be.
    const sun = monthSuns(40).map(({ extraterrestrialKWhM2 }) => extraterrestrialKWhM2);
    const mean = sun.reduce((sum, value) => sum + value, 0) / 12;
    const scale = Math.sqrt(sun.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 12);
    const against = (c: number) =>
      sun.map((value, month) => {
        const own = month % 2 === 0 ? 1 : -1;
        return 2.7 - 0.25 * (c * ((value - mean) / scale) + Math.sqrt(1 - c * c) * own);
      });
    expect(ofGlobal(against(0.75), 40)).toEqual([]);
    expect(ofGlobal(against(0.85), 40)).toHaveLength(1);
  });
});

describe("monthSuns and polar night", () => {
  test("the sun of a month, against FAO-56", () => {
    // FAO-56 annex 2, table 2.6, 50 N: 41.7 MJ in the middle of June, 8.2 in that of December (from memory; months here).
    const suns = monthSuns(50);
    expect(suns[5].extraterrestrialKWhM2 * 3.6).toBeCloseTo(41.7, 0);
    expect(suns[11].extraterrestrialKWhM2 * 3.6).toBeCloseTo(8.2, 0);
    expect(suns.map(({ days }) => days)).toEqual([31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
    // Day length without refraction: (2 / 15) acos(-tan 50 tan 23.1), June: 16.1 h; equinox months near 12.
    expect(suns[5].dayHours).toBeCloseTo(16.1, 0);
    expect(suns[2].dayHours).toBeCloseTo(11.8, 0);
    // Noon on 15 June: 90 - 50 + 23.3 = 63.3 degrees.
    expect(suns[5].noonSine).toBeCloseTo(Math.sin((63.3 * Math.PI) / 180), 3);
    expect(monthSuns(80)[11].noonSine).toBe(0);
    expect(monthSuns(-50)[11].noonSine).toBeCloseTo(Math.sin((63.3 * Math.PI) / 180), 2);
    expect(monthSuns(Number.NaN)[0].extraterrestrialKWhM2).toBeNaN();
  });

  test("a month is dark below 2 Wh/m2 a day", () => {
    const sun = monthSuns(50)[0];
    expect(isPolarNight({ ...sun, extraterrestrialKWhM2: 0.0019 })).toBe(true);
    expect(isPolarNight({ ...sun, extraterrestrialKWhM2: 0.002 })).toBe(false);
  });
});

describe("light out of sunshine", () => {
  test("Angstrom and Prescott with FAO-56's constants: example 10, Rio de Janeiro in May", () => {
    // 7.1 h of 10.9 h; 25.1 MJ above the air give 14.5, worked with 0.58 for 0.576 there: 0.06 for that rounding.
    expect(Math.abs(clearnessOfSunshine("fao56", 7.1 / 10.9, 0.7) * 25.1 - 14.5)).toBeLessThan(0.06);
    expect(clearnessOfSunshine("fitted", 0.5, 0.8)).toBeCloseTo(0.176 + 0.2155 + 0.0952, 12);
  });

  test("a month's hours over what is possible, never more than all of it; nothing in polar night", () => {
    const sun = { days: 30, dayHours: 12, extraterrestrialKWhM2: 8, noonSine: 0.8 };
    expect(sunshineShare(90, sun)).toBeCloseTo(0.25, 12);
    expect(sunshineShare(400, sun)).toBe(1);
    expect(globalOfSunshine("fao56", 90, sun)).toBeCloseTo(8 * 0.375, 12);
    expect(globalOfSunshine("fao56", 90, { ...sun, extraterrestrialKWhM2: 0.0019 })).toBe(0);
    expect(globalOfSunshine("fao56", 90, { ...sun, extraterrestrialKWhM2: 0.002 })).toBeGreaterThan(0);
  });

  test("winters beyond 45 degrees are less sure, on either half of the Earth", () => {
    const spreads = (latitudeDeg: number) =>
      Array.from({ length: 12 }, (_, month) => sunshineMonthSpread(latitudeDeg, month));
    expect(spreads(46)).toEqual([0.15, 0.15, ...new Array(8).fill(0.11), 0.15, 0.15]);
    expect(spreads(-46)).toEqual([
      ...new Array(4).fill(0.11),
      0.15,
      0.15,
      0.15,
      0.15,
      ...new Array(4).fill(0.11),
    ]);
    expect(spreads(45)).toEqual(twelve(0.11));
    expect(spreads(-45)).toEqual(twelve(0.11));
  });

  test("months in any form come to the same light and clearness", () => {
    const suns = monthSuns(54);
    const clearness = NORTHERN.map((value, month) => value / suns[month].extraterrestrialKWhM2);
    monthlyGlobal({ kind: "clearness", index: clearness }, 54).forEach((value, month) => {
      expect(value).toBeCloseTo(NORTHERN[month], 12);
    });
    monthlyClearness({ kind: "global", kWhM2Day: NORTHERN }, 54).forEach((value, month) => {
      expect(value).toBeCloseTo(clearness[month], 12);
    });
    const sunny = monthlyGlobal({ kind: "sunshine", hours: HOURS }, 54, "fao56");
    expect(sunny[5]).toBeCloseTo(globalOfSunshine("fao56", 220, suns[5]), 12);
    expect(monthlyGlobal({ kind: "sunshine", hours: HOURS }, 54)[5]).toBeCloseTo(
      globalOfSunshine("fitted", 220, suns[5]),
      12,
    );
    expect(monthlyClearness({ kind: "global", kWhM2Day: NORTHERN }, 80)[11]).toBeNaN();
    expect(monthlyGlobal({ kind: "global", kWhM2Day: [] }, 54)[0]).toBeNaN();
  });
});
