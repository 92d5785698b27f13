/** The steps back and forward through a plan's changes. Kept between pages and visits, so that what was replaced can be had back. */
import { keep, kept } from "./keep.ts";

const KEPT_AS = "plan-steps";
const MOST_STEPS = 60;
/** Browsers keep a few megabytes a site; a plan has a few kilobytes. */
const MOST_LETTERS = 1_000_000;

export interface Steps {
  readonly past: readonly unknown[];
  readonly future: readonly unknown[];
}

const NONE: Steps = { past: [], future: [] };

const isSteps = (value: unknown): value is Steps =>
  typeof value === "object" &&
  value !== null &&
  "past" in value &&
  "future" in value &&
  Array.isArray(value.past) &&
  Array.isArray(value.future);

/** The steps this browser keeps; none where it keeps none, or none that can be read. */
export const keptSteps = (): Steps => {
  try {
    const value: unknown = JSON.parse(kept(KEPT_AS) ?? "null");
    return isSteps(value) ? value : NONE;
  } catch {
    return NONE;
  }
};

/** Keeps the steps, the oldest left out where they are too many. */
export const keepSteps = ({ past, future }: Steps): Steps => {
  let steps: Steps = { past: past.slice(-MOST_STEPS), future: future.slice(-MOST_STEPS) };
  let text = JSON.stringify(steps);
  while (text.length > MOST_LETTERS && steps.past.length > 1) {
    steps = { past: steps.past.slice(Math.ceil(steps.past.length / 2)), future: [] };
    text = JSON.stringify(steps);
  }
  keep(KEPT_AS, text);
  return steps;
};
