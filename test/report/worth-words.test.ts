import { describe, expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { shortDaysWords } from "../../lib/report/words/short-days-words.ts";
import { worthSummary, worthVerdict } from "../../lib/report/words/worth-words.ts";
import type { BatterySeason } from "../../lib/season/battery/battery-season.ts";
import type { Coping } from "../../lib/season/battery/coping.ts";
import type { WorthAnswer, WorthRow } from "../../lib/season/battery/worth.ts";

const plan = readPlan({
  site: { latitudeDeg: 52, longitudeDeg: 6 },
  season: { from: "2027-04-01", to: "2027-04-02" },
  panels: [{ name: "p", module: { powerW: 100 } }],
});
const { worth } = plan;

/** Only what the words look at. */
const season = {
  outcomes: [{ wantedWh: 1000 }],
  days: [],
  setUp: { battery: plan.battery },
} as unknown as BatterySeason;

const coping: Coping = { by: "driving", topUps: 7, hours: 7, toppedUpWh: 2100, price: 56, shortDays: 0 };

const asIs = {
  season,
  shortDays: 40,
  shortDaysP90: 52,
  shortWh: 4000,
  blockedDays: 0,
  coping,
  usedWhADay: 200,
  offeredWhADay: 260,
  fullByNoonShare: 0.6,
};

const row = (over: Partial<WorthRow>): WorthRow => ({
  ...asIs,
  name: "second panel on the roof",
  says: "100 W more",
  price: 130,
  shortDays: 10,
  shortDaysAvoided: 30,
  paperWhADay: 40,
  usefulWhADay: 9,
  pricePerShortDay: 130 / 150,
  pricePerUsefulKWh: 13,
  paysAfter: 2.4,
  needs: [],
  unsafe: [],
  enough: false,
  ...over,
});

const answer = (rows: readonly WorthRow[], over: Partial<typeof asIs> = {}): WorthAnswer => ({
  asIs: { ...asIs, ...over },
  remarks: [],
  rows,
  days: 200,
  ways: [coping],
  wayStated: false,
  cold: null,
});

describe("worthVerdict", () => {
  const judged = (over: Partial<WorthRow>, today: Partial<typeof asIs> = {}) =>
    worthVerdict(row(over), answer([row(over)], today), worth);

  test("says what it pays against, and why most of it is not used", () => {
    expect(judged({})).toBe(
      "Worth it: 30 short days a season fewer; pays for itself against driving after 3 seasons. Today the battery is full by noon on 60 % of days: it adds 40 Wh a day on paper, 9.0 in use.",
    );
  });

  test("a battery that is seldom full today but often then: the reason is told of then", () => {
    expect(judged({ fullByNoonShare: 0.7 }, { fullByNoonShare: 0.1 })).toContain(
      "With it the battery is full by noon on 70 % of days",
    );
  });

  test("no reason where most of it is used", () => {
    expect(judged({ usefulWhADay: 30 })).not.toContain("on paper");
  });

  test("nothing avoided, nothing worth", () => {
    expect(judged({ shortDaysAvoided: 0.1, usefulWhADay: 30 })).toBe(
      "Not worth it: it avoids hardly a short day.",
    );
    expect(judged({ shortDaysAvoided: 0, usefulWhADay: 30 })).toBe("Not worth it: it avoids no short day.");
  });

  test("what never pays is for comfort; what is free costs nothing; where no day is short nothing is needed", () => {
    expect(judged({ paysAfter: null, usefulWhADay: 30 })).toBe(
      "Only for comfort: 30 short days a season fewer at EUR 0.87 each, but driving when it is flat is cheaper over 5 years.",
    );
    expect(judged({ price: 0, usefulWhADay: 30, enough: true })).toBe(
      "Nothing to buy: 30 short days a season fewer, and that is enough.",
    );
    expect(judged({}, { shortDays: 0 })).toBe("Not needed: today no day is short.");
  });

  test("what is accepted needs no remedy", () => {
    expect(judged({ shortDaysAvoided: 1.5 }, { shortDays: 2 })).toBe(
      "Not needed: 2 short days a season is within the short days you accept; it would make 1.5 short days fewer.",
    );
    expect(judged({ shortDaysAvoided: 0.1 }, { shortDays: 2 })).toBe(
      "Not needed: 2 short days a season is within the short days you accept.",
    );
  });

  test("what makes it worse is told so", () => {
    expect(judged({ shortDaysAvoided: -3, usefulWhADay: 30 })).toBe(
      "Not worth it: it brings 3 short days a season more.",
    );
  });
});

describe("worthSummary", () => {
  test("picks the cheapest that is enough, and names what is not worth its price", () => {
    const rows = [
      row({ name: "dear", price: 500, enough: true, shortDays: 1 }),
      row({ name: "cheap", price: 100, enough: true, shortDays: 2 }),
      row({ name: "thicker cable", shortDaysAvoided: 0 }),
    ];
    const words = worthSummary(answer(rows), worth, []).join(" ");
    expect(words).toContain(
      "Cheapest that is enough: cheap (100 W more), EUR 100, leaving 2 short days a season.",
    );
    expect(words).toContain("Not worth their price: thicker cable.");
    expect(words).toContain("one season in ten has more than 52");
  });

  test("says so when nothing is enough, and when nothing is needed", () => {
    expect(worthSummary(answer([row({})]), worth, []).join(" ")).toContain(
      "Nothing compared here alone comes down to 2 short days; nearest is second panel on the roof with 10 short days.",
    );
    expect(worthSummary(answer([row({})], { shortDays: 1 }), worth, []).join(" ")).toContain(
      "That is within the 2 short days you accept: nothing needs to be bought.",
    );
  });

  test("what topping up costs is told way by way, with what was assumed, and on which the answer rests", () => {
    const words = worthSummary(answer([row({})]), worth, []).join(" ");
    expect(words).toContain(
      "Topping it up each time it is flat would take, a season: 7 drives of 60 minutes (EUR 56).",
    );
    expect(words).toContain("this rests on the cheapest, driving.");
    expect(words).toContain(
      "Assumed, since the plan keeps the usual figures: EUR 8.00 an hour of driving and 300 Wh from an hour of driving.",
    );
    expect(words).toContain(
      "Prices assumed, since the plan keeps the usual ones: EUR 0.90 for a watt of second panel",
    );
    const own = {
      ...worth,
      instead: { ...worth.instead, inUse: "driving" as const, drivingHour: 9, drivingHourWh: 250 },
    };
    const stated = worthSummary(answer([row({})]), own, []).join(" ");
    expect(stated).toContain("Topped up each time it is flat: 7 drives of 60 minutes (EUR 56) a season.");
    expect(stated).not.toContain("Assumed");
    expect(stated).not.toContain("rests on");
  });

  test("days too cold to charge are named, with the short days that come from them, before any panel", () => {
    const cold = { blockedDays: 93, shortDaysWarm: 3, shortDaysFromCold: 37 };
    const words = worthSummary({ ...answer([row({})]), cold }, worth, [
      { where: "roof", watts: null, shortDays: 36, price: null, needs: [] },
    ]).join(" ");
    expect(words).toContain("That keeps light from it on 93 of 200 days a season.");
    expect(words).toContain(
      "37 of the 40 short days come from the cold: with the battery kept warm there would be 3 short days.",
    );
    expect(words).toContain("Keep it warm first, then ask again.");
    expect(worthSummary(answer([row({})]), worth, []).join(" ")).toContain(
      "Cold never keeps the battery from being charged.",
    );
  });

  test("the smallest second panel, none needed, or none enough", () => {
    const words = (watts: number | null) =>
      worthSummary(answer([row({})]), worth, [
        { where: "roof", watts, shortDays: 1.5, price: watts === null ? null : 80, needs: [] },
      ]).at(-2);
    expect(words(45)).toBe(
      "The smallest second panel flat on the roof that keeps within 2 short days a season: 45 W (EUR 80), leaving 1.5 short days.",
    );
    expect(words(0)).toBe("For 2 short days a season no second panel flat on the roof is needed.");
    expect(words(null)).toContain("up to 600 W");
  });
});

test("shortDaysWords", () => {
  expect([0, 0.04, 1, 1.25, 12.4].map(shortDaysWords)).toEqual([
    "no short day",
    "hardly a short day",
    "1 short day",
    "1.3 short days",
    "12 short days",
  ]);
});
