/** What a nameplate says, what it leaves out, and whether it can be true. */
import type { Problem } from "../units/problem.ts";

/** A panel's nameplate. Only the power is needed; what is left out is filled by {@link completeNameplate}. */
export interface Nameplate {
  /** Rated power at standard test conditions, W. */
  readonly powerW: number;
  /** Voltage and current at the maximum-power point. */
  readonly vmpV?: number | undefined;
  readonly impA?: number | undefined;
  /** Open-circuit voltage and short-circuit current. */
  readonly vocV?: number | undefined;
  readonly iscA?: number | undefined;
  /** Temperature coefficients, per cent of the value at 25 degC for each kelvin: -0.4 is a loss of 0.4 %/K. */
  readonly powerPctPerK?: number | undefined;
  readonly vocPctPerK?: number | undefined;
  readonly iscPctPerK?: number | undefined;
  /** Cells in series; asked for only where no voltage is known. */
  readonly cellsInSeries?: number | undefined;
}

type FilledName = Exclude<keyof Nameplate, "cellsInSeries" | "powerPctPerK">;

/** A nameplate with everything in it that a curve needs, and the names of what had to be filled. */
export interface CompleteNameplate extends Readonly<Record<FilledName, number>> {
  /** `undefined` where only the coefficient of voltage was given: the curve then says what that of power is. */
  readonly powerPctPerK: number | undefined;
  readonly assumed: readonly (FilledName | "powerPctPerK")[];
}

/** What is assumed where a nameplate is short: an ordinary panel of crystalline silicon (common practice, no source). */
export const ASSUMED = {
  /** Cells in series of a panel for a 12 V battery. */
  cellsInSeries: 36,
  /** Volts of a cell at maximum power: 18 V from 36. */
  vmpPerCellV: 0.5,
  /** Open-circuit voltage over that at maximum power. */
  vocOverVmp: 1.22,
  /** Short-circuit current over that at maximum power. */
  iscOverImp: 1.065,
  powerPctPerK: -0.4,
  vocPctPerK: -0.3,
  iscPctPerK: 0.05,
} as const;

/** How far Vmp x Imp may lie from the rated power: the rounding of a small panel's plate (0.57 A is +-1 %), and a little. */
const POWER_TOLERANCE = 0.03;

/** Power over Voc x Isc: below this no panel is sold as new, above it no silicon cell has been made (common practice, no source). */
const FILL_FACTORS = [0.5, 0.88] as const;

const FILLED_NAMES = [
  "powerW",
  "vmpV",
  "impA",
  "vocV",
  "iscA",
  "vocPctPerK",
  "iscPctPerK",
] as const satisfies readonly FilledName[];

/**
 * The nameplate with everything left out filled: from the other values where they settle it, else from {@link ASSUMED}.
 *
 * @example completeNameplate({ powerW: 90 }) // { vmpV: 18, impA: 5, vocV: 21.96, iscA: 5.325 }
 */
export const completeNameplate = (plate: Nameplate): CompleteNameplate => {
  const fromVoc = plate.vocV === undefined ? undefined : plate.vocV / ASSUMED.vocOverVmp;
  const fromImp = plate.impA === undefined ? undefined : plate.powerW / plate.impA;
  const fromCells = (plate.cellsInSeries ?? ASSUMED.cellsInSeries) * ASSUMED.vmpPerCellV;
  const vmpV = plate.vmpV ?? fromImp ?? fromVoc ?? fromCells;
  const impA = plate.impA ?? plate.powerW / vmpV;
  const filled = {
    powerW: plate.powerW,
    vmpV,
    impA,
    vocV: plate.vocV ?? vmpV * ASSUMED.vocOverVmp,
    iscA: plate.iscA ?? impA * ASSUMED.iscOverImp,
    vocPctPerK: plate.vocPctPerK ?? ASSUMED.vocPctPerK,
    iscPctPerK: plate.iscPctPerK ?? ASSUMED.iscPctPerK,
  };
  const assumed = FILLED_NAMES.filter((name) => plate[name] === undefined);
  return plate.powerPctPerK === undefined && plate.vocPctPerK === undefined
    ? { ...filled, powerPctPerK: ASSUMED.powerPctPerK, assumed: [...assumed, "powerPctPerK"] }
    : { ...filled, powerPctPerK: plate.powerPctPerK, assumed };
};

