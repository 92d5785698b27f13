import type { Worth } from "../../plan/worth.ts";
import type { SmallestPanel } from "../../season/battery/smallest-panel.ts";
import type { WorthAnswer, WorthRow } from "../../season/battery/worth.ts";
import { dangerWords } from "./circuit-cautions.ts";
import { coldWords } from "./cold-words.ts";
import { assumedPrices, copingWords, moneyWords, WAY_WORDS } from "./coping-words.ts";
import { shortDaysWords } from "./short-days-words.ts";
import { energyWords, listWords } from "./words.ts";

const wattHours = (wh: number): string => (Math.abs(wh) < 9.95 ? wh.toFixed(1) : String(Math.round(wh)));

/** A gain below this share of what is promised on paper is called wasted. */
const MOSTLY_WASTED = 0.5;
/** Fewer short days avoided a season than this are none to speak of. */
const HARDLY = 0.2;

/** Seasons in words, whole ones. */
const seasonsWords = (seasons: number): string => {
  const whole = Math.ceil(seasons);
  return whole <= 1 ? "within the first season" : `after ${whole} seasons`;
};

/** What it pays against, and when; `null` when it does not within its years. */
const paysWords = ({ paysAfter, coping }: WorthRow, years: number): string | null =>
  paysAfter === null || paysAfter > years
    ? null
    : `pays for itself against ${WAY_WORDS[coping.by]} ${seasonsWords(paysAfter)}`;

/** What becomes of the light that a remedy adds on paper, where most of it is not used. */
const wasteReason = (row: WorthRow, asIs: WorthAnswer["asIs"]): string | null => {
  const { paperWhADay, usefulWhADay } = row;
  if (paperWhADay < 1 || usefulWhADay >= MOSTLY_WASTED * paperWhADay) return null;
  const full = Math.round(100 * asIs.fullByNoonShare);
  const why =
    full >= 25
      ? `today the battery is full by noon on ${full} % of days`
      : `with it the battery is full by noon on ${Math.round(100 * row.fullByNoonShare)} % of days`;
  return `${why}: it adds ${wattHours(paperWhADay)} Wh a day on paper, ${wattHours(usefulWhADay)} in use`;
};

/**
 * A plain verdict with its reason: "Worth it: 23 short days a season fewer; pays for itself against a generator after
 * 2 seasons."
 */
export const worthVerdict = (row: WorthRow, answer: WorthAnswer, worth: Worth): string => {
  const { asIs } = answer;
  const { shortDaysAvoided } = row;
  const [danger] = row.unsafe;
  if (danger !== undefined) return `Not with this build: ${danger.words}`;
  if (asIs.shortDays === 0) return "Not needed: today no day is short.";
  if (asIs.shortDays <= worth.wantedShortDays) {
    const spared =
      shortDaysAvoided < HARDLY ? "" : `; it would make ${shortDaysWords(shortDaysAvoided)} fewer`;
    return `Not needed: ${shortDaysWords(asIs.shortDays)} a season is within the short days you accept${spared}.`;
  }
  const reason = wasteReason(row, asIs);
  const because = reason === null ? "" : ` ${reason.charAt(0).toUpperCase()}${reason.slice(1)}.`;
  if (shortDaysAvoided <= -HARDLY) {
    return `Not worth it: it brings ${shortDaysWords(-shortDaysAvoided)} a season more.${because}`;
  }
  if (shortDaysAvoided < HARDLY) {
    return `Not worth it: it avoids ${shortDaysAvoided > 0 ? "hardly a" : "no"} short day.${because}`;
  }
  const fewer = `${shortDaysWords(shortDaysAvoided)} a season fewer`;
  const enough = row.enough ? ", and that is enough" : "";
  if (row.price === 0) return `Nothing to buy: ${fewer}${enough}.${because}`;
  const pays = paysWords(row, worth.years);
  if (pays !== null) return `Worth it: ${fewer}${enough}; ${pays}.${because}`;
  const each =
    row.pricePerShortDay === null ? "" : ` at ${moneyWords(row.pricePerShortDay, worth.currency)} each`;
  return `Only for comfort: ${fewer}${each}${enough}, but ${WAY_WORDS[row.coping.by]} when it is flat ${row.coping.by === "hook-up" ? "are" : "is"} cheaper over ${worth.years} years.${because}`;
};

/** Whether anything draws on the battery: without that nothing can be worth anything. */
const statesLoads = ({ asIs }: WorthAnswer): boolean =>
  asIs.season.outcomes.some(({ wantedWh }) => wantedWh > 0);

