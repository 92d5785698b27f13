import { describe, expect, test } from "vitest";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { eachOverlap, seasonSlots, slotSpan } from "../../../lib/sky/weather/lay/slots.ts";
import { type SunColumns, sunColumns } from "../../../lib/sun/index.ts";

const HOUR_MS = 3_600_000;

const sunAt = (latitudeDeg: number, from: string, to = from, stepMinutes = 30): SunColumns =>
  sunColumns({ latitudeDeg, longitudeDeg: 5, timeZone: "Etc/UTC" }, { from, to }, stepMinutes);

const clearOf = (sun: SunColumns) =>
  clearSkyColumns(sun, clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, 0), 0.2, { airC: 15, windMs: 2 });

describe("slotSpan", () => {
  test("runs from the interval of the first light to that of the last", () => {
    const sun = sunAt(50, "2027-03-20", "2027-03-21");
    const phaseMs = Date.UTC(2027, 0, 1, 0, 20);
    const span = slotSpan(sun, phaseMs, 60);
    const last = sun.length - 1;
    const rise = sun.timeMs[0] - (sun.hours[0] * HOUR_MS) / 2;
    const set = sun.timeMs[last] + (sun.hours[last] * HOUR_MS) / 2;
    expect(span.intervalMs).toBe(HOUR_MS);
    expect((span.startMs - phaseMs) % HOUR_MS).toBe(0);
    expect(span.startMs).toBeLessThanOrEqual(rise);
    expect(span.startMs).toBeGreaterThan(rise - HOUR_MS);
    const end = span.startMs + span.length * HOUR_MS;
    expect(end).toBeGreaterThanOrEqual(set);
    expect(end).toBeLessThan(set + HOUR_MS);
  });

  test("of a polar night is nothing", () => {
    expect(slotSpan(sunAt(85, "2027-12-20"), 77, 60)).toEqual({
      startMs: 77,
      intervalMs: HOUR_MS,
      length: 0,
    });
  });
});

describe("eachOverlap", () => {
  test("hands every row's sunlit time to the intervals it lies across, and nothing else", () => {
    const sun = sunAt(50, "2027-03-20", "2027-03-21", 60);
    const span = slotSpan(sun, Date.UTC(2027, 0, 1, 0, 7), 15);
    const ofRow = new Float64Array(sun.length);
    const ofSlot = new Float64Array(span.length);
    const seen: string[] = [];
    eachOverlap(sun, span, (row, slot, sharedMs) => {
      expect(sharedMs).toBeGreaterThan(0);
      ofRow[row] += sharedMs;
      ofSlot[slot] += sharedMs;
      seen.push(`${row} ${slot}`);
      const from = span.startMs + slot * span.intervalMs;
      const half = (sun.hours[row] * HOUR_MS) / 2;
      const shared =
        Math.min(from + span.intervalMs, sun.timeMs[row] + half) - Math.max(from, sun.timeMs[row] - half);
      expect(sharedMs).toBeCloseTo(shared, 2);
    });
    expect(new Set(seen).size).toBe(seen.length);
    for (let row = 0; row < sun.length; row += 1) expect(ofRow[row]).toBeCloseTo(sun.hours[row] * HOUR_MS, 2);
    expect(Math.max(...ofSlot)).toBeLessThan(span.intervalMs + 1);
  });
});

describe("seasonSlots", () => {
  test("means over the lit part of each interval", () => {
    const sun = sunAt(50, "2027-03-20", "2027-03-21", 10);
    const clear = clearOf(sun);
    const span = slotSpan(sun, Date.UTC(2027, 0, 1), 60);
    const slots = seasonSlots(sun, clear, span);
    expect(slots).toMatchObject({ startMs: span.startMs, length: span.length });
    for (let slot = 0; slot < span.length; slot += 1) {
      let [lit, above, bright, sine] = [0, 0, 0, 0];
      eachOverlap(sun, span, (row, at, sharedMs) => {
        if (at !== slot) return;
        lit += sharedMs;
        above += sharedMs * clear.extraterrestrial[row] * sun.up[row];
        bright += sharedMs * clear.global[row];
        sine += sharedMs * sun.up[row];
      });
      expect(slots.litMs[slot]).toBe(lit);
      if (lit === 0) {
        expect([slots.above[slot], slots.clear[slot], slots.sine[slot], slots.day[slot]]).toEqual([
          0, 0, 0, -1,
        ]);
        continue;
      }
      expect(slots.above[slot]).toBeCloseTo(above / lit, 9);
      expect(slots.clear[slot]).toBeCloseTo(bright / lit, 9);
      expect(slots.sine[slot]).toBeCloseTo(sine / lit, 12);
      // The night between the two days parts them.
      const middle = span.startMs + (slot + 0.5) * HOUR_MS;
      const day = middle < sun.days[1].startMs ? 0 : 1;
      expect(slots.day[slot]).toBe(day);
      expect(slots.solarHour[slot]).toBeCloseTo(12 + (middle - sun.days[day].noonMs) / HOUR_MS, 9);
      expect(slots.insideMs[slot]).toBe(HOUR_MS);
    }
  });

  test("in midnight sun what lies before the season's first midnight and after its last is outside", () => {
    const sun = sunAt(78, "2027-06-20", "2027-06-21", 60);
    const span = slotSpan(sun, Date.UTC(2027, 0, 1), 60);
    const { insideMs, litMs } = seasonSlots(sun, clearOf(sun), span);
    const whole = insideMs.slice(1, -1);
    expect(whole.every((ms) => ms === HOUR_MS)).toBe(true);
    // Solar midnight at 5 E in June is 23:42 UTC, and a full day's hours lie in between.
    expect(insideMs[0]).toBeLessThan(HOUR_MS / 2);
    expect(insideMs[0]).toBeCloseTo(litMs[0], 0);
    expect(insideMs[span.length - 1]).toBeLessThan(HOUR_MS);
    const total = insideMs.reduce((sum, ms) => sum + ms, 0);
    expect(Math.abs(total / HOUR_MS - 48)).toBeLessThan(0.01);
  });
});
