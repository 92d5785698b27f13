import { distance } from "fastest-levenshtein";

const UNIT = /(?:Deg|Mm|Cm|Ms|Minutes|PctPerK|Pct|Kg|Wh|Ah|[MWVAC])$/;

/** The known name nearest to a mistyped one, or `null` when none is near enough to be meant. */
export const nearestName = (typed: string, known: readonly string[]): string | null => {
  const word = typed.toLowerCase();
  let best: string | null = null;
  // Two slips are forgiven in a short word, two letters in five in a long one.
  let least = Math.max(2, Math.floor(word.length * 0.4)) + 1;
  for (const name of known) {
    // A name typed without its unit ("tilt" for "tiltDeg") is one slip, not three.
    const bare = name.replace(UNIT, "").toLowerCase();
    const slips = Math.min(distance(word, name.toLowerCase()), distance(word, bare) + 1);
    if (slips < least) {
      least = slips;
      best = name;
    }
  }
  return best;
};
