/** What comes in from outside (a file, a link) is looked at before it replaces anything. */
import { checkPlan } from "../../../lib/plan/index.ts";
import { sectionSchemas } from "../../../lib/plan/plan.ts";
import type { Problem } from "../../../lib/units/problem.ts";

/** What something from outside turned out to be. */
export type Incoming =
  | { readonly kind: "sound"; readonly given: unknown }
  | { readonly kind: "to be mended"; readonly given: unknown; readonly problems: readonly Problem[] }
  | { readonly kind: "no plan"; readonly why: string };

const SECTIONS = new Set(Object.keys(sectionSchemas));

/** A plan says where, when and with which panel; what names none of the parts of a plan is something else. */
export const lookAt = (given: unknown): Incoming => {
  if (typeof given !== "object" || given === null || Array.isArray(given)) {
    return { kind: "no plan", why: "it holds a list or a single value, where a plan has parts with names" };
  }
  const reading = checkPlan(given);
  if (reading.ok) return { kind: "sound", given };
  const known = Object.keys(given).filter((key) => SECTIONS.has(key));
  return known.length === 0
    ? { kind: "no plan", why: "it names neither place nor season nor panels" }
    : { kind: "to be mended", given, problems: reading.problems };
};

/** The same for text that should be JSON. */
export const lookAtText = (text: string): Incoming => {
  try {
    return lookAt(JSON.parse(text));
  } catch {
    return { kind: "no plan", why: "it is not written as JSON, or was cut short" };
  }
};
