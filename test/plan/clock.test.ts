import fc from "fast-check";
import { expect, test } from "vitest";
import { clockMinutes, clockOfMinutes, windowMinutes } from "../../lib/plan/clock.ts";

test.each([
  ["00:00", 0],
  ["06:05", 365],
  ["18:30", 1110],
  ["24:00", 1440],
])("%s is %d minutes after midnight", (clock, minutes) => {
  expect(clockMinutes(clock)).toBe(minutes);
});

test.each([
  [0, "00:00"],
  [65.4, "01:05"],
  [1110, "18:30"],
  [1440, "00:00"],
  [1439.6, "00:00"],
  [-30, "23:30"],
  [-1470, "23:30"],
])("%d minutes after midnight reads %s", (minutes, clock) => {
  expect(clockOfMinutes(minutes)).toBe(clock);
});

test("every whole minute of the day reads back", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1439 }), (minute) => {
      expect(clockMinutes(clockOfMinutes(minute))).toBe(minute);
    }),
  );
});

test.each([
  ["08:00", "10:30", 150],
  ["22:00", "02:00", 240],
  ["00:00", "24:00", 1440],
  ["07:15", "07:15", 1440],
  ["24:00", "06:00", 360],
])("from %s to %s is %d minutes", (from, to, minutes) => {
  expect(windowMinutes({ from, to })).toBe(minutes);
});
