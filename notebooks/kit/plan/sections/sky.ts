import { TURBIDITY_CLASSES } from "../../../../lib/plan/air.ts";
import { takeWeather } from "../../weather/files.ts";
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
      kind: "file",
      path: ["sky", "file"],
      label: "Open a weather file of your own",
      when: isWeather,
      accept: ".csv,text/csv",
      largestBytes: 40e6,
      take: (name, text) => {
        takeWeather(name, text);
        return name;
      },
      says: "CSV with a column time_utc (UTC, end of each interval) and ghi_W_m2; dni_W_m2, dhi_W_m2, temp_air_degC and wind_speed_m_s where known. It stays in this browser.",
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
