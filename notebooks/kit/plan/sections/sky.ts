import { TURBIDITY_CLASSES } from "../../../../lib/plan/air.ts";
import { ANALOGY_KINDS } from "../../../../lib/plan/climate.ts";
import { takeWeather } from "../../weather/files.ts";
import { weatherChoices } from "../../weather/shipped.ts";
import type { Field, Section } from "../field.ts";
import { valueAt } from "../path.ts";
import { monthsFields, NO_MONTHS_YET } from "./climate-months.ts";

const isWeather = (item: unknown): boolean => valueAt(item, ["sky", "source"]) === "weather";

const isClimate = (item: unknown): boolean => valueAt(item, ["sky", "source"]) === "climate";

/** The kind of climate asked for; the nearest places where the plan does not say. */
const fromKind = (item: unknown): unknown => valueAt(item, ["sky", "from", "kind"]) ?? "nearest";

const isFrom =
  (kind: string) =>
  (item: unknown): boolean =>
    isClimate(item) && fromKind(item) === kind;

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
          is: (item) => !isWeather(item) && !isClimate(item),
          make: (item) => withSky(item, { source: "clear" }),
        },
        {
          label: "the climate of the place, with cloud",
          is: isClimate,
          make: (item) => withSky(item, { source: "climate" }),
        },
        {
          label: "a weather file",
          is: isWeather,
          make: (item) => withSky(item, { source: "weather", file: weatherChoices()[0]?.value ?? "" }),
        },
      ],
    },
    {
      kind: "variant",
      path: [],
      label: "Whose climate",
      when: isClimate,
      variants: [
        {
          label: "the nearest places with a record",
          is: (item) => fromKind(item) === "nearest",
          make: (item) => withSky(item, { source: "climate" }),
        },
        {
          label: "a place by name",
          is: isFrom("place"),
          make: (item) => withSky(item, { source: "climate", from: { kind: "place", name: "Bremerhaven" } }),
        },
        {
          label: "by analogy (rough)",
          is: isFrom("analogy"),
          make: (item) =>
            withSky(item, { source: "climate", from: { kind: "analogy", like: ANALOGY_KINDS[0] } }),
        },
        {
          label: "a table of your own",
          is: isFrom("table"),
          make: (item) =>
            withSky(item, { source: "climate", from: { kind: "table", file: "no table opened yet" } }),
        },
        {
          label: "twelve numbers of your own",
          is: isFrom("months"),
          make: (item) => withSky(item, { source: "climate", from: NO_MONTHS_YET }),
        },
      ],
      says: "1674 places on every continent travel with this page; the answer says which it used and how far to trust them.",
    },
    {
      kind: "text",
      path: ["sky", "from", "name"],
      label: "Name of the place",
      when: isFrom("place"),
    },
    {
      kind: "choice",
      path: ["sky", "from", "like"],
      label: "A climate like that of a",
      when: isFrom("analogy"),
      choices: ANALOGY_KINDS.map((value) => ({ value, label: value })),
    },
    {
      kind: "file",
      path: ["sky", "from", "file"],
      label: "Open a climate table of your own",
      when: isFrom("table"),
      accept: ".csv,text/csv",
      largestBytes: 5e6,
      take: (name, text) => {
        takeWeather(name, text);
        return name;
      },
      says: "CSV, one place a row: latitude_deg, longitude_deg and twelve columns global_01_kWh_m2_day to _12 (or _MJ_m2_day, clearness_01, sunshine_01_h). It stays in this browser.",
    },
    ...monthsFields.map(
      (field): Field => ({
        ...field,
        when: (item) => isFrom("months")(item) && (field.when?.(item) ?? true),
      }),
    ),
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
      says: "CSV with a column time_utc (UTC, end of each interval) and ghi_W_m2; dni_W_m2, dhi_W_m2, air_degC and wind_m_s where known. It stays in this browser.",
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
