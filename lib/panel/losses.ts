/** Losses that take the same share of every watt. */

/** Shares lost, 0 to 1: 0.03 is three per cent. */
export interface ConstantLosses {
  /** Dust, salt and droppings on the glass. */
  readonly dust: number;
  /** Cells and panels that do not match each other, connections inside the panel. */
  readonly mismatch: number;
  /** Light-induced loss of the first days and the years since. */
  readonly ageing: number;
  /** Anything else that takes a fixed share. */
  readonly other: number;
}

/** Customary allowances (common practice, no source): a panel wiped now and then, a few years old. */
export const CUSTOMARY_LOSSES: ConstantLosses = { dust: 0.02, mismatch: 0.01, ageing: 0.02, other: 0 };

/** A panel as its nameplate has it. */
export const NO_LOSSES: ConstantLosses = { dust: 0, mismatch: 0, ageing: 0, other: 0 };

/**
 * The share of the power that is left after all constant losses, each taken from what the others left.
 *
 * @throws RangeError when a loss is not 0 to 1.
 * @example shareLeft({ dust: 0.02, mismatch: 0.01, ageing: 0.02, other: 0 }) // 0.9508
 */
export const shareLeft = ({ dust, mismatch, ageing, other }: ConstantLosses): number => {
  let left = 1;
  for (const [name, share] of Object.entries({ dust, mismatch, ageing, other })) {
    if (!(share >= 0 && share <= 1)) {
      throw new RangeError(`shareLeft: expected ${name} loss 0 to 1, received ${share}`);
    }
    left *= 1 - share;
  }
  return left;
};
