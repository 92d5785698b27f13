import type { Reaim } from "../../season/aiming/reaim.ts";
import { routineOf } from "../words/aim-card.ts";
import { bearingShort } from "../words/words.ts";
import type { WantedBearing } from "./sun-compass.ts";

/** Bearings for a sun compass to point along: those of the routine for the whole season, numbered as its aims are. */
export const dialBearings = (answer: Reaim, mostAims: number): readonly WantedBearing[] => {
  const { parts } = routineOf(answer, "season", mostAims).routine;
  return parts.flatMap(({ setting }, index) =>
    setting.legMm === null
      ? []
      : [
          {
            name: `${index + 1} ${setting.name} ${bearingShort(setting.bearingDeg)}`,
            bearingDeg: setting.bearingDeg,
          },
        ],
  );
};