/** A coefficient that must be a loss. */
const lossProblem = (path: string, value: number | undefined, least: number): Problem | null => {
  if (value === undefined || (value <= 0 && value >= least)) return null;
  const hint =
    value > 0
      ? "a panel loses as it warms: a loss is negative"
      : "per cent of the value at 25 degC for each kelvin, not volts or milliwatts";
  return { path, value, allowed: `must be ${least} to 0 % per K`, hint };
};

/**
 * Every reason why a nameplate cannot be true.
 *
 * @param plate As given; what is left out is not complained about.
 * @param path Where it stands in the plan.
 * @returns Empty when it is sound.
 * @example nameplateProblems({ powerW: 100, vmpV: 18, vocV: 17 }, "module")[0]?.path // "module.vocV"
 */
export const nameplateProblems = (plate: Nameplate, path = "module"): readonly Problem[] => {
  const problems: (Problem | null)[] = [];
  const positive = ["powerW", "vmpV", "impA", "vocV", "iscA"] as const;
  for (const name of positive) {
    const value = plate[name];
    if (value !== undefined && !(value > 0 && Number.isFinite(value))) {
      problems.push({ path: `${path}.${name}`, value, allowed: "must be a number above 0" });
    }
  }
  problems.push(
    lossProblem(`${path}.powerPctPerK`, plate.powerPctPerK, -1),
    lossProblem(`${path}.vocPctPerK`, plate.vocPctPerK, -1),
  );
  if (plate.iscPctPerK !== undefined && !(plate.iscPctPerK >= -0.1 && plate.iscPctPerK <= 0.3)) {
    problems.push({
      path: `${path}.iscPctPerK`,
      value: plate.iscPctPerK,
      allowed: "must be -0.1 to 0.3 % per K",
      hint: "the current gains a little as the panel warms: about 0.05",
    });
  }
  const found = problems.filter((problem) => problem !== null);
  return found.length > 0 ? found : fitProblems(plate, path);
};

/**
 * Watts of one cell in series: a 1 W garden panel of 12 cells has 0.08, the largest cells side by side some 15 (common
 * practice, no source).
 */
const CELL_W = [0.02, 20] as const;

const cellProblems = ({ powerW, cellsInSeries }: Nameplate, path: string): readonly Problem[] => {
  if (cellsInSeries === undefined) return [];
  const each = powerW / cellsInSeries;
  return each >= CELL_W[0] && each <= CELL_W[1]
    ? []
    : [
        {
          path: `${path}.cellsInSeries`,
          value: cellsInSeries,
          allowed: `cells of ${each.toPrecision(2)} W are on no panel: ${powerW} W over them must be ${CELL_W[0]} to ${CELL_W[1]} W each`,
          hint: "a panel for a 12 V battery has about 36 in series; left out, that is taken",
        },
      ];
};

/** Reasons why values that are each possible cannot stand on one nameplate. */
const fitProblems = (plate: Nameplate, path: string): readonly Problem[] => {
  const whole = completeNameplate(plate);
  const { powerW, vmpV, impA, vocV, iscA } = whole;
  const problems: Problem[] = [...cellProblems(plate, path)];
  const product = vmpV * impA;
  if (Math.abs(product / powerW - 1) > POWER_TOLERANCE) {
    problems.push({
      path: `${path}.powerW`,
      value: powerW,
      allowed: `must be Vmp x Imp = ${product.toPrecision(4)} W within ${POWER_TOLERANCE * 100} %`,
      hint: "one of the three is misread, or belongs to another panel",
    });
  }
  // A Voc or Isc that was left out is assumed above Vmp or Imp: only one that was given can be too low.
  if (!(vocV > vmpV)) {
    problems.push({
      path: `${path}.vocV`,
      value: vocV,
      allowed: `Voc must be above Vmp (${vmpV.toPrecision(4)} V)`,
      hint: "the open-circuit voltage is the greater of the two; are they exchanged?",
    });
  }
  if (!(iscA > impA)) {
    problems.push({
      path: `${path}.iscA`,
      value: iscA,
      allowed: `Isc must be above Imp (${impA.toPrecision(4)} A)`,
      hint: "the short-circuit current is the greater of the two; are they exchanged?",
    });
  }
  const fill = product / (vocV * iscA);
  if (problems.length === 0 && !(fill >= FILL_FACTORS[0] && fill <= FILL_FACTORS[1])) {
    problems.push({
      path,
      value: Number(fill.toFixed(3)),
      allowed: `Vmp x Imp over Voc x Isc (the fill factor) must be ${FILL_FACTORS[0]} to ${FILL_FACTORS[1]}`,
      hint: "a voltage or a current is misread",
    });
  }
  return problems;
};
