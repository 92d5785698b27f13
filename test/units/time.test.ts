import { describe, expect, test } from "vitest";
import {
  calendarMonth,
  dateWords,
  dayMonthShort,
  isoDate,
  isoMinute,
  monthYearWords,
} from "../../lib/units/dates.ts";
import { DAY_MINUTES, DAY_MS, HOUR_MS, MINUTE_MS, onClock } from "../../lib/units/time.ts";

describe("time and dates", () => {
  test("spans fit into one another as on any clock", () => {
    expect([HOUR_MS / MINUTE_MS, DAY_MS / HOUR_MS, DAY_MS / MINUTE_MS]).toEqual([60, 24, DAY_MINUTES]);
  });

  test("onClock(minutes) comes round at midnight, both ways", () => {
    expect([-1, 0, 1439, 1440, 2881, -1441].map(onClock)).toEqual([1439, 0, 1439, 0, 1, 1439]);
  });

  test("dates are the plan's own, whatever the machine's zone", () => {
    expect(dateWords("2027-01-01")).toBe("1 January 2027");
    expect(dayMonthShort("2027-12-31")).toBe("31 Dec");
    expect(monthYearWords("2027-02")).toBe("February 2027");
    expect([1, 9, 12].map(calendarMonth)).toEqual(["January", "September", "December"]);
    expect(isoDate(Date.UTC(2027, 11, 31, 23, 59))).toBe("2027-12-31");
    expect(isoMinute(Date.UTC(2027, 5, 21, 4, 5))).toBe("2027-06-21T04:05Z");
  });
});
