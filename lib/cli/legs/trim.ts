import type { Plan } from "../../plan/plan.ts";
import { type Trim, trimOf } from "../../stand/cut.ts";
import { tiltOfReading } from "../../stand/reading.ts";
import { standGeometry } from "../../stand/settings.ts";
import { PlanError } from "../../units/problem.ts";
import { numberOption, textOption, UsageError, type VerbWords } from "../verb.ts";

/**
 * What to cut off a leg, when both tilts were given; `null` when trimming was not asked for.
 *
 * @throws PlanError when a tilt can't be had with the plan's stand
 */
export const trimAsked = (words: VerbWords, plan: Plan): Trim | null => {
  const [measured, wanted] = ["measured", "wanted"].map((name) =>
    numberOption(words, name, [0, 90], "degrees"),
  );
  const from = textOption(words, "read-from");
  if (measured === undefined && wanted === undefined && from === undefined) return null;
  if (measured === undefined || wanted === undefined) {
    throw new UsageError("trimming needs both --measured and --wanted");
  }
  if (from !== "ground" && from !== "post") {
    throw new UsageError(
      `--read-from${from === undefined ? "" : ` ${from}`}: must be ground or post, whichever both angles are read from`,
    );
  }
  const tilt = (deg: number): number => tiltOfReading({ deg, from });
  const trim = trimOf(standGeometry(plan.stand), tilt(measured), tilt(wanted));
  if (trim.kind === "impossible") throw new PlanError([trim.problem]);
  return trim;
};
