import type { Trim } from "../../stand/cut.ts";
import { tiltWords } from "../../stand/reading.ts";
import { inchesText } from "../../units/length.ts";
import { problemLine } from "../../units/problem.ts";

const lengths = (mm: number): string => `${mm.toFixed(1)} mm (${inchesText(mm)})`;

/** What to do with a leg that was cut and tried, in a sentence. */
export const trimWords = (trim: Trim): string => {
  switch (trim.kind) {
    case "impossible":
      return `That can't be: ${problemLine(trim.problem)}.`;
    case "leave":
      return `Leave it: ${tiltWords(trim.now.tiltDeg, 1)} is as near as a saw gets.`;
    case "cut":
      return (
        `Cut ${lengths(trim.cutMm)} off the foot: from ${lengths(trim.now.legMm)} to ${lengths(trim.then.legMm)}, ` +
        `for ${tiltWords(trim.then.tiltDeg, 1)}. Keep the saw on the waste side of the mark, and do both legs of the pair alike.`
      );
    case "too short":
      return (
        `Don't cut: the leg is already ${lengths(trim.byMm)} too short for ${tiltWords(trim.then.tiltDeg, 1)}. ` +
        "A block of that height under its foot, or a new leg, would do."
      );
  }
};
