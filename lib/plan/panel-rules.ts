import type { Problem } from "../units/problem.ts";
import type { Panel } from "./plan.ts";

/** What must fit together in the wiring of one kind of panel. */
export const stringProblems = (
  { howMany, inSeries }: Pick<Panel, "howMany" | "inSeries">,
  path: string,
): readonly Problem[] =>
  howMany % inSeries === 0
    ? []
    : [
        {
          path: `${path}.inSeries`,
          value: inSeries,
          allowed: `must divide howMany, ${howMany}, into whole strings`,
          hint: "howMany counts all panels of this kind, inSeries those one behind another",
        },
      ];
