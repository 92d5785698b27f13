import type { LegSetAnswer } from "../../season/legs/leg-set.ts";
import type { LegsAnswer } from "../../season/legs/legs-answer.ts";
import { tiltWords } from "../../stand/reading.ts";
import { enoughLegsWords } from "./enough-words.ts";
import { legWords } from "./leg-words.ts";
import { facingWords, figuresWords } from "./swaps-summary.ts";
import { energyWords, gainWords, listWords, NO_LIGHT } from "./words.ts";

/** Cautions for the saw and the drill, to stand beside every cutting list. */
export const CUTTING_CAUTION =
  "Measure the stand itself before cutting, cut one leg of a pair and try it, wear eye protection, hold the stock in a vice and keep both hands clear of the blade. Drill no new hole in the panel's frame: it may break the frame, the glass and the warranty.";

const COUNTS = ["no leg", "one leg", "two legs", "three legs", "four legs"];

/** What the last leg of a set is good for, in the objective's own terms. */
const addsWords = ({ addsWh, shortDays }: LegSetAnswer, objective: LegsAnswer["objective"]): string => {
  if (shortDays !== null) return `${shortDays.toFixed(1)} short days in a mean season`;
  const added =
    addsWh < 0.05
      ? "the last leg adds next to nothing"
      : `the last leg adds ${addsWh.toFixed(addsWh < 10 ? 1 : 0)} Wh a day`;
  return objective === "worst month" ? `${added} in the poorest month` : added;
};

const setSentence = (set: LegSetAnswer, days: number, objective: LegsAnswer["objective"]): string =>
  `Best ${COUNTS[set.legs.length]} to cut: ${listWords(set.legs.map(legWords))}. With the best of them each day: ` +
  `${energyWords(set.totalWh)}, ${energyWords(set.totalWh / days)} a day; ${addsWords(set, objective)}.`;

/** Sets of legs in plain sentences: none to cut, then one more each. */
export const setSentences = (
  [bare, ...cut]: readonly LegSetAnswer[],
  days: number,
  objective: LegsAnswer["objective"],
): readonly string[] => {
  const chosen = cut.map((set) => setSentence(set, days, objective));
  if (bare.shortDays === null) {
    return cut.length > 0 ? chosen : ["No leg that could be cut brings more than what is there already."];
  }
  return [
    `Without a new leg: ${bare.shortDays.toFixed(1)} short days in a mean season.`,
    ...(cut.length > 0 ? chosen : ["No leg that could be cut saves a short day or a watt-hour short."]),
  ];
};

/** The answer about legs in plain sentences. */
export const legsSummary = (answer: LegsAnswer): readonly string[] => {
  const { sets, settings, ladder, bands, objective } = answer;
  const days = ladder.days.length;
  const [bare, ...cut] = sets;
  const [season] = bands;
  if (!(season.dayWh > 0)) return [NO_LIGHT];
  const flat = settings[0];
  const best = settings.reduce((most, facts) => (facts.totalWh > most.totalWh ? facts : most));
  const last = cut.at(-1);
  const gain = last && gainWords(last.totalWh, bare.totalWh);
  const enough = enoughLegsWords(answer);
  return [
    ...(enough === null ? [] : [enough]),
    figuresWords(ladder.cloudIn),
    `Never changed, the best tilt is ${tiltWords(season.bestTiltDeg)}${facingWords(
      settings.map(({ setting }) => setting),
      ladder.bearingDeg,
    )}: ${energyWords(season.dayWh)} a day. ` +
      `Anything from ${season.within1Pct[0]}° to ${season.within1Pct[1]}° from the ground is within 1 % of it, ` +
      `${season.within3Pct[0]}° to ${season.within3Pct[1]}° within 3 %.`,
    ...(best === flat
      ? []
      : [
          `Of the legs here, ${best.setting.name} kept all season brings most: ${energyWords(best.totalWh)}` +
            `${flat.totalWh > 0 ? `, ${gainWords(best.totalWh, flat.totalWh)} than lying flat` : ""}.`,
        ]),
    ...setSentences(sets, days, objective),
    ...(last === undefined || gain === null || gain === undefined || cut.length === 0
      ? []
      : [`In all: ${gain} than without a new leg.`]),
  ];
};
