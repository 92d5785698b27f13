import type { Worth } from "../../plan/worth.ts";
import type { SkySource } from "../light/sky-source.ts";
import { type BatteryOptions, batterySeasons, meanOutcome } from "./battery-season.ts";
import type { Need } from "./needs.ts";
import type { Choices } from "./set-ups.ts";

/** The least second panel that keeps short days within what is accepted. */
export interface SmallestPanel {
  readonly where: "roof" | "legs";
  /** Rated W, to the next five up; 0 when none is needed, `null` when the largest tried is not enough. */
  readonly watts: number | null;
  /** Short days a season with it, on average; with the largest tried when none is enough. */
  readonly shortDays: number;
  readonly price: number | null;
  /** What it needs beside itself to be safe to build; its price is in `price`. */
  readonly needs: readonly Need[];
}

/** Panels are sold in about such steps; more than this is no second panel any more. */
const [STEP_W, MOST_W] = [5, 600];
/** None, the largest, and halvings between them. */
const MOST_TRIES = 2 + Math.ceil(Math.log2(MOST_W / STEP_W));

/** Steps of the largest second panel that can be built safely with what it needs; 0 where none can. */
const largestBuildable = (withSecondPanel: Choices["withSecondPanel"], where: "roof" | "legs"): number => {
  let steps = MOST_W / STEP_W;
  while (steps > 0 && withSecondPanel(where, steps * STEP_W)?.unsafe.length !== 0) steps -= 1;
  return steps;
};

/**
 * The smallest second panel that meets the wanted reliability under the same skies, by halving: a larger panel
 * hardly ever brings more short days, and the one named has been lived with. What it needs to be safe to build is part of it.
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
    const remedy = steps === 0 ? { setUp: asIs, unsafe: [] } : withSecondPanel(where, steps * STEP_W);
    // What cannot be built is never enough.
    if (remedy === null || remedy.unsafe.length > 0) return Number.POSITIVE_INFINITY;
    const [season] = batterySeasons(source, [remedy.setUp], options);
    tried += 1;
    onProgress(Math.min(1, tried / MOST_TRIES));
    return meanOutcome(season, "shortDays");
  };
  if (withSecondPanel(where, STEP_W) === null) return null;
  const none = shortWith(0);
  if (none <= worth.wantedShortDays) return { where, watts: 0, shortDays: none, price: 0, needs: [] };
  let low = 0;
  let high = largestBuildable(withSecondPanel, where);
  if (high === 0) return { where, watts: null, shortDays: none, price: null, needs: [] };
  let shortDays = shortWith(high);
  if (shortDays > worth.wantedShortDays) return { where, watts: null, shortDays, price: null, needs: [] };
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
  const found = withSecondPanel(where, watts);
  return { where, watts, shortDays, price: found?.price ?? null, needs: found?.needs ?? [] };
};
