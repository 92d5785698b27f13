import { z } from "zod";
import { count, monthly, quantity } from "./field.ts";

/** Climates by analogy, in plain words; which shipped places stand for each is said in `sky/climate/analogy-places`. */
export const ANALOGY_KINDS = [
  "cool wet coast",
  "dry mountain",
  "hot desert",
  "humid subtropical",
  "tropical wet and dry",
  "continental",
  "polar coast",
] as const;

export type AnalogyKind = (typeof ANALOGY_KINDS)[number];

/** How radiation is read out of sunshine hours; `sky/climate/sunshine` says what each is. */
export const SUNSHINE_RELATIONS = ["fitted", "fao56"] as const;

export type SunshineRelation = (typeof SUNSHINE_RELATIONS)[number];

const LIGHT_FORMS = ["globalKWhM2", "globalMJM2", "clearness", "sunshineHours"] as const;

/** Measured day-to-day correlations a plan or a table may state: stations here show 0.12 to 0.46. */
export const DAY_MEMORY_RANGE = [-0.2, 0.8] as const;
/** Years of days behind such a correlation: three weeks would tell nothing, a century is all there is. */
export const DAY_MEMORY_YEARS = [0.2, 150] as const;

/** Monthly means of air (degC) and wind (m/s) that a plan or a table may state: wider than any place, narrower than another unit. */
export const AIR_LOW_RANGE = [-80, 50] as const;
export const AIR_HIGH_RANGE = [-80, 60] as const;
export const WIND_RANGE = [0, 40] as const;
/** Height of an anemometer, m above ground. */
export const WIND_HEIGHT_RANGE = [0.2, 300] as const;

/** Twelve months typed in. The wide ranges let a swapped unit through to the check that can name it. */
const months = z
  .strictObject({
    kind: z.literal("months"),
    /** Mean daily global radiation. */
    globalKWhM2: monthly(0, 50, { unit: "kWh/m2 a day" }).optional(),
    globalMJM2: monthly(0, 50, { unit: "MJ/m2 a day" }).optional(),
    /** Global over extraterrestrial. */
    clearness: monthly(0, 100, { unit: "(clearness index)" }).optional(),
    /** Bright sunshine in the whole month. */
    sunshineHours: monthly(0, 750, { unit: "hours in the month" }).optional(),
    airLowC: monthly(...AIR_LOW_RANGE, { unit: "degC" }).optional(),
    airHighC: monthly(...AIR_HIGH_RANGE, { unit: "degC" }).optional(),
    windMs: monthly(...WIND_RANGE, { unit: "m/s" }).optional(),
    windHeightM: quantity(...WIND_HEIGHT_RANGE, { unit: "m above ground" }).default(10),
    /** Correlation of a day's clearness with the next, months' means removed, as measured; a published one if left out. */
    dayMemory: quantity(...DAY_MEMORY_RANGE, {
      unit: "(correlation of a day's clearness with the next day's)",
      hint: "about 0.25; left out, a published value is taken",
    }).optional(),
    /** Years of days that it was measured on: the fewer, the more it leans towards the published value. */
    dayMemoryYears: quantity(...DAY_MEMORY_YEARS, { unit: "years of days" }).optional(),
  })
  .refine((stated) => LIGHT_FORMS.filter((form) => stated[form] !== undefined).length === 1, {
    message: `must give the light in exactly one form: ${LIGHT_FORMS.join(", ")}`,
  })
  .refine((stated) => (stated.airLowC === undefined) === (stated.airHighC === undefined), {
    path: ["airHighC"],
    message: "must come with airLowC: a low and a high for every month, or neither",
  })
  .superRefine(({ airLowC, airHighC }, context) => {
    airLowC?.forEach((low, month) => {
      const high = airHighC?.[month];
      if (high === undefined || low <= high) return;
      context.addIssue({
        code: "custom",
        path: ["airLowC", month],
        input: low,
        message: `must not be above that month's high, ${high} degC`,
        params: { hint: "are the two rows swapped?" },
      });
    });
  })
  .refine((stated) => (stated.dayMemory === undefined) === (stated.dayMemoryYears === undefined), {
    path: ["dayMemoryYears"],
    message: "must come with dayMemory: the correlation and the years it was measured on, or neither",
  });

export type StatedMonths = z.output<typeof months>;

/** Where the twelve months come from. */
const from = z.discriminatedUnion("kind", [
  /** The shipped places nearest to the site. */
  z.strictObject({ kind: z.literal("nearest") }),
  /** A shipped place by name, or by the `id` of its row. */
  z.strictObject({ kind: z.literal("place"), name: z.string().trim().min(1).max(100) }),
  /** What such a climate is like elsewhere: rough. */
  z.strictObject({ kind: z.literal("analogy"), like: z.enum(ANALOGY_KINDS) }),
  /** A table of one's own, relative to the plan file; with several places, those nearest to the site. */
  z.strictObject({ kind: z.literal("table"), file: z.string().min(1).max(1000) }),
  months,
]);

export type ClimateFrom = z.output<typeof from>;

/** The fields of a sky that is made from a climate; how light is laid onto the plane is added by `sky.ts`. */
export const climateFields = {
  source: z.literal("climate"),
  from: from.default({ kind: "nearest" }),
  sunshine: z.enum(SUNSHINE_RELATIONS).default("fitted"),
  /** Seasons drawn for the bands of a whole season. */
  seasons: count(10, 2000, { unit: "seasons" }).default(200),
  /** Same seed, same seasons. */
  seed: count(0, 2 ** 31 - 1, { unit: "(any whole number)" }).default(1),
};
