import type { SwapsAnswer } from "../season/swaps-answer.ts";
import { tiltWords } from "../stand/reading.ts";
import { swapRows } from "./swaps-table.ts";
import { dateWords, energyWords, gainWords } from "./words.ts";

const share = (value: number): string => `${(100 * value).toFixed(value > 0.995 ? 1 : 0)} %`;

/** The swap calendar in plain sentences. */
export const swapsSummary = (answer: SwapsAnswer): readonly string[] => {
  const { calendar, settings, cloudIn, forgetTiltDeg, forgetTiltWh } = answer;
  const [start, ...swaps] = swapRows(answer);
  const forget = settings[calendar.forgetSetting];
  const loss = 1 - forgetTiltWh / calendar.totalWh;
  return [
    cloudIn
      ? "Figures are what the dates can be expected to bring, with cloud in them; panels on the stand only."
      : "Figures are for a clear sky every day: an upper bound, not what to expect; panels on the stand only.",
    swaps.length === 0
      ? `Keep ${start.to.name} all season (${tiltWords(start.to.tiltDeg)}): changing brings nothing worth a walk.`
      : `Begin with ${start.to.name}, ${tiltWords(start.to.tiltDeg)}.`,
    ...swaps.map(
      ({ date, to, swap, earliest, latest }) =>
        `${dateWords(date)}: change to ${to.name}, ${tiltWords(to.tiltDeg)}; worth ${energyWords(swap?.worthWh ?? 0)}` +
        `${earliest === latest ? "" : `, any day from ${dateWords(earliest)} to ${dateWords(latest)} will do`}.`,
    ),
    `That keeps ${share(calendar.keptShare)} of what the legs gain over lying flat: ${energyWords(calendar.totalWh)} in all.`,
    `Set and forget: of these settings ${forget.name} (${energyWords(calendar.forgetWh)}); of all tilts ${tiltWords(forgetTiltDeg)} ` +
      `(${energyWords(forgetTiltWh)}, ${loss > 0.005 ? `${gainWords(forgetTiltWh, calendar.totalWh)} than with the swaps` : "about the same as with the swaps"}).`,
  ];
};
