import { z } from "zod";
import { climateFields } from "./climate.ts";
import { quantity } from "./field.ts";

/** Published ways to split global light into beam and diffuse; `sky/diffuse-share` says which and why. */
export const DIFFUSE_SPLITS = ["engerer", "erbs", "ridley", "reindl"] as const;

export type DiffuseSplit = (typeof DIFFUSE_SPLITS)[number];

/** Published ways to lay sky light onto a tilted plane. */
export const SKY_TO_PLANE = ["perez", "hay-davies", "isotropic"] as const;

export type SkyToPlane = (typeof SKY_TO_PLANE)[number];

const toPlane = z.enum(SKY_TO_PLANE).default("perez");

const clear = z.strictObject({ source: z.literal("clear"), toPlane });

const fileName = z.string().min(1).max(1000);

const header = z.string().min(1).max(200).optional();

const weather = z.strictObject({
  source: z.literal("weather"),
  /** A weather file, relative to the plan file. */
  file: fileName,
  /** Air temperature and wind from a file of their own, relative to the plan file. */
  airFile: fileName.optional(),
  /** Which instant of its interval a stamp names. */
  stamps: z.enum(["start", "centre", "end"]).default("end"),
  /** `false`: take the stamps as they are, even where the light says that they slip against the sun. */
  checkClock: z.boolean().default(true),
  /** Headers of the weather file's columns where their names are not known ones. */
  columns: z
    .strictObject({
      time: header,
      date: header,
      global: header,
      beamNormal: header,
      beamHorizontal: header,
      diffuse: header,
      airC: header,
      windMs: header,
    })
    .prefault({}),
  /** Height at which the files' wind was measured; it is brought down to the panel. Weather stations: 10 m. */
  windHeightM: quantity(0.2, 300, { unit: "m above ground" }).default(10),
  /** How global light is split where the file has neither beam nor diffuse; the default is the best by measurement. */
  diffuseSplit: z.enum(DIFFUSE_SPLITS).default("engerer"),
  toPlane,
});

const climate = z.strictObject({ ...climateFields, toPlane });

/** Where the light comes from: the clear-sky upper bound alone, a weather file of the place, or its climate's twelve months. */
export const skySchema = z.discriminatedUnion("source", [clear, weather, climate]);

export type Sky = z.output<typeof skySchema>;
