import { describe, expect, it } from "vitest";
import { clockStretches, meanClock, noonClocks } from "../../../lib/season/aiming/walk-clock.ts";
import { sunColumns } from "../../../lib/sun/index.ts";

const clocksAt = (longitudeDeg: number, timeZone: string, from: string, to: string): Float64Array =>
  noonClocks(sunColumns({ latitudeDeg: 50, longitudeDeg, timeZone }, { from, to }, 60).days, timeZone);

describe("noonClocks", () => {
  it("is twelve o'clock on a zone's own meridian but for the equation of time", () => {
    // 15 E is the meridian of UTC+1. Equation of time on 11 February -14.2, on 3 November +16.4 minutes (almanac, from
    // memory): the greatest of the year.
    expect(clocksAt(15, "Etc/GMT-1", "2027-02-11", "2027-02-11")[0]).toBeCloseTo(720 + 14.2, 0);
    expect(clocksAt(15, "Etc/GMT-1", "2027-11-03", "2027-11-03")[0]).toBeCloseTo(720 - 16.4, 0);
  });

  it("comes four minutes later for each degree west of it, an hour later in summer time", () => {
    const [at15] = clocksAt(15, "Europe/Berlin", "2027-01-20", "2027-01-20");
    expect(clocksAt(5, "Europe/Berlin", "2027-01-20", "2027-01-20")[0] - at15).toBeCloseTo(40, 1);
    const march = clocksAt(15, "Europe/Berlin", "2027-03-27", "2027-03-28");
    // The equation of time falls by 0.3 minutes a day then.
    expect(march[1] - march[0]).toBeCloseTo(60 - 0.3, 1);
  });
});

describe("meanClock", () => {
  it("is the mean of the period's days and of no other", () => {
    const clocks = Float64Array.of(1000, 720, 724, 1000);
    expect(meanClock(clocks, { first: 1, end: 3 })).toBe(722);
  });
});

describe("clockStretches", () => {
  const clocks = Float64Array.of(720, 721, 711, 771, 772, 712);

  it("is cut where the clocks change and nowhere else", () => {
    // Ten minutes are no change of clocks, an hour is.
    expect(clockStretches(clocks, { first: 0, end: 6 }, -30)).toEqual([
      { first: 0, minutes: (720 + 721 + 711) / 3 - 30 },
      { first: 3, minutes: (771 + 772) / 2 - 30 },
      { first: 5, minutes: 712 - 30 },
    ]);
  });

  it("looks at the period's own days", () => {
    expect(clockStretches(clocks, { first: 3, end: 5 }, 15)).toEqual([{ first: 3, minutes: 771.5 + 15 }]);
  });
});
