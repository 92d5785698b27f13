import type { SkySequences } from "../sky/climate/sequences.ts";
import type { SunColumns } from "../sun/columns.ts";
import type { ReadySky } from "./skies.ts";

/** Skies that a battery is put through: each a season, one as likely as the next. */
export type SkySource =
  /** The years of a weather file. */
  | { readonly kind: "years"; readonly sun: SunColumns; readonly skies: readonly ReadySky[] }
  /** Seasons drawn from a climate, day by day between rungs of cloud. */
  | {
      readonly kind: "drawn";
      readonly sun: SunColumns;
      readonly rungs: readonly CloudRung[];
      readonly sequences: SkySequences;
    };

/** A sky in which every day has the same ratio of its light to the clear day's. */
export interface CloudRung {
  readonly ratio: number;
  readonly sky: ReadySky;
}

/** How many seasons a source has. */
export const seasonsOf = (source: SkySource): number =>
  source.kind === "years" ? source.skies.length : source.sequences.seasons;

/** A ratio to the clear day's light lies between two rungs this far apart; a panel's watts are next to straight between them. */
const RUNG_STEP = 0.05;

/** The rungs that hold all days of some sequences, darkest first. */
export const rungRatios = ({ ratio }: SkySequences): readonly number[] => {
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (const value of ratio) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  if (!(least <= most)) return [1];
  const first = Math.floor(least / RUNG_STEP);
  const last = Math.max(first + 1, Math.ceil(most / RUNG_STEP));
  return Array.from({ length: last - first + 1 }, (_, rung) => (first + rung) * RUNG_STEP);
};
