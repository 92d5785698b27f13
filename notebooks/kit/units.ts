import { inchesText, MM_PER_INCH, millimetresOf, millimetresText } from "../../lib/units/length.ts";

/** Which units a person reads and types. The plan itself always holds metric values. */
export type Units = "metric" | "inch";

/** A length: whole millimetres, or inches to the sixteenth. */
export const lengthText = (lengthMm: number, units: Units): string =>
  units === "metric" ? millimetresText(lengthMm) : inchesText(lengthMm);

/** Reads a length as typed: a bare number is in the units in use, text may carry its own. `null` when it is no length. */
export const typedLengthMm = (text: string, units: Units): number | null => {
  const bare = text.trim();
  if (/^-?\d+(\.\d+)?$/.test(bare)) return Number(bare) * (units === "metric" ? 1 : MM_PER_INCH);
  return millimetresOf(bare.replace(/^([\d\s./-]+)$/, "$1 in"));
};

/** A temperature, whole degrees. */
export const temperatureText = (celsius: number, units: Units): string =>
  units === "metric" ? `${Math.round(celsius)} °C` : `${Math.round(fahrenheit(celsius))} °F`;

/** Degrees Fahrenheit of degrees Celsius, and back: 0 degC is 32 degF, and 5 K are 9 degF apart, by definition. */
export const fahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32;
export const celsius = (fahrenheitDegrees: number): number => ((fahrenheitDegrees - 32) * 5) / 9;
