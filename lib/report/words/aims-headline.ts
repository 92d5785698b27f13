import type { Reaim } from "../../season/aiming/reaim.ts";
import type { Headline } from "./headline.ts";
import { energyWords, gainWords, NO_LIGHT } from "./words.ts";

/**
 * What turning the panel brings, in a breath: the best two aims of a day against facing noon, and what a third adds.
 */
export const aimsHeadline = ({ periods, cloudIn }: Reaim): Headline => {
  const [{ noon, routines, limitDayWh }] = periods;
  if (!(limitDayWh > 0)) return [NO_LIGHT];
  const most = routines[routines.length - 1];
  const kind = cloudIn ? "with cloud in it" : "under a clear sky every day";
  const start = [
    "Facing the noon sun all day brings ",
    { figure: `${energyWords(noon.dayWh)} a day` },
    ` on average, ${kind}.`,
  ];
  if (most.parts.length === 1)
    return [...start, " Turning the panel in the course of the day brings nothing more."];
  const two = routines[1];
  const third = routines[2];
  return [
    ...start,
    " Two aims a day bring ",
    { figure: `${energyWords(two.dayWh - noon.dayWh)} more` },
    ` (${gainWords(two.dayWh, noon.dayWh) ?? "nothing to compare with"})`,
    ...(third === undefined || third === two
      ? ["."]
      : [", and a third ", { figure: `${energyWords(third.dayWh - two.dayWh)} more` }, " still."]),
    ` Nothing does better than ${energyWords(limitDayWh)}.`,
  ];
};
