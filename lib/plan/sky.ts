import { z } from "zod";
import { climateFields } from "./climate.ts";

/** Published ways to split global light into beam and diffuse; `sky/diffuse-share` says which and why. */
export const DIFFUSE_SPLITS = ["engerer", "erbs", "ridley", "reindl"] as const;

export type DiffuseSplit = (typeof DIFFUSE_SPLITS)[number];

/** Published ways to lay sky light onto a tilted plane. */
export const SKY_TO_PLANE = ["perez", "hay-davies", "isotropic"] as const;

export type SkyToPlane = (typeof SKY_TO_PLANE)[number];

const toPlane = z.enum(SKY_TO_PLANE).default("perez");

const clear = z.strictObject({ source: z.literal("clear"), toPlane });

const weather = z.strictObject({
  source: z.literal("weather"),
  /** A weather file, relative to the plan file. */
  file: z.string().min(1).max(1000),
  /** Which instant of its interval a stamp names. */
  stamps: z.enum(["start", "centre", "end"]).default("end"),
  diffuseSplit: z.enum(DIFFUSE_SPLITS).default("engerer"),
  toPlane,
});

const climate = z.strictObject({ ...climateFields, toPlane });

/** Where the light comes from: the clear-sky upper bound alone, a weather file of the place, or its climate's twelve months. */
export const skySchema = z.discriminatedUnion("source", [clear, weather, climate]);

export type Sky = z.output<typeof skySchema>;
