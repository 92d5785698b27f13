import type { CompleteNameplate } from "../plan/nameplate.ts";
import type { CurvePoints } from "./desoto-fit.ts";

/** The curve points of a complete nameplate, its coefficients in amperes, volts and shares for each kelvin. */
export const curvePointsOf = (plate: CompleteNameplate): CurvePoints => ({
  iscA: plate.iscA,
  vocV: plate.vocV,
  impA: plate.impA,
  vmpV: plate.vmpV,
  iscPerK: (plate.iscPctPerK / 100) * plate.iscA,
  vocPerK: (plate.vocPctPerK / 100) * plate.vocV,
  powerPerK: plate.powerPctPerK === undefined ? undefined : plate.powerPctPerK / 100,
});
