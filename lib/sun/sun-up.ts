/** Apparent `up` of the sun at an instant: positive when its centre is in sight over a level horizon. */
export type UpAt = (timeMs: number) => number;

/** A stretch of time with the sun in sight, UTC milliseconds. */
export interface SunlitSpan {
  readonly fromMs: number;
  readonly toMs: number;
}

const CLOSE_ENOUGH_MS = 500;
const MOST_TRIES = 40;

/**
 * The instant, to half a second, at which the sun crosses the horizon between two instants that lie on either side
 * of it: false position, halving the end that stays put (the Illinois rule) so that it never stalls.
 */
export const horizonCrossingMs = (upAt: UpAt, fromMs: number, toMs: number): number => {
  let [kept, last] = [fromMs, toMs];
  let [upKept, upLast] = [upAt(fromMs), upAt(toMs)];
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const next = last - (upLast * (last - kept)) / (upLast - upKept);
    if (Math.abs(next - last) < CLOSE_ENOUGH_MS) return next;
    const upNext = upAt(next);
    if (upNext > 0 === upLast > 0) {
      upKept /= 2;
    } else {
      kept = last;
      upKept = upLast;
    }
    last = next;
    upLast = upNext;
  }
  return last;
};

/**
 * When the sun is in sight between the first and the last of some instants, given its `up` at each of them.
 * It may cross the horizon at most once between two of them.
 *
 * @param instantMs in order
 * @param up the sun's `up` at each; only its sign counts
 */
export const sunlitSpans = (instantMs: Float64Array, up: Float64Array, upAt: UpAt): readonly SunlitSpan[] => {
  const spans: SunlitSpan[] = [];
  let fromMs: number | null = up[0] > 0 ? instantMs[0] : null;
  for (let i = 1; i < up.length; i += 1) {
    const lit = up[i] > 0;
    if (lit === (fromMs !== null)) continue;
    const crossingMs = horizonCrossingMs(upAt, instantMs[i - 1], instantMs[i]);
    if (fromMs !== null) spans.push({ fromMs, toMs: crossingMs });
    fromMs = lit ? crossingMs : null;
  }
  if (fromMs !== null) spans.push({ fromMs, toMs: instantMs[instantMs.length - 1] });
  return spans;
};
