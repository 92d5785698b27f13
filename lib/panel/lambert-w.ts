/** The Lambert W function, by which the single-diode equation is solved for the current. */

/** Newton steps on w + ln w = y from the guesses below reach rounding in at most this many (tested over y -700 to 700). */
const MOST_STEPS = 8;

/**
 * W(e^y), the principal branch for a positive argument given by its logarithm, so that no argument overflows.
 *
 * Solves w + ln w = y by Newton's method.
 *
 * @param y Any real number.
 * @returns Above 0, relative error below 1e-14; 0 where e^y underflows. NaN in, NaN out.
 * @example lambertW0OfExp(1) // 1
 */
export const lambertW0OfExp = (y: number): number => {
  let w = y > 1 ? y - Math.log(y) : Math.exp(y);
  if (w === 0) return w;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const next = (w * (1 + y - Math.log(w))) / (1 + w);
    if (Math.abs(next - w) <= Number.EPSILON * w) return next;
    w = next;
  }
  return w;
};

/**
 * W(x), the principal branch: the w not below -1 for which w e^w = x.
 *
 * Corless, Gonnet, Hare, Jeffrey & Knuth 1996, Advances in Computational Mathematics 5, 329: Halley's method (equation
 * 5.9) from the series about the branch point (4.22) for negative arguments, `lambertW0OfExp` for the others.
 *
 * @param x From -1/e.
 * @returns From -1; NaN below -1/e. Relative error below 1e-14, but 1e-11 within 1e-4 of the branch point, where W is
 * that sensitive to its argument.
 * @example lambertW0(1) // 0.5671432904097838
 */
export const lambertW0 = (x: number): number => {
  if (x >= 0) return lambertW0OfExp(Math.log(x));
  const p = Math.sqrt(2 * (Math.E * x + 1));
  let w = -1 + p - p ** 2 / 3 + (11 / 72) * p ** 3;
  for (let step = 0; step < MOST_STEPS && w > -1; step += 1) {
    const e = Math.exp(w);
    const excess = w * e - x;
    const next = w - excess / (e * (w + 1) - ((w + 2) * excess) / (2 * w + 2));
    if (Math.abs(next - w) <= Number.EPSILON) return next;
    w = next;
  }
  return w;
};
