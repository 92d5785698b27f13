import { type TopUpWay, type Worth, worthSchema } from "../../plan/worth.ts";
import type { Coping } from "../../season/battery/coping.ts";
import { listWords } from "./words.ts";

/** Money in words: cents only where they matter. */
export const moneyWords = (amount: number, currency: string): string =>
  `${currency} ${amount < 10 ? amount.toFixed(2) : Math.round(amount)}`;

/** Ways to top up, as they are spoken of. */
export const WAY_WORDS: Readonly<Record<TopUpWay, string>> = {
  "hook-up": "hook-up nights",
  driving: "driving",
  generator: "a generator",
};

/** Fewer times a season, and fewer days, than this are none to speak of. */
const [HARDLY, HARDLY_DAYS] = [0.05, 0.95];

const times = (count: number, one: string, more: string): string => {
  const shown = count < 9.95 ? Number(count.toFixed(1)) : Math.round(count);
  return `${shown} ${shown === 1 ? one : more}`;
};

const wayWords = ({ by, topUps, hours, price }: Coping, { currency, instead }: Worth): string => {
  const cost = moneyWords(price, currency);
  switch (by) {
    case "hook-up":
      return `${times(topUps, "night at a hook-up", "nights at a hook-up")} (${cost})`;
    case "driving":
      return `${times(topUps, "drive", "drives")} of ${instead.drivingMinutes} minutes (${cost})`;
    case "generator":
      return `${times(topUps, "generator run", "generator runs")}, ${times(hours, "hour", "hours")} in all (${cost})`;
  }
};

const USUAL = worthSchema.parse({}).instead;

/** What was taken for a way because the plan leaves it at the usual figure. */
const assumedOf = (by: TopUpWay, { currency, instead }: Worth): readonly string[] => {
  const usual = (key: keyof typeof USUAL, words: string): readonly string[] =>
    instead[key] === USUAL[key] ? [words] : [];
  switch (by) {
    case "hook-up":
      return [
        ...usual("hookUpNight", `${moneyWords(instead.hookUpNight, currency)} a night`),
        ...usual("hookUpHours", `${instead.hookUpHours} hours a night`),
        ...usual(
          "hookUpChargePct",
          `a mains charger of ${instead.hookUpChargePct} % of the capacity an hour`,
        ),
      ];
    case "driving":
      return [
        ...usual("drivingHour", `${moneyWords(instead.drivingHour, currency)} an hour of driving`),
        ...usual("drivingHourWh", `${instead.drivingHourWh} Wh from an hour of driving`),
      ];
    case "generator":
      return [
        ...usual("generatorHour", `${moneyWords(instead.generatorHour, currency)} an hour of generator`),
        ...usual("generatorHourWh", `${instead.generatorHourWh} Wh from an hour of generator`),
      ];
  }
};

/**
 * What topping up comes to, in plain sentences: how often, what it costs, what is left short, and which figures were
 * taken because the plan leaves them at the usual ones.
 *
 * @param ways looked at; the first sentence names them all
 * @param inTheCold whether there are days on which the cold blocks its charging
 * @param rests the way that the answer rests on; `null` where it rests on none
 */
export const copingWords = (
  ways: readonly Coping[],
  rests: Coping | null,
  worth: Worth,
  inTheCold: boolean,
): readonly string[] => {
  if (ways.every(({ topUps }) => topUps < HARDLY)) return [];
  const looked = ways.map((way) => wayWords(way, worth));
  const left = ways.filter(({ shortDays }) => shortDays >= HARDLY_DAYS);
  const assumed = ways.flatMap(({ by }) => assumedOf(by, worth));
  const stated = worth.instead.inUse !== undefined;
  return [
    stated
      ? `Topped up each time it is flat: ${looked.join("; ")} a season.`
      : `Topping it up each time it is flat would take, a season: ${looked.join("; or ")}.`,
    ...(stated || rests === null
      ? []
      : [
          `The plan does not say which way is yours ("worth": { "instead": { "inUse": ... } }): this rests on the cheapest, ${WAY_WORDS[rests.by]}${rests.by === "generator" ? " (its fuel; the generator itself is not counted)" : ""}.`,
        ]),
    ...(left.length === 0
      ? []
      : [
          `Even so, days stay short: ${listWords(left.map(({ by, shortDays }) => `${times(shortDays, "day", "days")} with ${WAY_WORDS[by]}`))}.`,
        ]),
    ...(inTheCold
      ? [
          "A battery that is too cold is taken to be warmed while it is topped up: no charger may fill a frozen lithium battery.",
        ]
      : []),
    ...(assumed.length === 0
      ? []
      : [`Assumed, since the plan keeps the usual figures: ${listWords(assumed)}.`]),
  ];
};

/** What each remedy's price is made of, by the plan's own field. */
const PRICED: readonly (readonly [key: keyof Worth["prices"], remedy: RegExp, per: string])[] = [
  ["legs", /^(legs used|re-aimed)$/, "a set of legs"],
  ["panelPerW", /^second panel/, "a watt of second panel"],
  ["roofMount", /^second panel on the roof/, "a roof mount"],
  ["secondStand", /^second panel on legs/, "a second stand"],
  ["thickerCable", /^(thicker cable|panel cable|battery cable)/, "a thicker cable"],
  ["betterController", /^(better controller|an MPPT controller set)/, "the better controller"],
  ["largerController", /^a (controller|\d+ A controller)/, "a larger controller"],
  ["furtherController", /^an MPPT controller of its own/, "a further controller"],
  ["branchFuse", /^a [\d.]+ A fuse in each/, "a branch fuse"],
  ["biggerBattery", /^bigger battery/, "the bigger battery"],
  ["warmBattery", /^battery kept warm/, "a heating mat"],
];

const USUAL_PRICES = worthSchema.parse({}).prices;

/** The prices of remedies that the plan leaves at the usual figures; nothing where all are its own. */
export const assumedPrices = (
  remedies: readonly string[],
  { prices, currency }: Worth,
): readonly string[] => {
  const usual = PRICED.filter(
    ([key, remedy]) =>
      prices[key] > 0 && prices[key] === USUAL_PRICES[key] && remedies.some((name) => remedy.test(name)),
  ).map(([key, , per]) => `${moneyWords(prices[key], currency)} for ${per}`);
  return usual.length === 0
    ? []
    : [`Prices assumed, since the plan keeps the usual ones: ${listWords(usual)}. Put in your own.`];
};
