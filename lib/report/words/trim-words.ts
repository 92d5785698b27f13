import type { Trim } from "../../stand/cut.ts";
import { tiltWords } from "../../stand/reading.ts";
import { inchesText } from "../../units/length.ts";
import { problemLine } from "../../units/problem.ts";

const whole = (mm: number): string => `${Math.round(mm)} mm (${inchesText(mm)})`;

/** What a cut is worth on a mean day of the season, panels on the stand, Wh: with the leg as it is, and as wanted. */
export interface TrimWorth {
  readonly nowDayWh: number;
  readonly thenDayWh: number;
}

/** Less of a day's energy than this is not worth a cut (our own choice: as for a further leg or change). */
const LEAST_GAIN = 0.02;

const worthWords = ({ nowDayWh, thenDayWh }: TrimWorth): string => {
  const gainWh = Math.round(thenDayWh - nowDayWh);
  const of = `of ${Math.round(nowDayWh)} Wh when the leg is kept all season`;
  if (gainWh <= 0)
    return `Kept all season, the cut leg brings ${gainWh === 0 ? "no more" : `${-gainWh} Wh a day less`}: cut only if it is for part of the season. `;
  return gainWh < LEAST_GAIN * nowDayWh
    ? `It hardly pays to cut: it brings ${gainWh} Wh a day more, ${of}. `
    : `Cutting brings ${gainWh} Wh a day more, ${of}. `;
};

const cutWords = ({ cutMm, firstCutMm, halfDegreeMm, now, then }: Extract<Trim, { kind: "cut" }>): string =>
  `${firstCutMm < cutMm ? "Cut" : "Cut no more than"} about ${whole(firstCutMm)} off the foot, stand it up, measure again: for ` +
  `${tiltWords(then.tiltDeg, 1)} the leg goes from about ${whole(now.legMm)} to ${whole(then.legMm)}. Half a degree of reading ` +
  `error is ${Math.max(1, Math.round(halfDegreeMm))} mm of leg. Keep the saw on the waste side of the mark, and do both legs of the pair alike.`;

/**
 * What to do with a leg that was cut and tried.
 *
 * @param worth what the cut brings, where the season is known
 */
export const trimWords = (trim: Trim, worth: TrimWorth | null = null): string => {
  switch (trim.kind) {
    case "impossible":
      return `That can't be: ${problemLine(trim.problem)}.`;
    case "leave":
      return `Leave it: ${tiltWords(trim.now.tiltDeg, 1)} is as near as a saw gets.`;
    case "lay flat":
      return `Don't cut: ${tiltWords(trim.then.tiltDeg, 1)} is too low for a leg. Use no leg, and lay the panel flat.`;
    case "cut":
      return `${worth === null ? "" : worthWords(worth)}${cutWords(trim)}`;
    case "too short":
      return (
        `Don't cut: the leg is already about ${whole(trim.byMm)} too short for ${tiltWords(trim.then.tiltDeg, 1)}. ` +
        "A block of that height under its foot, or a new leg, would do."
      );
  }
};
