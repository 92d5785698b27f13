import fc from "fast-check";
import type { DiodeCurve } from "../../lib/panel/index.ts";
import type { Nameplate } from "../../lib/plan/nameplate.ts";

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Curves such as panels of a few watts to a few hundred have. */
export const anyCurve: fc.Arbitrary<DiodeCurve> = fc
  .record({
    photocurrentA: within(0.05, 15),
    openCircuitGuessV: within(5, 60),
    idealityShare: within(0.03, 0.06),
    seriesShare: within(0, 0.1),
    shuntTimes: within(20, 2000),
  })
  .map(({ photocurrentA, openCircuitGuessV, idealityShare, seriesShare, shuntTimes }) => {
    const idealityV = idealityShare * openCircuitGuessV;
    return {
      photocurrentA,
      saturationA: photocurrentA * Math.exp(-openCircuitGuessV / idealityV),
      seriesOhm: (seriesShare * openCircuitGuessV) / photocurrentA,
      shuntOhm: (shuntTimes * openCircuitGuessV) / photocurrentA,
      idealityV,
    };
  });

/** Nameplates such as crystalline panels carry, with every field given. */
export const anyNameplate: fc.Arbitrary<Required<Nameplate>> = fc
  .record({
    powerW: within(5, 450),
    vmpV: within(5, 45),
    vocOverVmp: within(1.19, 1.25),
    iscOverImp: within(1.05, 1.09),
    powerPctPerK: within(-0.5, -0.26),
    vocPctPerK: within(-0.36, -0.24),
    iscPctPerK: within(0.02, 0.07),
  })
  .map(({ powerW, vmpV, vocOverVmp, iscOverImp, ...coefficients }) => ({
    powerW,
    vmpV,
    impA: powerW / vmpV,
    vocV: vmpV * vocOverVmp,
    iscA: (powerW / vmpV) * iscOverImp,
    cellsInSeries: Math.round(vmpV / 0.5),
    ...coefficients,
  }));
