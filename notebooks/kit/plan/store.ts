import { checkPlan } from "../../../lib/plan/index.ts";
import type { Plan } from "../../../lib/plan/plan.ts";
import type { Problem } from "../../../lib/units/problem.ts";
import { FIRST_DEMO } from "./demos.ts";
import { keep, kept, whenKeptElsewhere } from "./keep.ts";
import { type Path, withValue } from "./path.ts";

/** Edits of one field closer together than this are one step of undo: a drag of a slider is one change. */
const ONE_STEP_MS = 900;
const MOST_STEPS = 100;
const KEPT_AS = "plan";

/** The one plan behind all notebooks: as typed, as read, and how it came to be. */
export interface PlanStore {
  /** The plan as the user has it, with whatever is wrong with it. */
  readonly given: unknown;
  /** The last plan that could be read: what the notebook's numbers are for. */
  readonly plan: Plan;
  /** What is wrong with `given`; empty when `plan` is what it says. */
  readonly problems: readonly Problem[];
  /** Complaints that only come up when the plan is worked with, such as a weather file that does not suit the place. */
  readonly complain: (problems: readonly Problem[]) => void;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Changes one value; `along` makes the rest of the plan follow, from the plan with the new value and the one before. */
  readonly set: (path: Path, value: unknown, along?: (given: unknown, before: unknown) => unknown) => void;
  readonly load: (given: unknown) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly subscribe: (then: () => void) => void;
}

/** The demo plan, read. */
export const demoPlan = (): Plan => {
  const reading = checkPlan(FIRST_DEMO.given);
  if (!reading.ok) throw new Error(`The demo plan can't be read: ${reading.problems[0]?.allowed}`);
  return reading.plan;
};

const keptPlan = (): unknown => {
  const text = kept(KEPT_AS);
  if (text === null) return FIRST_DEMO.given;
  try {
    return JSON.parse(text);
  } catch {
    return FIRST_DEMO.given;
  }
};

/** Opens the plan this browser keeps, or the demo. */
export const openPlanStore = (): PlanStore => {
  const listeners: (() => void)[] = [];
  let past: unknown[] = [];
  let future: unknown[] = [];
  let lastEdit = { path: "", atMs: 0 };
  let given: unknown;
  let plan = demoPlan();
  let problems: readonly Problem[] = [];

  const take = (next: unknown): void => {
    given = next;
    const reading = checkPlan(given);
    if (reading.ok) plan = reading.plan;
    problems = reading.ok ? [] : reading.problems;
    for (const listener of listeners) listener();
  };
  const change = (next: unknown, path: string): void => {
    const now = performance.now();
    const sameStep = path !== "" && path === lastEdit.path && now - lastEdit.atMs < ONE_STEP_MS;
    if (!sameStep) past = [...past.slice(-MOST_STEPS + 1), given];
    lastEdit = { path, atMs: now };
    future = [];
    take(next);
    keep(KEPT_AS, JSON.stringify(given));
  };
  const step = (from: unknown[], to: unknown[]): void => {
    const next = from.pop();
    if (next === undefined) return;
    to.push(given);
    lastEdit = { path: "", atMs: 0 };
    take(next);
    keep(KEPT_AS, JSON.stringify(given));
  };

  take(keptPlan());
  whenKeptElsewhere(KEPT_AS, (text) => take(JSON.parse(text)));

  return {
    get given() {
      return given;
    },
    get plan() {
      return plan;
    },
    get problems() {
      return problems;
    },
    get canUndo() {
      return past.length > 0;
    },
    get canRedo() {
      return future.length > 0;
    },
    complain: (found) => {
      problems = [...problems, ...found];
    },
    set: (path, value, along = (next) => next) =>
      change(along(withValue(given, path, value), given), path.join(".")),
    load: (next) => change(next, ""),
    undo: () => step(past, future),
    redo: () => step(future, past),
    subscribe: (then) => {
      listeners.push(then);
    },
  };
};
