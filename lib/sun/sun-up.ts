/** Apparent `up` of the sun at an instant: positive when its centre is in sight over a level horizon. */
export type UpAt = (timeMs: number) => number;

const HOUR_MS = 3_600_000;
const CLOSE_ENOUGH_MS = 500;
const MOST_TRIES = 40;

/** The instant the sun crosses the horizon between two instants that lie on either side of it (Illinois false position). */
export const horizonCrossingMs = (upAt: UpAt, aMs: number, bMs: number): number => {
  let [a, b, upA, upB] = [aMs, bMs, upAt(aMs), upAt(bMs)];
  let guess = a;
  for (let tries = 0; tries < MOST_TRIES && Math.abs(b - a) > CLOSE_ENOUGH_MS; tries++) {
    const next = b - (upB * (b - a)) / (upB - upA);
    const moved = Math.abs(next - guess);
    guess = next;
    if (moved < CLOSE_ENOUGH_MS) break;
    const up = upAt(guess);
    if (up > 0 === upB > 0) {
      upA /= 2;
    } else {
      a = b;
      upA = upB;
    }
    b = guess;
    upB = up;
  }
  return guess;
};

/**
 * Hours of sun in a run of instants: whole gaps where both ends are lit, cut at the horizon where one is dark.
 *
 * @param timeMs instants in order; the first `count` are read
 * @param up the sun's `up` at each; only its sign counts
 */
export const hoursLit = (timeMs: Float64Array, up: Float64Array, count: number, upAt: UpAt): number => {
  let litMs = 0;
  let before = Number.NaN;
  let wasLit = false;
  for (let i = 0; i < count; i++) {
    const now = timeMs[i] ?? Number.NaN;
    const lit = (up[i] ?? Number.NaN) > 0;
    if (i > 0) {
      if (lit && wasLit) litMs += now - before;
      else if (lit) litMs += now - horizonCrossingMs(upAt, before, now);
      else if (wasLit) litMs += horizonCrossingMs(upAt, before, now) - before;
    }
    before = now;
    wasLit = lit;
  }
  return litMs / HOUR_MS;
};
