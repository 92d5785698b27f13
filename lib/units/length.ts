/** Lengths. Millimetres inside, metres for cables; inches and feet are accepted as tagged text, inches shown to the nearest 1/16. */

/** The international inch (1959), exact by definition. */
export const MM_PER_INCH = 25.4;

const INCHES = /^\s*(?:(\d+(?:\.\d+)?)(?:[ -](\d+)\/(\d+))?|(\d+)\/(\d+))\s*(?:in|inch|inches|")\s*$/;
const METRIC = /^\s*(\d+(?:\.\d+)?)\s*(mm|cm)\s*$/;
const MM_PER_CM = 10;

/**
 * Reads a length given as text with its unit: `"21.5 in"`, `"21 1/2 in"`, `"540 mm"`, `"54 cm"`.
 *
 * @returns millimetres, or `null` when the text is no such length
 * @example millimetresOf("21.5 in") // 546.1
 */
export const millimetresOf = (text: string): number | null => {
  const metric = METRIC.exec(text);
  if (metric) return Number(metric[1]) * (metric[2] === "cm" ? MM_PER_CM : 1);
  const found = INCHES.exec(text);
  if (!found) return null;
  const [, whole = "0", over = found[4] ?? "0", under = found[5] ?? "1"] = found;
  const inches = Number(whole) + Number(over) / Number(under);
  return Number.isFinite(inches) ? inches * MM_PER_INCH : null;
};

/** Twelve inches. */
const METRES_PER_FOOT = 0.3048;
const FEET = /^\s*(\d+(?:\.\d+)?)\s*(?:ft|feet|foot)\s*$/;
const METRES = /^\s*(\d+(?:\.\d+)?)\s*m\s*$/;

/**
 * Reads a length of cable given as text with its unit: `"16 ft"`, `"5 m"`.
 *
 * @returns metres, or `null` when the text is no such length
 * @example metresOf("20 ft") // 6.096
 */
export const metresOf = (text: string): number | null => {
  const metric = METRES.exec(text);
  if (metric) return Number(metric[1]);
  const feet = FEET.exec(text);
  return feet ? Number(feet[1]) * METRES_PER_FOOT : null;
};

const SIXTEENTHS = 16;

const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b);

/**
 * A length in inches to the nearest 1/16, as a tape measure reads it.
 *
 * @example inchesText(546.1) // "21 1/2 in"
 */
export const inchesText = (lengthMm: number): string => {
  if (!Number.isFinite(lengthMm)) return `${lengthMm} in`;
  const sixteenths = Math.round((Math.abs(lengthMm) / MM_PER_INCH) * SIXTEENTHS);
  const sign = lengthMm < 0 && sixteenths > 0 ? "-" : "";
  const whole = Math.floor(sixteenths / SIXTEENTHS);
  const over = sixteenths % SIXTEENTHS;
  if (over === 0) return `${sign}${whole} in`;
  const shared = greatestCommonDivisor(over, SIXTEENTHS);
  const fraction = `${over / shared}/${SIXTEENTHS / shared}`;
  return whole === 0 ? `${sign}${fraction} in` : `${sign}${whole} ${fraction} in`;
};

/** A length in whole millimetres. @example millimetresText(546.1) // "546 mm" */
export const millimetresText = (lengthMm: number): string => `${Math.round(lengthMm)} mm`;
