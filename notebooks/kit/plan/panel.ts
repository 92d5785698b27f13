import type { Plan } from "../../../lib/plan/plan.ts";
import { el, saySo, type ViewOf, viewOf } from "../dom.ts";
import { marked } from "../pace.ts";
import type { Units } from "../units.ts";
import { rowOf } from "./field-list.ts";
import type { Row } from "./field-row.ts";
import { keep, kept } from "./keep.ts";
import { planOfFragment } from "./link.ts";
import { SECTIONS } from "./section-list.ts";
import { openPlanStore, type PlanStore } from "./store.ts";
import { planToolbar } from "./toolbar.ts";

/** What a notebook works from: the plan as read, the plan as typed, and the units to show. */
export interface Setup {
  readonly plan: Plan;
  /** The plan as the user wrote it: what a file's metadata should carry. */
  readonly given: unknown;
  readonly units: Units;
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
  const setup = (): Setup => ({ plan: store.plan, given: store.given, units });
  const rows: Row[] = [];
  const toolbar = planToolbar(
    store,
    () => units,
    (next) => {
      units = next;
      keep(UNITS_KEPT_AS, units);
      change();
    },
  );
  const sections = SECTIONS.map(({ id, title, fields }) => {
    const own = fields.map((field) => rowOf(field, { store, units: () => units, base: [] }));
    rows.push(...own);
    return el(
      "details",
      { class: "section", id: `plan-${id}`, open: open.includes(id) },
      el("summary", {}, title),
      ...own.map(({ element }) => element),
    );
  });
  const heading = el("summary", { class: "plan-name" });
  const outer = el(
    "details",
    { class: "plan-panel", open: matchMedia(ROOMY).matches },
    heading,
    toolbar.element,
    ...sections,
  );
  const panel = viewOf(el("div", { class: "plan", role: "region", "aria-label": "Plan" }, outer), setup());
  const change = (): void => {
    heading.textContent = `Plan: ${store.plan.name}`;
    toolbar.refresh();
    for (const row of rows) row.refresh();
    panel.value = setup();
    marked("change");
    saySo(panel);
  };
  // The panel's own fields also say `input`; only the panel's word counts, once the plan has been read anew.
  outer.addEventListener("input", (event) => event.stopPropagation());
  store.subscribe(change);
  change();
  void takeFromLink(store);
  return panel;
};
