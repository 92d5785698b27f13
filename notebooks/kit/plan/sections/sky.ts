import { TURBIDITY_CLASSES } from "../../../../lib/plan/air.ts";
import { weatherChoices } from "../../weather/shipped.ts";
import type { Section } from "../field.ts";
import { valueAt } from "../path.ts";

const isWeather = (item: unknown): boolean => valueAt(item, ["sky", "source"]) === "weather";

const withSky = (item: unknown, sky: unknown): unknown => ({ ...(item as object), sky });

export const skySection: Section = {
  id: "sky",
  title: "Sky",
  fields: [
    {
      kind: "variant",
      path: [],
      label: "Where the light comes from",
      variants: [
        {
          label: "clear sky every day (an upper bound)",
          is: (item) => valueAt(item, ["sky", "source"]) !== "weather",
          make: (item) => withSky(item, { source: "clear" }),
        },
        {
          label: "a weather file",
          is: isWeather,
          make: (item) => withSky(item, { source: "weather", file: weatherChoices()[0]?.value ?? "" }),
        },
      ],
    },
    {
      kind: "choice",
      path: ["sky", "file"],
      label: "Weather file",
      when: isWeather,
      choices: weatherChoices(),
    },
    {
      kind: "choice",
      path: ["air", "turbidity"],
      label: "Clear air",
      choices: TURBIDITY_CLASSES.map((value) => ({ value, label: value })),
      says: "How hazy the air is on a cloudless day.",
    },
  ],
};
