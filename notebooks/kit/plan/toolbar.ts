import { el } from "../dom.ts";
import { saveText } from "../save.ts";
import type { Units } from "../units.ts";
import { DEMOS } from "./demos.ts";
import { lookAtText } from "./incoming.ts";
import { fragmentOf } from "./link.ts";
import { problemOnPage } from "./problem-words.ts";
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

/** Replaces the plan and says how to have the old one back. */
const replace = (store: PlanStore, given: unknown, what: string): string => {
  store.load(given);
  return `${what} Undo brings your plan back, on the other pages and after a reload too.`;
};

const readFile = async (file: File, store: PlanStore, ask: Ask): Promise<void> => {
  if (file.size > LARGEST_PLAN_BYTES) {
    return ask(`${file.name} is too large for a plan file. Your plan is unchanged.`);
  }
  const incoming = lookAtText(await file.text());
  if (incoming.kind === "no plan") {
    return ask(`${file.name} is no plan: ${incoming.why}. Your plan is unchanged.`);
  }
  const { given } = incoming;
  if (incoming.kind === "sound") return ask(replace(store, given, `${file.name} opened.`));
  const { problems } = incoming;
  ask(
    `${file.name} has ${problems.length === 1 ? "one thing" : `${problems.length} things`} to mend, first: ${problems[0] === undefined ? "" : problemOnPage(problems[0])}. Your plan is unchanged so far.`,
    [
      [
        "Open it and mend it here",
        () => replace(store, given, `${file.name} opened; what is wrong stands at its fields.`),
      ],
    ],
  );
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

/** Says something, with what can be done about it: a button each, whose answer is said next. */
export type Ask = (text: string, choices?: readonly (readonly [label: string, act: () => string])[]) => void;

export interface Toolbar {
  readonly element: HTMLElement;
  readonly refresh: () => void;
  readonly ask: Ask;
}

/** What can be done with the plan as a whole: demos, files, a link, undo, units. */
export const planToolbar = (
  store: PlanStore,
  units: () => Units,
  setUnits: (units: Units) => void,
): Toolbar => {
  const said = el("div", { class: "said", role: "status" });
  const ask: Ask = (text, choices = []) => {
    said.replaceChildren(
      el("p", {}, text),
      ...choices.map(([label, act]) => el("button", { type: "button", onclick: () => ask(act()) }, label)),
    );
  };
  const say = (text: string): void => ask(text);
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
      if (chosen !== undefined) await readFile(chosen, store, ask);
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
          say(replace(store, demo.given, `Demo: ${demo.name}.`));
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
    ask,
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
                "Until it is mended, the numbers on this page are those of the plan before, the last that could be used.",
              ),
              ...store.problems.slice(0, MOST_LISTED).map((problem) => el("li", {}, problemOnPage(problem))),
              ...(store.problems.length > MOST_LISTED
                ? [el("li", {}, `and ${store.problems.length - MOST_LISTED} more, each at its field`)]
                : []),
            ]),
      );
    },
  };
};
