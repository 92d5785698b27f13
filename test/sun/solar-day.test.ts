import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import { sunVector } from "../../lib/sun/position.ts";
import { type SunPlace, solarDays } from "../../lib/sun/solar-day.ts";

const DAY_MS = 86_400_000;

const civilDateAt = (timeMs: number, timeZone: string): string =>
  Temporal.Instant.fromEpochMilliseconds(timeMs).toZonedDateTimeISO(timeZone).toPlainDate().toString();

const datesOf = (place: SunPlace, from: string, to: string): readonly string[] =>
  solarDays(place, { from, to }).map(({ date }) => date);

const every = (from: string, to: string): readonly string[] => {
  const dates: string[] = [];
  for (let ms = Date.parse(from); ms <= Date.parse(to); ms += DAY_MS)
    dates.push(new Date(ms).toISOString().slice(0, 10));
  return dates;
};

const AMSTERDAM = { latitudeDeg: 52, longitudeDeg: 5, timeZone: "Europe/Amsterdam" };
const KIRITIMATI = { latitudeDeg: 1.9, longitudeDeg: -157.4, timeZone: "Pacific/Kiritimati" };
const SAMOA = { latitudeDeg: -13.8, longitudeDeg: -171.8, timeZone: "Pacific/Apia" };
const POLE = { latitudeDeg: -90, longitudeDeg: 0, timeZone: "Antarctica/McMurdo" };

