import type { Plan } from "../../../lib/plan/plan.ts";
import { el, saySo, type ViewOf, viewOf } from "../dom.ts";
import { marked } from "../pace.ts";
import type { Units } from "../units.ts";
import { rowOf } from "./field-list.ts";
import { keep, kept } from "./keep.ts";
import { planOfFragment } from "./link.ts";
import type { Path } from "./path.ts";
import { planWords } from "./plan-words.ts";
import { SECTIONS } from "./section-list.ts";
import { demoPlan, openPlanStore, type PlanStore } from "./store.ts";
import { planToolbar } from "./toolbar.ts";
import { problemsInUse } from "./usable.ts";

/** What a notebook works from: the plan as read, the plan as typed, and the units to show. */
export interface Setup {
  readonly plan: Plan;
  /** The plan as the user wrote it: what a file's metadata should carry. */
  readonly given: unknown;
  readonly units: Units;
  /** Puts something into the plan, as its fields do. */
  readonly put: (path: Path, value: unknown) => void;
}

const UNITS_KEPT_AS = "units";
/** Below this width the panel starts closed, so that the answer comes first on a phone. */
const ROOMY = "(min-width: 1100px)";

const readUnits = (): Units => (kept(UNITS_KEPT_AS) === "inch" ? "inch" : "metric");

/** A link's plan is taken over once and then leaves the address, so that later edits are not undone by a reload. */
const takeFromLink = async (store: PlanStore): Promise<void> => {
  try {
    const given = await planOfFragment(location.hash);
    if (given === null) return;
    store.load(given);
    history.replaceState(null, "", location.href.split("#")[0]);
  } catch (cause) {
    console.warn(cause);
  }
};

/**
 * The plan panel that all notebooks share. View it in a cell: its value is the setup, and it changes with every edit.
 *
 * @param open ids of the sections that start open in this notebook
 */
export const planPanel = (open: readonly string[]): ViewOf<Setup> => {
  const store = openPlanStore();
  let units = readUnits();
  const toolbar = planToolbar(
    store,
    () => units,
    (next) => {
      units = next;
      keep(UNITS_KEPT_AS, units);
      void change();
    },
  );
  // A folded section is brought up to date when it is opened: a slider being moved need not wait for it.
  const sections = SECTIONS.map(({ id, title, fields }) => {
    const rows = fields.map((field) => rowOf(field, { store, units: () => units, base: [] }));
    const refreshed = (): void => {
      if (details.open) for (const row of rows) row.refresh();
    };
    const details = el(
      "details",
      { class: "section", id: `plan-${id}`, open: open.includes(id), ontoggle: refreshed },
      el("summary", {}, title),
      ...rows.map(({ element }) => element),
    );
    return { details, refresh: refreshed };
  });
  const heading = el("summary", { class: "plan-name" });
  const outer = el(
    "details",
    { class: "plan-panel", open: matchMedia(ROOMY).matches },
    heading,
    toolbar.element,
    ...sections.map(({ details }) => details),
  );
  const words = el("p", { class: "plan-words" });
  const panel = viewOf<Setup | undefined>(
    el("div", { class: "plan", role: "region", "aria-label": "Plan" }, outer, words),
    undefined,
  );
  const refresh = (): void => {
    heading.textContent = `Plan: ${store.plan.name}`;
    toolbar.refresh();
    for (const section of sections) section.refresh();
  };
  let changes = 0;
  const change = async (): Promise<void> => {
    marked("change");
    changes += 1;
    const mine = changes;
    refresh();
    const { plan, given } = store;
    const problems = await problemsInUse(plan);
    if (mine !== changes) return;
    if (problems.length > 0) {
      store.complain(problems);
      refresh();
    }
    // What can't be worked with leaves the numbers as they are; on a page that has none yet, the demo's stand in.
    if (problems.length > 0 && panel.value !== undefined) return;
    const usable: Plan = problems.length === 0 ? plan : { ...demoPlan(), name: plan.name };
    panel.value = { plan: usable, given, units, put: store.set };
    words.textContent = planWords(usable, units);
    saySo(panel);
  };
  // The panel's own fields also say `input`; only the panel's word counts, once the plan has been read anew.
  outer.addEventListener("input", (event) => event.stopPropagation());
  store.subscribe(() => void change());
  void takeFromLink(store).then(change);
  // The runtime waits for the first value; from then on there always is one.
  return panel as ViewOf<Setup>;
};
