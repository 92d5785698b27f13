/** Numbers as people read them: never more digits than the model earns. */

import { wrapBearing } from "../../units/angle.ts";
import { monthYearWords } from "../../units/dates.ts";
import { inchesText, millimetresText } from "../../units/length.ts";

// Made once: a formatter costs a hundred times what it then takes to write a number, and a chart writes thousands.
const FORMATS = [0, 1, 2].map(
  (decimals) =>
    new Intl.NumberFormat("en", { minimumFractionDigits: decimals, maximumFractionDigits: decimals }),
);

// A formatter writes what rounds to nothing from below as -0.
const grouped = (value: number, decimals: 0 | 1 | 2): string =>
  FORMATS[decimals].format(value).replace(/^-(?=[0.]*$)/, "");

/**
 * Energy in words: whole Wh for a day, kWh with three digits for a season.
 *
 * @example energyWords(537.4) // "537 Wh"
 * @example energyWords(98321) // "98.3 kWh"
 */
export const energyWords = (energyWh: number): string => {
  if (Math.abs(energyWh) < 9999.5) return `${grouped(energyWh, 0)} Wh`;
  const energyKwh = energyWh / 1000;
  return `${grouped(energyKwh, Math.abs(energyKwh) < 99.95 ? 1 : 0)} kWh`;
};

/**
 * How much more one value is than another, in whole per cent; `null` when there is nothing to compare with.
 *
 * @example gainWords(112, 100) // "12 % more"
 */
export const gainWords = (value: number, than: number): string | null => {
  if (!(than > 0)) return null;
  const percent = Math.round((value / than - 1) * 100);
  if (percent === 0) return "about the same";
  return percent > 0 ? `${percent} % more` : `${-percent} % less`;
};

/** A period in words: the whole season, or its month. @example periodWords("2027-06") // "June 2027" */
export const periodWords = (name: string): string =>
  name === "season" ? "the whole season" : monthYearWords(name);

const COMPASS_POINTS = [
  "north",
  "north-east",
  "east",
  "south-east",
  "south",
  "south-west",
  "west",
  "north-west",
];

/** The nearest of the eight compass points. @example compassPoint(200) // "south" */
export const compassPoint = (bearingDeg: number): string =>
  COMPASS_POINTS[Math.round(wrapBearing(bearingDeg) / 45) % 8] ?? "north";

/** Words joined as a person says them. @example listWords(["a", "b", "c"]) // "a, b and c" */
export const listWords = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;

/** A tilt as people read it: `52°` from the ground. */
export const tiltShort = (tiltDeg: number): string => `${Math.round(tiltDeg)}°`;

/** A bearing in whole degrees, 0 to 359. @example bearingShort(359.7) // "0°" */
export const bearingShort = (bearingDeg: number): string => `${Math.round(wrapBearing(bearingDeg)) % 360}°`;

/** A length in whole millimetres, and in inches to the nearest 1/16. @example lengthWords(546.1) // "546 mm (21 1/2 in)" */
export const lengthWords = (lengthMm: number): string =>
  `${millimetresText(lengthMm)} (${inchesText(lengthMm)})`;

/** Said instead of an answer when a season has no light to share out. */
export const NO_LIGHT = "The sun stays down all season: no setting brings anything.";
