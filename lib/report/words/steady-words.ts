import { type Steadiness, WIND_SAFETY_FACTOR } from "../../stand/steadiness.ts";

/** What the wind may do to a setting, in a sentence; worded as an estimate. */
export const steadyWords = (name: string, { forecastMs, beaufort, first, gustMs }: Steadiness): string =>
  gustMs[first] === 0
    ? `${name}: does not stand by itself, it ${first} without any wind. A pivot further up the frame, or ballast, would hold it.`
    : `${name}: estimated to hold a mean wind of ${forecastMs.toFixed(0)} m/s as forecast (Beaufort ${beaufort.force}, ${beaufort.name}), ` +
      `safety factor ${WIND_SAFETY_FACTOR}; beyond that it ${first} first.`;
