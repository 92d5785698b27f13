import type { Circuit } from "../plan/circuit.ts";
import { ampacityOf } from "./ampacity.ts";
import type { ControllerInput } from "./build.ts";
import { fuseAtLeast } from "./fuse.ts";
import { type CircuitRemark, remark } from "./remark.ts";
import { wireSizeOf } from "./wire.ts";

/** Two branches can feed a fault in one of them with no more than it makes itself: from three on each has a fuse (common practice, no source). */
const MOST_UNFUSED = 2;

/**
 * The fuse that a branch with this short-circuit current needs, A: the next standard size above the current in strong
 * light with the allowance for hours on end (1.25 x 1.25 = 1.56, NEC 690.9, from memory); `null` above the largest.
 *
 * @example branchFuseFor({ strongLightFactor: 1.25, continuousFactor: 1.25 }, 6) // 10
 */
export const branchFuseFor = (
  { strongLightFactor, continuousFactor }: Pick<Circuit, "strongLightFactor" | "continuousFactor">,
  iscA: number,
): number | null => fuseAtLeast(iscA * strongLightFactor * continuousFactor);

const branchCount = (strings: ControllerInput["strings"]): number =>
  strings.reduce((sum, { count }) => sum + count, 0);

/** Whether branches side by side on one controller can feed a fault in one of them with more than it stands. */
const needsFuses = ({ strongLightFactor }: Circuit, { strings }: ControllerInput): boolean => {
  if (branchCount(strings) > MOST_UNFUSED) return true;
  const allA = strings.reduce((sum, { of, count }) => sum + count * of.nameplate.iscA, 0);
  return strings.some(
    ({ of: { maxSeriesFuseA = Number.POSITIVE_INFINITY, nameplate } }) =>
      (allA - nameplate.iscA) * strongLightFactor > maxSeriesFuseA,
  );
};

/** What is to be said of the fuses in branches side by side on one controller. */
export const branchFuseRemarks = (circuit: Circuit, input: ControllerInput): readonly CircuitRemark[] => {
  if (!needsFuses(circuit, input)) return [];
  const { branchFuseA, panelCable, hottestC } = circuit;
  if (branchFuseA === undefined) {
    return [
      remark(
        "danger",
        "branch fuses",
        `${branchCount(input.strings) > MOST_UNFUSED ? "Three or more branches side by side" : "Branches side by side can feed a fault with more than their labels allow"}: each needs a fuse of its own, no larger than its label's greatest series fuse.`,
      ),
    ];
  }
  const carries = ampacityOf(
    wireSizeOf(panelCable.size),
    panelCable.material,
    panelCable.insulationC,
    hottestC,
  );
  return [
    ...(carries !== null && branchFuseA > carries.amps
      ? [
          remark(
            "danger",
            "panel cable",
            `A branch fuse of ${branchFuseA} A does not protect a panel cable that may carry ${carries.amps.toFixed(1)} A.`,
          ),
        ]
      : []),
    ...input.strings.flatMap(({ of: { name, nameplate, maxSeriesFuseA } }): readonly CircuitRemark[] => {
      if (maxSeriesFuseA !== undefined && branchFuseA > maxSeriesFuseA) {
        return [
          remark(
            "danger",
            "branch fuses",
            `A branch fuse of ${branchFuseA} A is above the ${maxSeriesFuseA} A that the label of "${name}" allows.`,
          ),
        ];
      }
      const needed = branchFuseFor(circuit, nameplate.iscA);
      return needed !== null && branchFuseA < needed
        ? [
            remark(
              "loss",
              "branch fuses",
              `A branch fuse of ${branchFuseA} A may blow in strong light: "${name}" needs one of ${needed} A.`,
            ),
          ]
        : [];
    }),
  ];
};
