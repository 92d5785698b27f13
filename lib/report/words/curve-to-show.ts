import type { OperatingCurve } from "../../circuit/operating-points.ts";

/** A curve, where controllers work on it, and the words that tell it from the others shown: `at 25 °C`. */
export interface CurveToShow {
  readonly label: string;
  readonly curve: OperatingCurve;
}
