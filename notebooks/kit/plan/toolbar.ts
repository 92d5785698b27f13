import { problemLine } from "../../../lib/units/problem.ts";
import { el } from "../dom.ts";
import { saveText } from "../save.ts";
import type { Units } from "../units.ts";
import { DEMOS } from "./demos.ts";
import { fragmentOf } from "./link.ts";
import type { PlanStore } from "./store.ts";

const LARGEST_PLAN_BYTES = 200_000;
/** Complaints told at the head of the plan; a plan file can be wrong by the hundred, and each stands at its field too. */
const MOST_LISTED = 5;

const fileName = (given: unknown): string => {
  const name = typeof given === "object" && given !== null && "name" in given ? String(given.name) : "plan";
  const plain = name
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-|-$/g, "");
  return `${plain || "plan"}.json`;
};

const readFile = async (file: File, store: PlanStore, say: (text: string) => void): Promise<void> => {
  if (file.size > LARGEST_PLAN_BYTES) return say(`${file.name} is too large for a plan file.`);
  try {
    store.load(JSON.parse(await file.text()));
    say(
      store.problems.length === 0
        ? `${file.name} opened.`
        : `${file.name} opened; what is wrong stands at its fields.`,
    );
  } catch (cause) {
    say(`${file.name} is not JSON: ${cause instanceof Error ? cause.message : String(cause)}`);
  }
};

const copyLink = async (store: PlanStore, say: (text: string) => void): Promise<void> => {
  const link = `${location.href.split("#")[0]}${await fragmentOf(store.given)}`;
  try {
    await navigator.clipboard.writeText(link);
    say("A link with this plan is on the clipboard.");
  } catch {
    // Pages opened from disk may not reach the clipboard: the address line holds the link then.
    location.hash = await fragmentOf(store.given);
    say("The address line now holds a link with this plan.");
  }
};

export interface Toolbar {
  readonly element: HTMLElement;
  readonly refresh: () => void;
}

/** What can be done with the plan as a whole: demos, files, a link, undo, units. */
export const planToolbar = (
  store: PlanStore,
  units: () => Units,
  setUnits: (units: Units) => void,
): Toolbar => {
  const said = el("p", { class: "said", role: "status" });
  const say = (text: string): void => {
    said.textContent = text;
  };
  const button = (label: string, onclick: () => void): HTMLButtonElement =>
    el("button", { type: "button", onclick }, label);
  const undo = button("Undo", store.undo);
  const redo = button("Redo", store.redo);
  const file = el("input", {
    type: "file",
    accept: ".json,application/json",
    hidden: true,
    "aria-label": "Plan file",
    onchange: async () => {
      const [chosen] = file.files ?? [];
      if (chosen !== undefined) await readFile(chosen, store, say);
      file.value = "";
    },
  });
  const demos = el(
    "select",
    {
      "aria-label": "Start from a demo plan",
      onchange: () => {
        const demo = DEMOS.find(({ id }) => id === demos.value);
        if (demo !== undefined) {
          store.load(demo.given);
          say(`Demo: ${demo.name}. Undo brings your plan back.`);
        }
        demos.value = "";
      },
    },
    el("option", { value: "" }, "Demo plans"),
    ...DEMOS.map(({ id, name }) => el("option", { value: id }, name)),
  );
  const unitSwitch = el(
    "select",
    { "aria-label": "Units", onchange: () => setUnits(unitSwitch.value === "inch" ? "inch" : "metric") },
    el("option", { value: "metric" }, "mm, mm², °C"),
    el("option", { value: "inch" }, "inch, AWG, °F"),
  );
  const unplaced = el("ul", { class: "problems" });
  const element = el(
    "div",
    { class: "toolbar" },
    el("div", { class: "buttons" }, demos, unitSwitch),
    el(
      "div",
      { class: "buttons" },
      undo,
      redo,
      button("Save", () =>
        saveText(fileName(store.given), "application/json", `${JSON.stringify(store.given, null, 2)}\n`),
      ),
      button("Open", () => file.click()),
      button("Copy link", () => void copyLink(store, say)),
      file,
    ),
    said,
    unplaced,
  );
  return {
    element,
    refresh: () => {
      undo.disabled = !store.canUndo;
      redo.disabled = !store.canRedo;
      unitSwitch.value = units();
      unplaced.hidden = store.problems.length === 0;
      unplaced.replaceChildren(
        ...(store.problems.length === 0
          ? []
          : [
              el(
                "li",
                { class: "note" },
                "Until it is mended, the numbers are those of the last plan that could be used.",
              ),
              ...store.problems.slice(0, MOST_LISTED).map((problem) => el("li", {}, problemLine(problem))),
              ...(store.problems.length > MOST_LISTED
                ? [el("li", {}, `and ${store.problems.length - MOST_LISTED} more, each at its field`)]
                : []),
            ]),
      );
    },
  };
};
