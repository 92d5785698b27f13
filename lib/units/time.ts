/** Spans of time. Instants are UTC milliseconds inside, minutes after midnight on a clock's face. */

export const MINUTE_MS = 60_000;
export const HOUR_MS = 3_600_000;
export const DAY_MS = 86_400_000;

export const DAY_MINUTES = 1440;

/** Minutes brought onto a clock's face, 0 up to but not including 1440. @example onClock(-30) // 1410 */
export const onClock = (minutes: number): number => ((minutes % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES;
