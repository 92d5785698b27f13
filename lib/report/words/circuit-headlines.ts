import type { Worth } from "../../plan/worth.ts";
import type { WiringAnswer } from "../../season/battery/wiring.ts";
import type { WorthAnswer } from "../../season/battery/worth.ts";
import { dangerWords } from "./circuit-cautions.ts";
import type { CurveToShow } from "./curve-to-show.ts";
import type { Headline } from "./headline.ts";
import { shortDaysWords } from "./short-days-words.ts";
import { energyWords, gainWords } from "./words.ts";
import { cheapestEnough } from "./worth-words.ts";

/** What the panel's cable costs, whether it may carry its current, and what the next size would return. */
export const wiringHeadline = ({ runs, days }: WiringAnswer): Headline => {
  const [panel] = runs;
  const [today, next] = panel.choices;
  const carries =
    panel.check.verdict === "fits"
      ? ["; it may carry its current behind a ", { figure: `${panel.check.fuseA} A fuse` }]
      : ["; ", { figure: "its current is not covered" }, ", see below"];
  return [
    `The panel cable of ${today.size} drops `,
    { figure: `${today.dropPct.toFixed(1)} %` },
    " at rated current and costs ",
    { figure: `${today.lostWhADay.toFixed(1)} Wh a day` },
    ...carries,
    ".",
    ...(next === undefined
      ? []
      : [
          ` ${next.size} would return `,
          { figure: `${energyWords(next.returnsWhASeason)} in ${days} days` },
          ".",
        ]),
  ];
};

/** What tracking the panel's best voltage takes beyond holding it at the battery's, in full sun. */
export const controllerHeadline = ({ label, curve: { mppt, pwm } }: CurveToShow): Headline => {
  const gain = gainWords(mppt.watts, pwm.watts);
  return [
    `In full sun, ${label}, an MPPT controller takes `,
    { figure: `${Math.round(mppt.watts)} W` },
    gain === null ? ", a PWM one " : `, ${gain} than a PWM one with its `,
    { figure: `${Math.round(pwm.watts)} W` },
    ".",
  ];
};

/** How many days are short today, and the cheapest thing that is enough. */
export const worthHeadline = (answer: WorthAnswer, worth: Worth): Headline => {
  const { asIs } = answer;
  const wants = asIs.season.outcomes.some(({ wantedWh }) => wantedWh > 0);
  const dangers = dangerWords(answer.remarks).length;
  const first: Headline =
    dangers === 0
      ? []
      : [
          "First make the build safe: ",
          { figure: dangers === 1 ? "one danger" : `${dangers} dangers` },
          ", told below. ",
        ];
  if (!wants) return ["The plan states no loads: say what draws on the battery, and this page answers."];
  const today: Headline = [
    ...first,
    "As it is, the loads go without on ",
    { figure: shortDaysWords(asIs.shortDays) },
    " a season",
  ];
  if (asIs.shortDays <= worth.wantedShortDays)
    return [...today, ", which is within the short days you accept: buy nothing."];
  const choice = cheapestEnough(answer);
  if (choice === null) {
    const best = [...answer.rows].sort((a, b) => a.shortDays - b.shortDays)[0];
    return [
      ...today,
      ". Nothing alone is enough; nearest comes ",
      { figure: best.name },
      `, leaving ${shortDaysWords(best.shortDays)}.`,
    ];
  }
  return [
    ...today,
    ". Cheapest that is enough: ",
    { figure: choice.name },
    `, ${worth.currency} ${Math.round(choice.price)}, leaving `,
    { figure: shortDaysWords(choice.shortDays) },
    ".",
  ];
};
