import { z } from "zod";
import { equatorwards } from "../units/angle.ts";
import { aimingSchema } from "./aiming.ts";
import { airSchema } from "./air.ts";
import { batterySchema } from "./battery.ts";
import { circuitSchema } from "./circuit.ts";
import { shortName } from "./field.ts";
import { loadsSchema } from "./loads.ts";
import { type mountSchema, panelsSchema } from "./panels.ts";
import { seasonSchema } from "./season.ts";
import { siteSchema } from "./site.ts";
import { skySchema } from "./sky.ts";
import { standSchema } from "./stand.ts";
import { worthSchema } from "./worth.ts";

/**
 * All that a user states, section by section. Each section's schema holds its own defaults; an absent section
 * is read as an empty one. `site`, `season` and `panels` have no default: only the user knows them.
 */
export const sectionSchemas = {
  site: siteSchema,
  season: seasonSchema,
  air: airSchema.prefault({}),
  sky: skySchema.prefault({ source: "clear" }),
  panels: panelsSchema,
  stand: standSchema.prefault({}),
  aiming: aimingSchema.prefault({}),
  circuit: circuitSchema.prefault({}),
  battery: batterySchema.prefault({ chemistry: "LiFePO4" }),
  loads: loadsSchema.prefault({}),
  worth: worthSchema.prefault({}),
} as const;

const statedSchema = z.strictObject({ name: shortName.default("my plan"), ...sectionSchemas });

type StatedMount = z.output<typeof mountSchema>;

const settledMount = (mount: StatedMount, latitudeDeg: number) =>
  mount.kind === "stand" ? mount : { ...mount, bearingDeg: mount.bearingDeg ?? equatorwards(latitudeDeg) };

/** A whole plan. What one section takes from another is settled last: a fixed panel faces the equator unless it is told where. */
export const planSchema = statedSchema.transform((plan) => ({
  ...plan,
  panels: plan.panels.map((panel) => ({
    ...panel,
    mount: settledMount(panel.mount, plan.site.latitudeDeg),
  })),
}));

/** A plan as read: every default filled in, every length in millimetres. */
export type Plan = z.output<typeof planSchema>;

export type Panel = Plan["panels"][number];

export type Mount = Panel["mount"];

/** A plan as a user writes it. */
export type PlanInput = z.input<typeof planSchema>;
