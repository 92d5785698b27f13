import { pathText } from "../../../lib/plan/issues.ts";
import { el } from "../dom.ts";
import type { Field } from "./field.ts";
import { fieldCoordinates } from "./field-coordinates.ts";
import { fieldMonths } from "./field-months.ts";
import { fieldRow, type Row, type RowContext } from "./field-row.ts";
import { valueAt } from "./path.ts";
import { problemWords } from "./problem-words.ts";

type ListField = Extract<Field, { readonly kind: "list" }>;

/** Makes the row of any field. */
export const rowOf = (field: Field, context: RowContext): Row => {
  if (field.kind === "list") return fieldList(field, context);
  if (field.kind === "months") return fieldMonths(field, context);
  if (field.kind === "coordinates") return fieldCoordinates(field, context);
  return field.kind === "notice" ? noticeRow(field, context) : fieldRow(field, context);
};

/** A notice with its way out, shown while it applies. */
const noticeRow = (field: Extract<Field, { readonly kind: "notice" }>, { store, base }: RowContext): Row => {
  const act = (): void => store.set(base, field.act(valueAt(store.given, base)));
  const said = el("p");
  const element = el(
    "div",
    { class: "notice", role: "status" },
    said,
    el("button", { type: "button", onclick: act }, field.label),
  );
  return {
    element,
    refresh: () => {
      const item = valueAt(store.given, base);
      element.hidden = field.when !== undefined && !field.when(item);
      if (!element.hidden) said.textContent = typeof field.text === "string" ? field.text : field.text(item);
    },
  };
};

const nameOf = (item: unknown, otherwise: string): string => {
  const name = valueAt(item, ["name"]);
  return typeof name === "string" && name.trim() !== "" ? name : otherwise;
};

/** A list in the plan, such as the legs: an item each, one button to add, one each to take away. */
const fieldList = (field: ListField, context: RowContext): Row => {
  const { store, base } = context;
  const path = [...base, ...field.path];
  const items = el("div", { class: "items" });
  const problem = el("p", { class: "problem", hidden: true });
  const listed = (): readonly unknown[] => {
    const value = valueAt(store.given, path);
    return Array.isArray(value) ? value : [];
  };
  const add = el(
    "button",
    {
      type: "button",
      class: "quiet",
      onclick: () => store.set([...path, listed().length], field.blank(listed().length)),
    },
    `Add ${/^[aeiou]/i.test(field.item) ? "an" : "a"} ${field.item}`,
  );
  let rows: readonly { readonly legend: HTMLElement; readonly rows: readonly Row[] }[] = [];
  const build = (): void => {
    rows = listed().map((_, index) => ({
      legend: el("legend"),
      rows: field.fields.map((inner) => rowOf(inner, { ...context, base: [...path, index] })),
    }));
    items.replaceChildren(
      ...rows.map(({ legend, rows: inner }, index) =>
        el(
          "fieldset",
          {},
          legend,
          ...inner.map(({ element }) => element),
          el(
            "button",
            {
              type: "button",
              class: "quiet take-away",
              onclick: () => store.set([...path, index], undefined),
            },
            `Take this ${field.item} out`,
          ),
        ),
      ),
    );
  };
  const refresh = (): void => {
    const now = listed();
    if (now.length !== rows.length) build();
    rows.forEach(({ legend, rows: inner }, index) => {
      legend.textContent = nameOf(now[index], `${field.item} ${index + 1}`);
      for (const row of inner) row.refresh();
    });
    add.disabled = now.length >= field.most;
    const own = [pathText(path), ...now.map((_, index) => pathText([...path, index]))];
    const found = store.problems.filter((one) => own.includes(one.path));
    problem.hidden = found.length === 0;
    problem.textContent = found.map(problemWords).join(" ");
  };
  return {
    element: el("div", { class: "field-list", "data-path": pathText(path) }, items, problem, add),
    refresh,
  };
};
