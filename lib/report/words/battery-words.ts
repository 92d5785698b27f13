import { median } from "d3";
import type { Plan } from "../../plan/plan.ts";
import type { SkyUncertainty } from "../../season/battery/battery-answer.ts";
import { type BatterySeason, meanOutcome, quantileOutcome } from "../../season/battery/battery-season.ts";
import type { SizingRule } from "../../season/battery/sizing-rule.ts";
import type { WiringAnswer } from "../../season/battery/wiring.ts";
import { dateWords } from "../../units/dates.ts";
import { dangerWords } from "./circuit-cautions.ts";
import { shortDaysWords } from "./short-days-words.ts";
import { energyWords, periodWords } from "./words.ts";

const UNCERTAINTY_WORDS: Readonly<Record<SkyUncertainty, readonly string[]>> = {
  "clear sky only": [
    "The plan names no weather and no climate: every day is taken as clear. These are upper bounds; real seasons are worse.",
  ],
  "few years": ["One or a few years of weather cannot tell how bad a bad season is; a climate draws many."],
  "many seasons": [],
};

/** What a reader must know about the skies that a battery was put through; nothing where they are many. */
export const uncertaintyWords = (uncertainty: SkyUncertainty): readonly string[] =>
  UNCERTAINTY_WORDS[uncertainty];

/** How the stand is used in what a battery is put through, where it has legs to be used. */
export const standUseWords = ({
  panels,
  stand,
  worth,
}: Pick<Plan, "panels" | "stand" | "worth">): readonly string[] =>
  stand.legs.length === 0 || panels.every(({ mount }) => mount.kind === "fixed")
    ? []
    : [STAND_USE_WORDS[worth.now]];

const STAND_USE_WORDS: Readonly<Record<Plan["worth"]["now"], string>> = {
  legs: "The stand is on its legs in this, changed by the calendar.",
  "one-leg": "The stand stays all season on the one leg that brings most.",
  flat: 'The stand lies flat in this, as the plan says ("worth": { "now": "flat" }): its legs are not used.',
};

/** A first short date in words, over the seasons that have one: the middle one. */
const firstShortWords = ({ outcomes, days }: BatterySeason): string | null => {
  const firsts = outcomes.flatMap(({ firstShort }) => (firstShort === null ? [] : [firstShort]));
  if (firsts.length === 0) return null;
  const number = new Map(days.map(({ date }, day) => [date, day]));
  const middle = Math.round(median(firsts, (date) => number.get(date)) ?? 0);
  const date = dateWords(days[middle].date);
  return outcomes.length === 1
    ? `The first short day is ${date}.`
    : `${firsts.length} of ${outcomes.length} seasons have a short day; the first comes about ${date}.`;
};

/** Lead-acid left longer than this without a full charge loses capacity for good, days (common practice, no source). */
const FULL_WITHIN_DAYS = 14;

/** How long lead-acid goes without a full charge, and what to do about it; nothing of lithium, which does not mind. */
const fullChargeWords = (season: BatterySeason): readonly string[] => {
  if (season.setUp.battery.chemistry === "LiFePO4") return [];
  const days = Math.round(meanOutcome(season, "longestWithoutFull"));
  const longest = `The longest time without a full charge from light is ${days} ${days === 1 ? "day" : "days"}`;
  return [
    days <= FULL_WITHIN_DAYS
      ? `${longest}.`
      : `${longest}: too long for lead-acid, which loses capacity for good when it is not filled every week or two (common practice, no source). Fill it from a charger in between.`,
  ];
};

/** A battery's season in plain sentences. */
export const batterySummary = (season: BatterySeason): readonly string[] => {
  const days = season.days.length;
  const perDay = (of: "offeredWh" | "usedWh" | "curtailedWh") => energyWords(meanOutcome(season, of) / days);
  const shortDays = meanOutcome(season, "shortDays");
  const p90 = quantileOutcome(season, "shortDays", 0.9);
  const lowest = Math.round(100 * meanOutcome(season, "lowest"));
  const lowestP10 = quantileOutcome(season, "lowest", 0.1);
  const floor = Math.round(100 - season.setUp.battery.usablePct);
  const worse =
    lowestP10 === null ? "" : ` on average, ${Math.round(100 * lowestP10)} % or less in one season of ten`;
  const run = Math.round(meanOutcome(season, "longestBadRunSurvived"));
  const first = firstShortWords(season);
  if (meanOutcome(season, "wantedWh") === 0) {
    return [
      `The panels offer ${perDay("offeredWh")} a day. The plan states no loads: add them under "loads" to see what the battery makes of it.`,
    ];
  }
  return [
    `${shortDaysWords(shortDays).replace(/^./, (letter) => letter.toUpperCase())} a season${
      p90 === null ? "" : `, more than ${Math.round(p90)} in one season of ten`
    }; the loads go short of ${energyWords(meanOutcome(season, "shortWh"))}.`,
    ...(first === null ? [] : [first]),
    `The panels offer ${perDay("offeredWh")} a day, the loads use ${perDay("usedWh")}, ${perDay("curtailedWh")} are curtailed: nothing could take them.`,
    `The charge falls to ${lowest <= floor ? `its floor, ${floor} %` : `${lowest} % at its lowest${worse}`}${run > 0 ? `; the longest run of bad days it gets through is ${run}` : ""}.`,
    `The battery is full by noon on ${Math.round((100 * meanOutcome(season, "fullByNoonDays")) / days)} % of days.`,
    ...fullChargeWords(season),
  ];
};

/** What a handbook's rule of thumb would have bought, beside what there is; nothing where it has nothing to say. */
export const ruleWords = (rule: SizingRule | null): readonly string[] =>
  rule === null
    ? []
    : [
        `Rule of thumb (Masters 2004, for 95 % of the time): ${periodWords(rule.month)} with ${rule.peakSunHours.toFixed(1)} peak sun hours a day asks for ` +
          `${rule.days.toFixed(1)} days of storage, a battery of ${energyWords(rule.capacityWh)}; yours holds ${energyWords(rule.presentWh)}. The seasons above take the weather day by day; the rule does not.`,
      ];

/** Why a drop beyond custom may cost next to nothing. */
const SPARE_VOLTS =
  " A PWM controller leaves the panel's spare volts unused, so the drop costs little until the cells are hot or the battery is full.";

/** A plan's wiring in plain sentences: what is dangerous, then each run's drop, loss and check, then what throws light away. */
export const wiringSummary = ({ runs, remarks, controller }: WiringAnswer): readonly string[] => [
  ...dangerWords(remarks),
  ...runs.flatMap(({ run, choices, check, ratedA }) => {
    const [today, next] = choices;
    const custom = today.withinCustom ? "within the customary 3 %" : "more than the customary 3 %";
    const told = remarks.some(({ kind, about }) => kind === "danger" && about === run);
    return [
      `The ${run}, ${today.size}: drops ${today.dropV.toFixed(2)} V (${today.dropPct.toFixed(1)} %, ${custom}) at ${ratedA.toFixed(1)} A ` +
        `and costs ${today.lostWhADay.toFixed(1)} Wh a day.` +
        (next === undefined
          ? ""
          : ` ${next.size} would return ${energyWords(next.returnsWhASeason)} a season.`) +
        (controller === "pwm" && run === "panel cable" && !today.withinCustom ? SPARE_VOLTS : ""),
      ...(told ? [] : [check.words]),
    ];
  }),
  ...remarks.flatMap(({ kind, words }) => (kind === "danger" ? [] : [words])),
];
