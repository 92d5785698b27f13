import { BEARING_STEPS } from "../../../../lib/plan/aiming.ts";
import { clockOfMinutes } from "../../../../lib/plan/clock.ts";
import type { Section } from "../field.ts";

const HALF_HOURS = Array.from({ length: 48 }, (_, half) => clockOfMinutes(half * 30)).map((value) => ({
  value,
  label: value,
}));

export const aimingSection: Section = {
  id: "aiming",
  title: "Aiming and horizon",
  fields: [
    {
      kind: "list",
      path: ["site", "horizon"],
      label: "Hills and trees",
      item: "point",
      most: 36,
      blank: (count) => ({ bearingDeg: Math.min(360, 60 + 30 * count), altitudeDeg: 10 }),
      fields: [
        {
          kind: "number",
          path: ["bearingDeg"],
          label: "Bearing",
          unit: "° from true north",
          slider: { least: 0, most: 360, step: 1 },
        },
        {
          kind: "number",
          path: ["altitudeDeg"],
          label: "Top",
          unit: "° above level",
          slider: { least: 0, most: 60, step: 1 },
          says: "Points are joined by straight lines, right round. A fist at arm's length is about 10°.",
        },
      ],
    },
    {
      kind: "choice",
      path: ["aiming", "earliest"],
      label: "No walk before",
      choices: HALF_HOURS,
      says: "The first aim of a day is set the evening before.",
    },
    { kind: "choice", path: ["aiming", "latest"], label: "No walk after", choices: HALF_HOURS },
    {
      kind: "choice",
      path: ["aiming", "bearingStepDeg"],
      label: "Bearings tried",
      choices: BEARING_STEPS.filter((step) => step >= 3).map((value) => ({
        value,
        label: `every ${value}°`,
      })),
      says: "Finer steps take longer and hardly change the answer.",
    },
  ],
};
