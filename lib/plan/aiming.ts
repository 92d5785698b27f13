import { z } from "zod";
import { clockTime } from "./clock.ts";
import { count } from "./field.ts";

/** Steps of bearing that go evenly into a half circle, so that true north and true south are among the bearings. */
export const BEARING_STEPS = [1, 2, 3, 4, 5, 6, 9, 10, 12, 15, 18, 20, 30, 45] as const;

/** How the panel may be turned in the course of a day. */
export const aimingSchema = z
  .strictObject({
    /** Most aims in a day to look at: 2 means a morning aim and an afternoon aim. */
    mostAims: count(1, 4, { unit: "aims a day" }).default(4),
    bearingStepDeg: z
      .literal([...BEARING_STEPS])
      .meta({ unit: "degrees" })
      .default(5),
    /** Nobody walks out before or after; the walk back to the first aim is free to be done in the dark. */
    earliest: clockTime.default("06:00"),
    latest: clockTime.default("22:00"),
  })
  .superRefine(({ earliest, latest }, context) => {
    if (earliest < latest) return;
    context.addIssue({
      code: "custom",
      path: ["latest"],
      input: latest,
      message: `must come after aiming.earliest, ${earliest}`,
    });
  });

export type Aiming = z.output<typeof aimingSchema>;
