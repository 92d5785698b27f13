/**
 * plan: what the user states; its schema, defaults, units, and every complaint about it.
 *
 * Conventions of the whole library: degrees at every public door, tilt up from horizontal, bearings clockwise
 * from true north, UTC milliseconds inside, civil dates in the site's zone at the edges, W/m2, W, Wh, mm.
 */

export type { Aim, Direction } from "../units/angle.ts";
export {
  directionOf,
  equatorwards,
  normalOf,
  otherReading,
  turnBetween,
  wrapBearing,
} from "../units/angle.ts";
export { inchesText, MM_PER_INCH, millimetresOf, millimetresText } from "../units/length.ts";
export type { Problem } from "../units/problem.ts";
export { PlanError, problemLine } from "../units/problem.ts";
export type { Aiming } from "./aiming.ts";
export type { Air, TurbidityClass } from "./air.ts";
export { TURBIDITY_CLASSES } from "./air.ts";
export type { Battery, Chemistry } from "./battery.ts";
export { CHEMISTRIES } from "./battery.ts";
export type { CableRun, Circuit, Controller, MpptController, PwmController } from "./circuit.ts";
export type { AnalogyKind, ClimateFrom, SunshineRelation } from "./climate.ts";
export { ANALOGY_KINDS, SUNSHINE_RELATIONS } from "./climate.ts";
export type { Cutting } from "./cutting.ts";
export type { Appliance, Loads, Weekday } from "./loads.ts";
export { WEEKDAYS } from "./loads.ts";
export {
  ASSUMED,
  type CompleteNameplate,
  completeNameplate,
  type Nameplate,
  nameplateProblems,
} from "./nameplate.ts";
export type { Module } from "./panels.ts";
export type { Mount, Panel, Plan, PlanInput } from "./plan.ts";
export { planSchema } from "./plan.ts";
export type { PlanReading } from "./read-plan.ts";
export { checkPlan, readPlan, readPlanText } from "./read-plan.ts";
export type { Season } from "./season.ts";
export { type GroundKind, heightM, type Site } from "./site.ts";
export type { DiffuseSplit, Sky, SkyToPlane } from "./sky.ts";
export type { Leg, LegStyle, Stand } from "./stand.ts";
export { gaugeOf, gaugeText } from "./wire-size.ts";
export type { Worth } from "./worth.ts";
