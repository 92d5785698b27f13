/** The demo plan that a newcomer meets, and a plan's skies worked out by the library outside any browser. */
import { readFileSync } from "node:fs";
import { type Plan, readPlan } from "../../lib/plan/index.ts";
import { type PlanSkies, skiesOfPlan } from "../../lib/season/index.ts";

export const dataFile = (name: string): string =>
  readFileSync(new URL(`../../data/${name}`, import.meta.url), "utf8");

export const DEMO: Record<string, unknown> = JSON.parse(dataFile("plans/warden-hut.json"));

/** A plan's skies, its weather file read from the data folder. */
export const skiesFor = (plan: Plan): PlanSkies =>
  skiesOfPlan(
    plan,
    plan.sky.source === "weather" ? dataFile(`weather/${plan.sky.file.split("/").at(-1)}`) : null,
  );

/** The demo with changes, read, at the step in which notebooks live through a battery's season. */
export const livedPlan = (changes: object = {}): Plan => {
  const plan = readPlan({ ...DEMO, ...changes });
  return { ...plan, season: { ...plan.season, stepMinutes: plan.worth.stepMinutes } };
};
