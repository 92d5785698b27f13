import type { Stand } from "../plan/stand.ts";
import { PlanError, type Problem } from "../units/problem.ts";
import { type Piece, pieceOfLeg } from "./cut.ts";
import type { NamedLeg } from "./settings.ts";
import { type CuttingPlan, cutStock } from "./stock.ts";
import { type Stowing, stowing, stowProblem } from "./stow.ts";

/** One length of leg on the sheet. */
export interface SheetLeg extends NamedLeg, Piece {
  /** Letter to write on the leg, shortest A. */
  readonly mark: string;
  /** How many to cut; none of an owned one. */
  readonly howMany: number;
  /** Why it does not stow in the frame, or `null`. */
  readonly stowing: Problem | null;
}

/** All that a person with a saw needs to know. */
export interface CuttingSheet {
  readonly legs: readonly SheetLeg[];
  readonly stock: CuttingPlan;
  readonly stow: Stowing;
}

/** Legs to be cut that would be nothing but their rubber foot. */
const footProblems = (legs: readonly NamedLeg[], footMm: number): readonly Problem[] =>
  legs.flatMap(({ name, legMm, owned }) =>
    owned || legMm > footMm
      ? []
      : [
          {
            path: "stand.cutting.footMm",
            value: footMm,
            allowed: `must be less than the leg "${name}", ${legMm.toFixed(1)} mm`,
            hint: "it is the part of the leg that the rubber foot makes up",
          },
        ],
  );

/**
 * The cutting sheet for a set of legs: pieces, holes, marks, and the stock to buy.
 *
 * @param panelLengthMm the frame's length along the aim, for stowing
 * @throws PlanError when a piece is longer than all stock, or a leg no longer than its rubber foot
 */
export const cuttingSheet = (
  stand: Stand,
  panelLengthMm: number,
  legs: readonly NamedLeg[],
): CuttingSheet => {
  const { cutting } = stand;
  const problems = footProblems(legs, cutting.footMm);
  if (problems.length > 0) throw new PlanError(problems);
  const stow = stowing(stand, panelLengthMm);
  const marked = [...legs]
    .sort((a, b) => a.legMm - b.legMm)
    .map(
      (leg, index): SheetLeg => ({
        ...leg,
        ...pieceOfLeg(leg.legMm, cutting),
        mark: String.fromCharCode(65 + index),
        howMany: leg.owned ? 0 : cutting.legsEach,
        stowing: stowProblem(`leg "${leg.name}"`, leg.legMm, stow),
      }),
    );
  return { legs: marked, stow, stock: cutStock(marked, cutting.stockMm, cutting.kerfMm) };
};
