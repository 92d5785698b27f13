import type { Plan } from "../../../lib/plan/plan.ts";
import {
  batteryOfPlan,
  smallestPanelsOfPlan,
  worthOfPlan,
} from "../../../lib/season/battery/battery-answer.ts";
import { livedPlan } from "../../../lib/season/battery/lived-plan.ts";
import {
  fewestShortDaySets,
  MOST_SHORT_DAY_LEGS,
  type PlanSkies,
  panelUnits,
  reaim,
  standSeason,
} from "../../../lib/season/index.ts";
import { fieldSheet } from "../../../lib/season/sheet/field-sheet.ts";

/** Told how far the work has come, 0 to 1. */
export type Progress = (share: number) => void;

/**
 * Work that takes longer than a hand wants to wait, done beside the page. Each is given the plan, its skies and options, and
 * answers with what can be copied: numbers, text, lists, typed arrays, but no functions.
 */
export const JOBS = {
  /** The day's aims: which leg faces where from when, month by month. */
  aims: (plan: Plan, { skies }: PlanSkies, progress: Progress, _: NoOptions) =>
    reaim(plan, skies, panelUnits(plan.panels), progress),

  /** The field sheet, with so many aims a day spelled out. */
  fieldSheet: (plan: Plan, { skies }: PlanSkies, progress: Progress, { aims }: { readonly aims: number }) =>
    fieldSheet(plan, skies, panelUnits(plan.panels), aims, progress),

  /** The battery lived with as it is, and the cables in the next sizes. */
  battery: (plan: Plan, skies: PlanSkies, progress: Progress, _: NoOptions) =>
    batteryOfPlan(plan, skies, progress),

  /** What each remedy is worth. */
  worth: (plan: Plan, skies: PlanSkies, progress: Progress, _: NoOptions) =>
    worthOfPlan(plan, skies, progress),

  /** The smallest second panel that would do, on the roof and on legs. */
  smallestPanels: (plan: Plan, skies: PlanSkies, progress: Progress, _: NoOptions) =>
    smallestPanelsOfPlan(plan, skies, progress),

  /** The legs with the fewest short days on the battery. */
  shortDayLegs: (plan: Plan, skies: PlanSkies, progress: Progress, _: NoOptions) =>
    fewestShortDaySets(
      standSeason(plan, skies.skies, panelUnits(plan.panels)),
      skies,
      MOST_SHORT_DAY_LEGS,
      progress,
    ),
} as const;

/** Jobs that live through a battery's seasons. */
const LIVED: readonly JobName[] = ["battery", "worth", "smallestPanels", "shortDayLegs"];

/** The plan that a job is done with: those that live with a battery take its step. */
export const planOfJob = (job: JobName, plan: Plan): Plan => (LIVED.includes(job) ? livedPlan(plan) : plan);

type NoOptions = Readonly<Record<never, never>>;

export type JobName = keyof typeof JOBS;
export type JobAnswer<Name extends JobName> = ReturnType<(typeof JOBS)[Name]>;
export type JobOptions<Name extends JobName> = Parameters<(typeof JOBS)[Name]>[3];
