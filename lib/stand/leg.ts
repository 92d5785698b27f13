import type { Problem } from "../units/problem.ts";
import { type LegHold, legMmOfTilt, pivotArm, type StandGeometry, tiltDegOfLeg } from "./geometry.ts";
import { tiltWords } from "./reading.ts";

/** A leg and the tilt it gives. */
export interface LegSetting {
  readonly legMm: number;
  readonly tiltDeg: number;
}

/** A leg that stands, or one that can't: why, and the nearest that does. */
export type LegFit =
  | ({ readonly kind: "stands" } & LegSetting)
  | { readonly kind: "impossible"; readonly problem: Problem; readonly nearest: LegSetting };

/** The settings between which a stand can be: the lowest and the highest. */
export interface LegReach {
  readonly lowest: LegSetting;
  /** A square leg has no greatest length on level ground: it then ends at 89 degrees. */
  readonly highest: LegSetting;
}

/** A square leg never reaches upright however long it is; one at 89 degrees is already 57 times its pivot distance. */
const STEEPEST_SQUARE_OPENING_DEG = 89;

const steepestOpeningDeg = (stand: StandGeometry): number => {
  if (stand.hold.kind === "square") return STEEPEST_SQUARE_OPENING_DEG;
  // A plumb leg is longest with the pivot straight above the heel (square to the slope it stands on).
  const { liftDeg } = pivotArm(stand);
  return (stand.hold.kind === "plumb" ? 90 : 180) - liftDeg;
};

/**
 * The lowest and highest tilt of a stand and the legs that give them. The lowest is flat on the ground (or the
 * pivot touching it), the highest at most upright.
 */
export const legReach = (stand: StandGeometry): LegReach => {
  const { groundSlopeDeg } = stand;
  const { liftDeg } = pivotArm(stand);
  const lowestTilt = Math.max(0, groundSlopeDeg, groundSlopeDeg - liftDeg);
  const highestTilt = Math.max(lowestTilt, Math.min(90, groundSlopeDeg + steepestOpeningDeg(stand)));
  const settingAt = (tiltDeg: number): LegSetting => ({
    legMm: Math.max(0, legMmOfTilt(stand, tiltDeg)),
    tiltDeg,
  });
  return { lowest: settingAt(lowestTilt), highest: settingAt(highestTilt) };
};

/** A length may miss the end of the reach by less than any saw or rule can show. */
const HAIR_MM = 1e-6;

const mm = (length: number): string => length.toFixed(1);

/**
 * The tilt that a leg gives. `legMm` runs from the pivot hole's centre to the foot, 0 or more.
 * A leg out of reach comes back as `impossible`, with the reason and the nearest leg that stands. NaN is out of reach.
 *
 * @example
 * tiltOfLeg({ hold: { kind: "plumb" }, pivotMm: 800, pivotInsetMm: 0, heelSpacerMm: 0, groundSlopeDeg: 0 }, 400)
 * // { kind: "stands", legMm: 400, tiltDeg: 30 }
 */
export const tiltOfLeg = (stand: StandGeometry, legMm: number): LegFit => {
  const { lowest, highest } = legReach(stand);
  const reached = Math.min(highest.legMm, Math.max(lowest.legMm, legMm));
  if (Math.abs(legMm - reached) <= HAIR_MM) {
    return { kind: "stands", legMm, tiltDeg: tiltDegOfLeg(stand, reached) };
  }
  const [nearest, why] = legMm > highest.legMm ? [highest, TOO_LONG] : [lowest, TOO_SHORT];
  return {
    kind: "impossible",
    nearest,
    problem: {
      path: "stand.legs",
      value: `${legMm} mm`,
      allowed: `must be ${mm(lowest.legMm)} to ${mm(highest.legMm)} mm`,
      hint: `${why[stand.hold.kind]}: nearest ${tiltWords(nearest.tiltDeg)}`,
    },
  };
};

type Why = Readonly<Record<LegHold["kind"], string>>;

/** What stands in the way of a leg, by how it is held. Short: this is most of the code behind one leg's tilt. */
const TOO_LONG: Why = {
  square: "the panel would stand upright or fall over backwards",
  plumb: "it is longer than the pivot can rise above the ground",
  strap: "the panel would lean past upright; a longer strap takes it",
};

const TOO_SHORT: Why = {
  square: "it does not reach the ground",
  plumb: "it does not reach the ground",
  strap: "it does not reach the strap's end; a strap nearer to the pivot distance takes it",
};

/**
 * The leg that gives a tilt (degrees up from horizontal, 0 to 90): the inverse of {@link tiltOfLeg}.
 * A tilt out of reach comes back as `impossible`, with the reason and the nearest setting that stands.
 *
 * @example
 * legOfTilt({ hold: { kind: "strap", strapMm: 800 }, pivotMm: 800, pivotInsetMm: 0, heelSpacerMm: 0, groundSlopeDeg: 0 }, 60)
 * // { kind: "stands", legMm: 800, tiltDeg: 60 }
 */
export const legOfTilt = (stand: StandGeometry, tiltDeg: number): LegFit => {
  const { lowest, highest } = legReach(stand);
  if (tiltDeg >= lowest.tiltDeg && tiltDeg <= highest.tiltDeg) {
    return { kind: "stands", legMm: Math.max(0, legMmOfTilt(stand, tiltDeg)), tiltDeg };
  }
  const tooSteep = tiltDeg > highest.tiltDeg;
  const nearest = tooSteep ? highest : lowest;
  return {
    kind: "impossible",
    nearest,
    problem: {
      path: "stand.legs",
      value: `${tiltDeg} deg`,
      allowed: `must be ${lowest.tiltDeg.toFixed(1)} to ${highest.tiltDeg.toFixed(1)} degrees up from level`,
      hint: `${tooSteep ? whyTooSteep(stand) : whyTooFlat(stand)}: nearest ${tiltWords(nearest.tiltDeg, 1)}, leg ${mm(nearest.legMm)} mm`,
    },
  };
};

const whyTooSteep = (stand: StandGeometry): string => {
  switch (stand.hold.kind) {
    case "square":
      return "a leg square to the panel never stands it upright";
    case "plumb":
      return "a plumb leg can lift the pivot no higher than straight above the heel";
    case "strap":
      return "the panel would lean past upright";
  }
};

const whyTooFlat = (stand: StandGeometry): string =>
  stand.groundSlopeDeg > 0
    ? "the ground already slopes more than that towards the aim"
    : "the pivot would be below the ground";

/**
 * What a change of one millimetre of leg does to the tilt, degrees per mm, by central difference.
 * NaN where the leg can't stand.
 */
export const degPerMm = (stand: StandGeometry, legMm: number): number => {
  const half = 1e-3;
  return (tiltDegOfLeg(stand, legMm + half) - tiltDegOfLeg(stand, legMm - half)) / (2 * half);
};
