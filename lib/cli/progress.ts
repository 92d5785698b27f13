import type { Voice } from "./verb.ts";

/** A progress line for work that takes long, shown only when a person watches. */
export interface Progress {
  /** How far the work is: 0 to 1. */
  readonly at: (share: number) => void;
  /** Wipes the line. */
  readonly end: () => void;
}

const WAIT_MS = 300;
const REDRAW_MS = 100;
const BAR_CELLS = 24;

/** Starts a progress line that stays silent for the first 0.3 s, so that quick work shows nothing. */
export const progressLine = (what: string, { watched, remark }: Voice): Progress => {
  if (!watched) return { at: () => {}, end: () => {} };
  const start = performance.now();
  let drawn = 0;
  return {
    at: (share) => {
      const now = performance.now();
      if (now - start < WAIT_MS || now - drawn < REDRAW_MS) return;
      drawn = now;
      const full = Math.round(share * BAR_CELLS);
      remark(`\r${what} [${"#".repeat(full)}${".".repeat(BAR_CELLS - full)}] ${Math.round(share * 100)} % `);
    },
    end: () => {
      if (drawn > 0) remark(`\r${" ".repeat(what.length + BAR_CELLS + 12)}\r`);
    },
  };
};
