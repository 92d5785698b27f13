import type { Climate } from "../climate.ts";
import type { PlaceShare } from "./blend.ts";

/** How a climate came to be chosen. */
export type ChoiceKind = "nearest places" | "named place" | "analogy" | "own table";

/** A climate, and the words that must go with every figure made from it. */
export interface ChosenClimate {
  readonly kind: ChoiceKind;
  readonly climate: Climate;
  /** The places it was made from, most important first; none for twelve numbers typed in. */
  readonly shares: readonly PlaceShare[];
  /** One line for people: from where, how far, by what. */
  readonly says: string;
  /** What to beware of, each a sentence; empty when there is nothing. */
  readonly warnings: readonly string[];
}

/** `Denver, CO, United States (12 km away, 80 m higher, typical year)`. */
export const placeLine = ({ station, distanceKm, heightDifferenceM }: PlaceShare): string => {
  const country = station.country === "" || station.place === station.country ? "" : `, ${station.country}`;
  const height =
    heightDifferenceM === null
      ? "height not known"
      : Math.abs(heightDifferenceM) < 1
        ? "same height"
        : `${Math.abs(Math.round(heightDifferenceM))} m ${heightDifferenceM > 0 ? "lower" : "higher"}`;
  return `${station.place}${country} (${Math.round(distanceKm)} km away, ${height}, ${station.source})`;
};

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** How far the light may be off: `a month's light may be off by 8 %, a year's by 4 % (one standard deviation)`. */
export const uncertaintyLine = ({ uncertainty }: Climate): string | null => {
  const least = Math.min(...uncertainty.month);
  const most = Math.max(...uncertainty.month);
  if (most === 0) return null;
  const months = percent(least) === percent(most) ? percent(most) : `${percent(least)} to ${percent(most)}`;
  return `a month's light may be off by ${months}, a year's by ${percent(uncertainty.year)} (one standard deviation)`;
};
