import type { DiodeReference } from "../panel/diode-conditions.ts";

/**
 * The curve of alike panels one behind another in the same light: the current of one at their voltages added up.
 *
 * @param inSeries Panels in the string, 1 or more.
 */
export const stringReference = (reference: DiodeReference, inSeries: number): DiodeReference =>
  inSeries === 1
    ? reference
    : {
        ...reference,
        idealityV: reference.idealityV * inSeries,
        seriesOhm: reference.seriesOhm * inSeries,
        shuntOhm: reference.shuntOhm * inSeries,
      };
