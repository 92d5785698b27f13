import { type SwapRow, swapRows } from "../../season/legs/swap-rows.ts";
import type { SwapsAnswer } from "../../season/legs/swaps-answer.ts";
import type { Setting } from "../../season/light/settings.ts";
import { tiltWords } from "../../stand/reading.ts";
import { dateWords } from "../../units/dates.ts";
import { neverChangeWords } from "./enough-words.ts";
import { energyWords, gainWords, NO_LIGHT } from "./words.ts";

/** What kind of figures an answer about legs gives. */
export const figuresWords = (cloudIn: boolean): string =>
  cloudIn
    ? "Figures are what the dates can be expected to bring, with cloud in them; panels on the stand only."
    : "Figures are for a clear sky every day: an upper bound, not what to expect; panels on the stand only.";

const share = (value: number): string => `${(100 * value).toFixed(value > 0.995 ? 1 : 0)} %`;

/** The words for turning the stand round at a swap; `null` where it faces the same way before and after, or lies flat. */
export const turnWords = ({ from, to }: Pick<SwapRow, "from" | "to">): string | null => {
  if (from === null || from.legMm === null || to.legMm === null || from.bearingDeg === to.bearingDeg) {
    return null;
  }
  const turn = `turn the stand to face ${to.bearingDeg === 0 ? "north" : "south"}`;
  return from.legMm === to.legMm ? `${turn} on the same leg` : `change to ${to.name} and ${turn}`;
};

const swapSentence = ({ date, from, to, swap, earliest, latest }: SwapRow): string =>
  `${dateWords(date)}: ${turnWords({ from, to }) ?? `change to ${to.name}`}, ${tiltWords(to.tiltDeg)}; worth ${energyWords(swap?.worthWh ?? 0)}` +
  `${earliest === latest ? "" : `, any day from ${dateWords(earliest)} to ${dateWords(latest)} will do`}.`;

/** " facing north" where the stand may face more than one way. */
export const facingWords = (settings: readonly Setting[], bearingDeg: number): string =>
  settings.some((setting) => setting.bearingDeg !== settings[0].bearingDeg)
    ? ` facing ${bearingDeg === 0 ? "north" : "south"}`
    : "";

/** What never changing brings, of the settings at hand and of all tilts there are. */
const forgetSentence = ({
  calendar,
  settings,
  forgetTiltDeg,
  forgetBearingDeg,
  forgetTiltWh,
}: SwapsAnswer): string => {
  const forget = settings[calendar.forgetSetting];
  const against = gainWords(forgetTiltWh, calendar.totalWh);
  const compared =
    against === null || calendar.swaps.length === 0
      ? ""
      : `, ${against === "about the same" ? "about the same as" : `${against} than`} with the changes`;
  return (
    `Set and forget: of these settings ${forget.name}, ${energyWords(calendar.forgetWh)}; ` +
    `of all tilts ${tiltWords(forgetTiltDeg)}${facingWords(settings, forgetBearingDeg)}, ${energyWords(forgetTiltWh)}${compared}.`
  );
};

/** The swap calendar in plain sentences. */
export const swapsSummary = (answer: SwapsAnswer): readonly string[] => {
  const { calendar, cloudIn } = answer;
  if (!(calendar.everyDayWh > 0)) return [NO_LIGHT];
  const [start, ...swaps] = swapRows(answer);
  const startWords = `${start.to.name}, ${tiltWords(start.to.tiltDeg)}`;
  const never = neverChangeWords(answer);
  return [
    ...(never === null ? [] : [never]),
    figuresWords(cloudIn),
    ...(swaps.length === 0
      ? [`Keep ${startWords}, all season: changing brings nothing worth a walk.`]
      : [`Begin with ${startWords}.`, ...swaps.map(swapSentence)]),
    calendar.everyDayWh > calendar.firstWh
      ? `That keeps ${share(calendar.keptShare)} of what the legs gain over lying flat: ${energyWords(calendar.totalWh)} in all.`
      : `No leg gains anything over lying flat: ${energyWords(calendar.totalWh)} in all.`,
    forgetSentence(answer),
  ];
};
