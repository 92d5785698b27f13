/** Wire sizes. A bare number is a cross-section in mm2; a gauge is tagged text (`"12 AWG"`, `"2/0 AWG"`). */

const GAUGE = /^\s*(?:([1-9]\d?)|([1-4])\/0|(0{1,4}))\s*(?:AWG|awg)\s*$/;

/** Thinnest gauge read. Thickest is 4/0, counted as -3. */
export const THINNEST_GAUGE = 24;
export const THICKEST_GAUGE = -3;

/**
 * Reads a gauge given as text: `"12 AWG"`, `"2/0 AWG"`, `"00 AWG"`.
 *
 * @returns the gauge number, 1/0 as 0, 2/0 as -1, 4/0 as -3; `null` when the text is no gauge from 4/0 to 24
 * @example gaugeOf("2/0 AWG") // -1
 */
export const gaugeOf = (text: string): number | null => {
  const found = GAUGE.exec(text);
  if (!found) return null;
  const [, number, oughts, zeros] = found;
  if (number !== undefined) return Number(number) <= THINNEST_GAUGE ? Number(number) : null;
  return 1 - (oughts === undefined ? (zeros ?? "").length : Number(oughts));
};

/** A gauge as people write it. @example gaugeText(-1) // "2/0 AWG" */
export const gaugeText = (gauge: number): string => `${gauge > 0 ? gauge : `${1 - gauge}/0`} AWG`;
