/** Losses that take the same share of every watt. */

/** Shares lost, 0 to 1: 0.03 is three per cent. */
export interface ConstantLosses {
  /** Dust, salt and droppings on the glass. */
  readonly dust: number;
  /** Anything else that takes a fixed share: mismatch, ageing, connections inside the panel. */
  readonly other: number;
}

/** A panel as its nameplate has it. */
export const NO_LOSSES: ConstantLosses = { dust: 0, other: 0 };

/**
 * The share of the power that is left after all constant losses, each taken from what the others left.
 *
 * @throws RangeError when a loss is not 0 to 1.
 * @example shareLeft({ dust: 0.02, other: 0.03 }) // 0.9506
 */
export const shareLeft = ({ dust, other }: ConstantLosses): number => {
  let left = 1;
  for (const [name, share] of Object.entries({ dust, other })) {
    if (!(share >= 0 && share <= 1)) {
      throw new RangeError(`shareLeft: expected ${name} loss 0 to 1, received ${share}`);
    }
    left *= 1 - share;
  }
  return left;
};
