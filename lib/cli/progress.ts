import type { Voice } from "./verb.ts";

/** A progress line for work that takes long, shown only when a person watches. */
export interface Progress {
  /** How far the work is. */
  readonly at: (done: number) => void;
  /** Wipes the line. */
  readonly end: () => void;
}

const WAIT_MS = 300;
const REDRAW_MS = 100;
const BAR_CELLS = 24;

/** A line that rewrites itself at most ten times a second, and stays silent for the first 0.3 s. */
const selfRewriting = ({
  watched,
  remark,
}: Voice): { readonly draw: (text: () => string) => void; readonly end: () => void } => {
  const start = performance.now();
  let drawnAt = 0;
  let widest = 0;
  return {
    draw: (text) => {
      const now = performance.now();
      if (!watched || now - start < WAIT_MS || now - drawnAt < REDRAW_MS) return;
      drawnAt = now;
      const line = text();
      widest = Math.max(widest, line.length);
      remark(`\r${line.padEnd(widest)}`);
    },
    end: () => {
      if (widest > 0) remark(`\r${" ".repeat(widest)}\r`);
    },
  };
};

/** A progress line for work whose end is known: `at` is told the share done, 0 to 1. */
export const progressLine = (what: string, voice: Voice): Progress => {
  const line = selfRewriting(voice);
  return {
    at: (share) =>
      line.draw(() => {
        const full = Math.round(share * BAR_CELLS);
        return `${what} [${"#".repeat(full)}${".".repeat(BAR_CELLS - full)}] ${Math.round(share * 100)} %`;
      }),
    end: line.end,
  };
};

/** A progress line for work whose end is not known: `at` is told how many are done. */
export const progressCount = (what: string, voice: Voice): Progress => {
  const line = selfRewriting(voice);
  return { at: (count) => line.draw(() => `${count} ${what}`), end: line.end };
};
