import type { Worth } from "../../plan/worth.ts";
import type { SkySource } from "../light/sky-source.ts";
import { type BatteryOptions, batterySeasons, meanOutcome } from "./battery-season.ts";
import type { Choices } from "./set-ups.ts";

/** The least second panel that keeps short days within what is accepted. */
export interface SmallestPanel {
  readonly where: "roof" | "legs";
  /** Rated W, to the next five up; 0 when none is needed, `null` when the largest tried is not enough. */
  readonly watts: number | null;
  /** Short days a season with it, on average; with the largest tried when none is enough. */
  readonly shortDays: number;
  readonly price: number | null;
}

/** Panels are sold in about such steps; more than this is no second panel any more. */
const [STEP_W, MOST_W] = [5, 600];
/** None, the largest, and halvings between them. */
const MOST_TRIES = 2 + Math.ceil(Math.log2(MOST_W / STEP_W));

/**
 * The smallest second panel that meets the wanted reliability under the same skies, by halving: a larger panel never
 * brings more short days.
 *
 * @param onProgress told how far the search has come, 0 to 1
 * @returns `null` where there are no legs to put it on
 */
export const smallestSecondPanel = (
  source: SkySource,
  { asIs, withSecondPanel }: Choices,
  worth: Worth,
  options: BatteryOptions,
  where: "roof" | "legs",
  onProgress: (share: number) => void = () => {},
): SmallestPanel | null => {
  let tried = 0;
  const shortWith = (steps: number): number => {
    const remedy = steps === 0 ? { setUp: asIs } : withSecondPanel(where, steps * STEP_W);
    if (remedy === null) return Number.NaN;
    const [season] = batterySeasons(source, [remedy.setUp], options);
    tried += 1;
    onProgress(Math.min(1, tried / MOST_TRIES));
    return meanOutcome(season, "shortDays");
  };
  if (withSecondPanel(where, STEP_W) === null) return null;
  const none = shortWith(0);
  if (none <= worth.wantedShortDays) return { where, watts: 0, shortDays: none, price: 0 };
  let low = 0;
  let high = MOST_W / STEP_W;
  let shortDays = shortWith(high);
  if (shortDays > worth.wantedShortDays) return { where, watts: null, shortDays, price: null };
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    const there = shortWith(middle);
    if (there <= worth.wantedShortDays) {
      high = middle;
      shortDays = there;
    } else {
      low = middle;
    }
  }
  const watts = high * STEP_W;
  return { where, watts, shortDays, price: withSecondPanel(where, watts)?.price ?? null };
};
