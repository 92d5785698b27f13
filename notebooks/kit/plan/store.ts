import { checkPlan } from "../../../lib/plan/index.ts";
import type { Plan } from "../../../lib/plan/plan.ts";
import type { Problem } from "../../../lib/units/problem.ts";
import { FIRST_DEMO } from "./demos.ts";
import { keepSteps, keptSteps, type Steps } from "./history.ts";
import { keep, kept, whenKeptElsewhere } from "./keep.ts";
import { type Path, withValue } from "./path.ts";

/** Edits of one field closer together than this are one step of undo: a drag of a slider is one change. */
const ONE_STEP_MS = 900;
const KEPT_AS = "plan";
/** The last plan that answers could be worked out for, as it was typed. */
const USED_AS = "plan-used";

/** The one plan behind all notebooks: as typed, as read, and how it came to be. */
export interface PlanStore {
  /** The plan as the user has it, with whatever is wrong with it. */
  readonly given: unknown;
  /** The plan as read; while it can't be read, the last one that answers could be worked out for. */
  readonly plan: Plan;
  /** The last plan that answers could be worked out for, as typed and as read: on this page, another, or an earlier visit. */
  readonly used: { readonly given: unknown; readonly plan: Plan };
  /** What is wrong with `given`; empty when `plan` is what it says. */
  readonly problems: readonly Problem[];
  /** Complaints that only come up when the plan is worked with, such as a weather file that does not suit the place. */
  readonly complain: (problems: readonly Problem[]) => void;
  /** Says that answers could be worked out for the plan as it stands. */
  readonly use: () => void;
  /** Whether there is a plan of the user's own here, that something from outside would replace. */
  readonly hasOwn: boolean;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Changes one value; `along` makes the rest of the plan follow, from the plan with the new value and the one before. */
  readonly set: (path: Path, value: unknown, along?: (given: unknown, before: unknown) => unknown) => void;
  readonly load: (given: unknown) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly subscribe: (then: () => void) => void;
}

const keptJson = (name: string): unknown => {
  try {
    return JSON.parse(kept(name) ?? "null") ?? undefined;
  } catch {
    return undefined;
  }
};

const readOrNull = (given: unknown): Plan | null => {
  const reading = checkPlan(given);
  return reading.ok ? reading.plan : null;
};

const demo = (): { readonly given: unknown; readonly plan: Plan } => {
  const reading = checkPlan(FIRST_DEMO.given);
  if (!reading.ok) throw new Error(`The demo plan can't be read: ${reading.problems[0]?.allowed}`);
  return { given: FIRST_DEMO.given, plan: reading.plan };
};

/** The plan that answers were last worked out for in this browser; the demo where there was none, or it can't be read any more. */
const lastUsed = (): { readonly given: unknown; readonly plan: Plan } => {
  const given = keptJson(USED_AS);
  const plan = given === undefined ? null : readOrNull(given);
  return plan === null ? demo() : { given, plan };
};

/** Opens the plan this browser keeps, or the demo. */
export const openPlanStore = (): PlanStore => {
  const listeners: (() => void)[] = [];
  let steps: Steps = keptSteps();
  let lastEdit = { path: "", atMs: 0 };
  let used = lastUsed();
  let given: unknown;
  let plan = used.plan;
  let problems: readonly Problem[] = [];

  const take = (next: unknown): void => {
    given = next;
    const reading = checkPlan(given);
    plan = reading.ok ? reading.plan : used.plan;
    problems = reading.ok ? [] : reading.problems;
    for (const listener of listeners) listener();
  };
  const put = (next: unknown): void => {
    keep(KEPT_AS, JSON.stringify(next));
    take(next);
  };
  const change = (next: unknown, path: string): void => {
    const now = performance.now();
    const sameStep = path !== "" && path === lastEdit.path && now - lastEdit.atMs < ONE_STEP_MS;
    if (!sameStep) steps = keepSteps({ past: [...steps.past, given], future: [] });
    lastEdit = { path, atMs: now };
    put(next);
  };
  const undo = (): void => {
    if (steps.past.length === 0) return;
    const next = steps.past[steps.past.length - 1];
    steps = keepSteps({ past: steps.past.slice(0, -1), future: [...steps.future, given] });
    lastEdit = { path: "", atMs: 0 };
    put(next);
  };
  const redo = (): void => {
    if (steps.future.length === 0) return;
    const next = steps.future[steps.future.length - 1];
    steps = keepSteps({ past: [...steps.past, given], future: steps.future.slice(0, -1) });
    lastEdit = { path: "", atMs: 0 };
    put(next);
  };

  take(keptJson(KEPT_AS) ?? FIRST_DEMO.given);
  whenKeptElsewhere(KEPT_AS, (text) => {
    try {
      const next: unknown = JSON.parse(text);
      // The other tab keeps the step back before it keeps the plan: undo works here too.
      steps = keptSteps();
      take(next);
    } catch {
      // What another tab could not keep whole is no reason to lose the plan here.
    }
  });

  return {
    get given() {
      return given;
    },
    get plan() {
      return plan;
    },
    get used() {
      return used;
    },
    get problems() {
      return problems;
    },
    get hasOwn() {
      const own = kept(KEPT_AS);
      return own !== null && own !== JSON.stringify(FIRST_DEMO.given);
    },
    get canUndo() {
      return steps.past.length > 0;
    },
    get canRedo() {
      return steps.future.length > 0;
    },
    complain: (found) => {
      problems = [...problems, ...found];
    },
    use: () => {
      if (used.given !== given) keep(USED_AS, JSON.stringify(given));
      used = { given, plan };
    },
    set: (path, value, along = (next) => next) =>
      change(along(withValue(given, path, value), given), path.join(".")),
    load: (next) => change(next, ""),
    undo,
    redo,
    subscribe: (then) => {
      listeners.push(then);
    },
  };
};
