/** Halvings after which a bracket of any size that occurs here is down to rounding. */
const MOST_STEPS = 200;

/**
 * A root of a continuous function between two points where it differs in sign.
 *
 * The method of false position with the Illinois halving (Dowell & Jarratt 1971, BIT 11, 168), and bisection whenever
 * that stalls.
 *
 * @param f The function.
 * @param low One end; @param high the other.
 * @param tolerance Width of bracket at which to stop.
 * @returns The root, or NaN when the ends do not differ in sign.
 */
export const bracketedRoot = (
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number => {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 !== fb < 0)) return Number.NaN;
  for (let step = 0; step < MOST_STEPS && Math.abs(b - a) > tolerance; step += 1) {
    const falsePosition = b - (fb * (b - a)) / (fb - fa);
    const x = step % 3 === 2 || !Number.isFinite(falsePosition) ? (a + b) / 2 : falsePosition;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx < 0 !== fb < 0) {
      a = b;
      fa = fb;
    } else {
      fa /= 2;
    }
    b = x;
    fb = fx;
  }
  return b;
};
