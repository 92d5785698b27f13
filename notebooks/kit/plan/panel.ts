import type { Plan } from "../../../lib/plan/plan.ts";
import { el, saySo, type ViewOf, viewOf } from "../dom.ts";
import { marked } from "../pace.ts";
import type { Units } from "../units.ts";
import { rowOf } from "./field-list.ts";
import { type Incoming, lookAt } from "./incoming.ts";
import { keep, kept } from "./keep.ts";
import { planOfFragment } from "./link.ts";
import type { Path } from "./path.ts";
import { planWords } from "./plan-words.ts";
import { problemOnPage } from "./problem-words.ts";
import { SECTIONS } from "./section-list.ts";
import { openPlanStore, type PlanStore } from "./store.ts";
import { type Ask, planToolbar } from "./toolbar.ts";
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

/** A link leaves the address once it was looked at, so that later edits are not undone by a reload. */
const forgetLink = (): void => history.replaceState(null, "", location.href.split("#")[0]);

/** A link's plan is taken where there is none of the user's own; else it is asked first. One that was cut short is told. */
const takeFromLink = async (store: PlanStore, ask: Ask): Promise<void> => {
  let incoming: Incoming;
  try {
    const given = await planOfFragment(location.hash);
    if (given === null) return;
    incoming = lookAt(given);
  } catch {
    incoming = { kind: "no plan", why: "it was cut short or changed on its way" };
  }
  forgetLink();
  if (incoming.kind === "no plan") {
    ask(`The plan in the link can't be read: ${incoming.why}. Ask for it anew; the plan here is unchanged.`);
    return;
  }
  const { given } = incoming;
  const same = JSON.stringify(given) === JSON.stringify(store.given);
  if (same) return;
  if (!store.hasOwn) {
    store.load(given);
    return;
  }
  ask("The link brings a plan of its own. Yours is still here.", [
    [
      "Use the plan of the link",
      () => {
        store.load(given);
        return "The link's plan is in use. Undo brings yours back, on the other pages and after a reload too.";
      },
    ],
    ["Keep mine", () => "Your plan stays."],
  ]);
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
  const stale = el("p", { class: "stale", role: "status", hidden: true });
  /** While the answers are older than the plan they are dimmed, and say so: on the screen and on paper. */
  const tellAge = (): void => {
    const behind = store.problems.length > 0;
    document.documentElement.classList.toggle("answers-behind", behind);
    stale.hidden = !behind;
    stale.textContent = behind
      ? `These answers are for the plan before its last changes (${planWords(store.used.plan, units)}). ${store.problems.slice(0, 1).map(problemOnPage).join("")}`
      : "";
  };
  document.querySelector("main")?.before(stale);
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
    const { plan } = store;
    const readable = store.problems.length === 0;
    const problems = readable ? await problemsInUse(plan) : [];
    if (mine !== changes) return;
    if (problems.length > 0) {
      store.complain(problems);
      refresh();
    }
    if (store.problems.length === 0) store.use();
    tellAge();
    // What can't be worked with leaves the numbers as they are; a page that has none yet takes those of the last plan
    // that could be used, here or on another page.
    if (store.problems.length > 0 && panel.value !== undefined) return;
    panel.value = { ...store.used, units, put: store.set };
    words.textContent = planWords(store.used.plan, units);
    saySo(panel);
  };
  // The panel's own fields also say `input`; only the panel's word counts, once the plan has been read anew.
  outer.addEventListener("input", (event) => event.stopPropagation());
  store.subscribe(() => void change());
  void takeFromLink(store, toolbar.ask).then(change);
  // The runtime waits for the first value; from then on there always is one.
  return panel as ViewOf<Setup>;
};
