import type { Plan } from "../../../lib/plan/plan.ts";
import { placeWords } from "../../../lib/report/words/place-words.ts";
import { listWords } from "../../../lib/report/words/words.ts";
import { settingsOf } from "../../../lib/season/light/settings.ts";
import { dateWords } from "../../../lib/units/dates.ts";
import { inchesText, millimetresText } from "../../../lib/units/length.ts";
import type { Units } from "../units.ts";

const SKIES = {
  clear: "clear sky every day",
  climate: "cloud by a climate",
  weather: "cloud by a weather file",
} as const;

/** What a plan comes down to, in one line: what the numbers of a page are for when its panel is folded or left off the paper. */
export const planWords = (plan: Plan, units: Units): string => {
  const { site, season, sky, panels } = plan;
  const legs = settingsOf(plan).flatMap(({ name, legMm }) =>
    legMm === null ? [] : [`${name} ${units === "metric" ? millimetresText(legMm) : inchesText(legMm)}`],
  );
  return [
    placeWords(site),
    `${dateWords(season.from)} to ${dateWords(season.to)}`,
    SKIES[sky.source],
    listWords(
      panels.map(({ howMany, module }) => `${howMany === 1 ? "" : `${howMany} × `}${module.powerW} W`),
    ),
    ...(legs.length === 0 ? [] : [`legs ${listWords(legs)}`]),
  ].join(" · ");
};
