import { pathText } from "../../../lib/plan/issues.ts";
import { el, freshId } from "../dom.ts";
import { typedLengthMm, type Units } from "../units.ts";
import type { Field, Slider } from "./field.ts";
import { type Path, valueAt } from "./path.ts";
import { problemWords } from "./problem-words.ts";
import { READINGS, withoutUnit } from "./reading.ts";
import type { PlanStore } from "./store.ts";

/** What a row works with: the plan, the units in use, and where in the plan its section or list item stands. */
export interface RowContext {
  readonly store: PlanStore;
  readonly units: () => Units;
  readonly base: Path;
}

/** A part of the panel that can be brought up to date without losing the focus or what is being typed. */
export interface Row {
  readonly element: HTMLElement;
  readonly refresh: () => void;
}

/** The one-line controls of one value: everything but lists, notices, twelve months and coordinates. */
export type LineField = Exclude<Field, { readonly kind: "list" | "notice" | "months" | "coordinates" }>;

/** A control in its row: how to show a value, and the element that takes the focus. */
interface Control {
  readonly elements: readonly HTMLElement[];
  readonly focus: HTMLElement;
  readonly show: (value: unknown) => void;
}

const slider = (
  { least, most, step }: Slider,
  label: string,
  set: (value: number) => void,
): HTMLInputElement =>
  el("input", {
    type: "range",
    min: least,
    max: most,
    step,
    "aria-label": `${label}, slider`,
    oninput: ({ currentTarget }: Event) => set((currentTarget as HTMLInputElement).valueAsNumber),
  });

const typedControl = (
  field: Extract<LineField, { readonly kind: "number" | "length" | "temperature" | "text" | "date" }>,
  id: string,
  set: (value: unknown) => void,
  { store, units }: RowContext,
): Control => {
  const { read, write } = READINGS[field.kind](units);
  const input = el("input", {
    id,
    type: field.kind === "date" ? "date" : "text",
    inputmode: field.kind === "number" ? "decimal" : undefined,
    autocomplete: "off",
    class: field.kind === "text" ? "wide" : undefined,
    oninput: () => set(read(withoutUnit(input.value, field.kind === "number" ? field.unit : ""))),
    onblur: () => show(shown),
  });
  let shown: unknown;
  const ends = "slider" in field ? field.slider : undefined;
  const range = ends === undefined ? null : slider(ends, field.label, set);
  const unit = el("span", { class: "unit" });
  const unitText = (): string => {
    if (field.kind === "length") return units() === "metric" ? "mm" : "in";
    if (field.kind === "temperature") return units() === "metric" ? "°C" : "°F";
    return field.kind === "number" ? field.unit : "";
  };
  const show = (value: unknown): void => {
    shown = value;
    unit.textContent = unitText();
    if (document.activeElement !== input) input.value = write(value);
    const otherwise =
      value === undefined && field.kind === "number" ? field.otherwise?.(store.plan) : undefined;
    input.placeholder = otherwise === undefined ? "" : write(otherwise);
    if (range !== null && document.activeElement !== range) {
      const number = typeof value === "string" ? typedLengthMm(value, "metric") : (value ?? otherwise);
      if (typeof number === "number") range.value = String(number);
    }
  };
  return { elements: range === null ? [input, unit] : [range, input, unit], focus: input, show };
};

const choiceControl = (
  field: Extract<LineField, { readonly kind: "choice" }>,
  id: string,
  set: (value: unknown) => void,
): Control => {
  const options = field.choices.map(({ value, label }) => el("option", { value }, label));
  // A value that is not among the choices is kept and shown as it is, never changed by being looked at.
  const other = el("option", { value: "\u0000", hidden: true });
  const select = el(
    "select",
    {
      id,
      onchange: () => set(field.choices.find(({ value }) => String(value) === select.value)?.value),
    },
    other,
    ...options,
  );
  return {
    elements: [select],
    focus: select,
    show: (value) => {
      const known = field.choices.some((choice) => choice.value === value);
      other.textContent = known ? "" : typeof value === "string" ? value : "as the plan file says";
      select.value = known ? String(value) : "\u0000";
    },
  };
};

const variantControl = (
  field: Extract<LineField, { readonly kind: "variant" }>,
  id: string,
  { store, base }: RowContext,
): Control => {
  const select = el(
    "select",
    {
      id,
      onchange: () => {
        const made = field.variants[Number(select.value)]?.make(valueAt(store.given, base), store.plan);
        store.set(base, made);
      },
    },
    ...field.variants.map(({ label }, index) => el("option", { value: index }, label)),
  );
  return {
    elements: [select],
    focus: select,
    show: () => {
      select.value = String(field.variants.findIndex(({ is }) => is(valueAt(store.given, base))));
    },
  };
};

const fileControl = (
  field: Extract<LineField, { readonly kind: "file" }>,
  id: string,
  set: (value: unknown) => void,
): Control => {
  const said = el("span", { class: "unit", role: "status" });
  const input = el("input", {
    id,
    type: "file",
    accept: field.accept,
    onchange: async () => {
      const [file] = input.files ?? [];
      if (file === undefined) return;
      const fits = file.size <= field.largestBytes;
      said.textContent = fits ? "" : `larger than ${Math.round(field.largestBytes / 1e6)} MB: not opened`;
      if (fits) set(field.take(file.name, await file.text()));
    },
  });
  return { elements: [input, said], focus: input, show: () => undefined };
};

/** One field: its label, its control, its help, and what the library says is wrong with it. */
export const fieldRow = (field: LineField, context: RowContext): Row => {
  const { store, base } = context;
  const id = freshId("plan");
  const path = [...base, ...field.path];
  const along = field.kind === "number" ? field.along : undefined;
  const set = (value: unknown): void => store.set(path, value, along);
  const control =
    field.kind === "choice"
      ? choiceControl(field, id, set)
      : field.kind === "variant"
        ? variantControl(field, id, context)
        : field.kind === "file"
          ? fileControl(field, id, set)
          : typedControl(field, id, set, context);
  const problem = el("p", { class: "problem", id: `${id}-problem`, hidden: true });
  const help = field.says === undefined ? null : el("p", { class: "help", id: `${id}-help` }, field.says);
  if (help !== null) control.focus.setAttribute("aria-describedby", help.id);
  const element = el(
    "div",
    { class: `field field-${field.kind}`, "data-path": pathText(path) },
    el("label", { for: id }, field.label),
    el("div", { class: "controls" }, ...control.elements),
    problem,
    help,
  );
  const refresh = (): void => {
    element.hidden = field.when !== undefined && !field.when(valueAt(store.given, base));
    control.show(valueAt(store.given, path) ?? valueAt(store.plan, path));
    // A variant stands for a whole part of the plan: what is wrong inside it is said by the fields it shows.
    const found =
      field.kind === "variant" || field.kind === "file"
        ? []
        : store.problems.filter((one) => one.path === pathText(path));
    problem.hidden = found.length === 0;
    problem.textContent = found.map(problemWords).join(" ");
    if (found.length === 0) control.focus.removeAttribute("aria-invalid");
    else control.focus.setAttribute("aria-invalid", "true");
    control.focus.setAttribute(
      "aria-describedby",
      [found.length === 0 ? null : problem.id, help?.id].filter(Boolean).join(" "),
    );
  };
  return { element, refresh };
};