/** Every remedy with its verdict, a line each; none where the plan states no loads. */
export const worthVerdicts = (answer: WorthAnswer, worth: Worth): readonly string[] =>
  statesLoads(answer)
    ? answer.rows.map((row) => `${row.name} (${row.says}): ${worthVerdict(row, answer, worth)}`)
    : [];

/** The set-up to choose: the cheapest that is enough; `null` when none is. */
export const cheapestEnough = ({ rows }: WorthAnswer): WorthRow | null =>
  rows.filter(({ enough }) => enough).sort((a, b) => a.price - b.price)[0] ?? null;

const smallestWords = (
  { where, watts, shortDays, price: cost, needs }: SmallestPanel,
  worth: Worth,
): string => {
  const place = where === "roof" ? "flat on the roof" : "on legs of its own";
  const wanted = shortDaysWords(worth.wantedShortDays);
  if (watts === 0) return `For ${wanted} a season no second panel ${place} is needed.`;
  return watts === null
    ? `No second panel ${place} up to 600 W that can be wired safely here brings it down to ${wanted} a season; the largest leaves ${shortDaysWords(shortDays)}.`
    : `The smallest second panel ${place} that keeps within ${wanted} a season: ${watts} W${needs.length === 0 ? "" : ` with ${listWords(needs.map(({ what }) => what))}`} (${moneyWords(cost ?? 0, worth.currency)}), leaving ${shortDaysWords(shortDays)}.`;
};

/** Where it is the cold that no panel mends. */
const coldBeforePanel = (
  { cold }: WorthAnswer,
  { wantedShortDays }: Worth,
  smallest: readonly SmallestPanel[],
): readonly string[] =>
  cold !== null && cold.shortDaysFromCold > wantedShortDays && smallest.some(({ watts }) => watts === null)
    ? [
        "That is the cold: a battery that cannot be charged is not helped by a bigger panel. Keep it warm first, then ask again.",
      ]
    : [];

/** The whole answer in plain sentences: how today is, what to do, what not to buy. */
export const worthSummary = (
  answer: WorthAnswer,
  worth: Worth,
  smallest: readonly SmallestPanel[],
): readonly string[] => {
  const { asIs, rows, cold } = answer;
  const seasons = asIs.season.outcomes.length;
  if (!statesLoads(answer)) {
    return [
      ...dangerWords(answer.remarks),
      'The plan states no loads: add them under "loads", or nothing can be said to be worth it.',
    ];
  }
  const badSeason =
    asIs.shortDaysP90 === null ? "" : `; one season in ten has more than ${Math.round(asIs.shortDaysP90)}`;
  const sentences = [
    ...dangerWords(answer.remarks),
    `Judged by ${seasons === 1 ? "one season" : `${seasons} seasons`}, the same for every set-up.`,
    `As it is: ${shortDaysWords(asIs.shortDays)} a season${badSeason}. The loads go short of ${energyWords(asIs.shortWh)} a season.`,
  ];
  if (asIs.shortDays === 0)
    return [...sentences, "Nothing needs to be bought.", ...smallest.map((one) => smallestWords(one, worth))];
  sentences.push(
    ...coldWords(cold, asIs.season.setUp.battery, answer.days, asIs.shortDays),
    ...copingWords(answer.ways, answer.asIs.coping, worth, cold !== null),
  );
  const choice = cheapestEnough(answer);
  const wanted = shortDaysWords(worth.wantedShortDays);
  if (asIs.shortDays <= worth.wantedShortDays) {
    sentences.push(`That is within the ${wanted} you accept: nothing needs to be bought.`);
  } else if (choice === null) {
    const best = [...rows].sort((a, b) => a.shortDays - b.shortDays)[0];
    sentences.push(
      `Nothing compared here alone comes down to ${wanted}; nearest is ${best.name} with ${shortDaysWords(best.shortDays)}.`,
    );
  } else {
    sentences.push(
      `Cheapest that is enough: ${choice.name} (${choice.says}), ${moneyWords(choice.price, worth.currency)}, leaving ${shortDaysWords(choice.shortDays)} a season.`,
    );
  }
  if (asIs.shortDays <= worth.wantedShortDays)
    return [...sentences, ...smallest.map((one) => smallestWords(one, worth))];
  const wasted = rows.filter((row) => row.price > 0 && row.shortDaysAvoided < HARDLY);
  if (wasted.length > 0)
    sentences.push(`Not worth their price: ${listWords(wasted.map(({ name }) => name))}.`);
  return [
    ...sentences,
    ...smallest.map((one) => smallestWords(one, worth)),
    ...coldBeforePanel(answer, worth, smallest),
    ...assumedPrices(
      rows.flatMap(({ name, needs }) => [name, ...needs.map(({ what }) => what)]),
      worth,
    ),
  ];
};