describe("solarDays", () => {
  test.each([
    ["a place on its own clock", AMSTERDAM],
    ["14 hours ahead of Greenwich, west of it", KIRITIMATI],
    ["the same longitude on the other side of the line", { ...KIRITIMATI, timeZone: "Pacific/Honolulu" }],
    ["Fiji, east of the line's meridian", { latitudeDeg: -18, longitudeDeg: 178, timeZone: "Pacific/Fiji" }],
    [
      "Chukotka, west of the meridian with the clock of the east",
      { latitudeDeg: 66, longitudeDeg: -172, timeZone: "Asia/Anadyr" },
    ],
    [
      "western China on Peking's clock, noon at three",
      { latitudeDeg: 39, longitudeDeg: 75, timeZone: "Asia/Shanghai" },
    ],
    [
      "a zone of half an hour that moves by half an hour",
      { latitudeDeg: -31.5, longitudeDeg: 159, timeZone: "Australia/Lord_Howe" },
    ],
  ])("labels each day with the civil date of its noon: %s", (_, place) => {
    const days = solarDays(place, { from: "2027-01-01", to: "2027-12-31" });
    expect(days.map(({ date }) => date)).toEqual(every("2027-01-01", "2027-12-31"));
    for (const { date, noonMs } of days) expect(civilDateAt(noonMs, place.timeZone)).toBe(date);
  });

  test("runs on through both changes of the clock, a leap day and the new year", () => {
    expect(datesOf(AMSTERDAM, "2027-11-20", "2028-03-31")).toEqual(every("2027-11-20", "2028-03-31"));
    expect(datesOf(AMSTERDAM, "2028-02-28", "2028-03-01")).toEqual([
      "2028-02-28",
      "2028-02-29",
      "2028-03-01",
    ]);
    const [leapDay] = solarDays(AMSTERDAM, { from: "2028-02-29", to: "2028-02-29" });
    expect(leapDay).toMatchObject({ dayOfYear: 60, month: 2 });
  });

  test("leaves out the one date that Samoa never had, and no sun with it", () => {
    const days = solarDays(SAMOA, { from: "2011-12-28", to: "2012-01-02" });
    expect(days.map(({ date }) => date)).toEqual([
      "2011-12-28",
      "2011-12-29",
      "2011-12-31",
      "2012-01-01",
      "2012-01-02",
    ]);
    for (const { date, noonMs } of days) expect(civilDateAt(noonMs, SAMOA.timeZone)).toBe(date);
    days.slice(1).forEach(({ noonMs }, i) => {
      expect(Math.abs(noonMs - (days[i]?.noonMs ?? 0) - DAY_MS)).toBeLessThan(31_000);
    });
  });

  test("has every date once where noon drifts over civil midnight", () => {
    expect(datesOf(POLE, "2027-01-01", "2027-12-31")).toEqual(every("2027-01-01", "2027-12-31"));
  });

  test("has every date once, each a day after the last, for any zone anywhere", () => {
    const zones = Intl.supportedValuesOf("timeZone");
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.integer({ min: 0, max: 8000 }),
        (timeZone, longitudeDeg, latitudeDeg, start) => {
          const from = new Date(Date.UTC(2013, 0, 1) + start * DAY_MS).toISOString().slice(0, 10);
          const to = new Date(Date.UTC(2013, 0, 1) + (start + 220) * DAY_MS).toISOString().slice(0, 10);
          const days = solarDays({ latitudeDeg, longitudeDeg, timeZone }, { from, to });
          expect(days.map(({ date }) => date)).toEqual(every(from, to));
          days.slice(1).forEach(({ noonMs }, i) => {
            expect(Math.abs(noonMs - (days[i]?.noonMs ?? 0) - DAY_MS)).toBeLessThan(31_000);
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  test("puts noon where the sun stands on the meridian, midnight sun and polar night included", () => {
    for (const latitudeDeg of [-89.9, -66, -12, 0, 23, 52, 78]) {
      for (const { noonMs } of solarDays(
        { latitudeDeg, longitudeDeg: 16, timeZone: "Europe/Oslo" },
        { from: "2027-05-10", to: "2027-07-10" },
      )) {
        expect(Math.abs(sunVector(noonMs, latitudeDeg, 16).east)).toBeLessThan(1e-5); // 1 ms of time is 7e-8
      }
    }
  });

  test("says what is wrong", () => {
    expect(() =>
      solarDays({ ...AMSTERDAM, latitudeDeg: 91 }, { from: "2027-01-01", to: "2027-01-01" }),
    ).toThrow("solarDays: expected latitude -90 to 90 degrees, received 91");
    expect(() =>
      solarDays({ ...AMSTERDAM, longitudeDeg: Number.NaN }, { from: "2027-01-01", to: "2027-01-01" }),
    ).toThrow(RangeError);
    expect(() =>
      solarDays({ ...AMSTERDAM, longitudeDeg: -181 }, { from: "2027-01-01", to: "2027-01-01" }),
    ).toThrow("solarDays: expected longitude -180 to 180 degrees, received -181");
    expect(() => solarDays(AMSTERDAM, { from: "2027-02-01", to: "2027-01-01" })).toThrow(
      'solarDays: expected "to" on or after 2027-02-01, received 2027-01-01',
    );
    for (const edge of [
      { latitudeDeg: 90, longitudeDeg: 180 },
      { latitudeDeg: -90, longitudeDeg: -180 },
    ]) {
      expect(
        solarDays({ ...edge, timeZone: "Etc/UTC" }, { from: "2027-01-01", to: "2027-01-01" }),
      ).toHaveLength(1);
    }
    expect(() => solarDays(AMSTERDAM, { from: "2027-02-30", to: "2027-03-01" })).toThrow(RangeError);
    expect(() =>
      solarDays({ ...AMSTERDAM, timeZone: "Mars/Olympus" }, { from: "2027-01-01", to: "2027-01-01" }),
    ).toThrow(RangeError);
  });

  test("gives its example", () => {
    const [day] = solarDays(AMSTERDAM, { from: "2027-06-21", to: "2027-06-21" });
    expect(new Date(day?.noonMs ?? 0).toISOString()).toMatch(/^2027-06-21T11:41/);
    expect(day?.startMs).toBe((day?.noonMs ?? 0) - DAY_MS / 2);
  });
});
