import { utcFormat } from "d3";
import { pathText } from "../../../lib/plan/issues.ts";
import type { Problem } from "../../../lib/units/problem.ts";
import { el, freshId } from "../dom.ts";
import type { Field } from "./field.ts";
import type { Row, RowContext } from "./field-row.ts";
import { valueAt } from "./path.ts";
import { problemWords } from "./problem-words.ts";
import { numbersIn, READINGS } from "./reading.ts";

type MonthsField = Extract<Field, { readonly kind: "months" }>;

const monthName = utcFormat("%b");
const MONTHS: readonly string[] = Array.from({ length: 12 }, (_, month) =>
  monthName(new Date(Date.UTC(2027, month, 1))),
);

/** What is wrong with some months, each complaint said once with the months it is about: `Apr, May: must be ...`. */
const monthsProblem = (found: readonly { readonly month: number; readonly problem: Problem }[]): string => {
  const months = new Map<string, string[]>();
  for (const { month, problem } of found) {
    const words = problemWords(problem);
    months.set(words, [...(months.get(words) ?? []), MONTHS[month] ?? `number ${month + 1}`]);
  }
  const named = (names: readonly string[]): string =>
    names.length > 2 ? `${names[0]} and ${names.length - 1} more` : names.join(", ");
  return [...months].map(([words, names]) => `${named(names)}: ${words}.`).join(" ");
};

/** Twelve numbers of a year, each month a field of its own; a row or column copied from a table fills them from where it is pasted. */
export const fieldMonths = (field: MonthsField, { store, units, base }: RowContext): Row => {
  const path = [...base, ...field.path];
  const where = pathText(path);
  const { read, write } = READINGS[field.temperature === true ? "temperature" : "number"](units);
  const id = freshId("months");
  const listed = (): readonly unknown[] => {
    const value = valueAt(store.given, path);
    return Array.isArray(value) ? value : [];
  };
  /** Months that are still empty are `null`, which a plan file can hold; a year with none stated is an empty list. */
  const put = (first: number, values: readonly unknown[]): void => {
    const now = listed();
    const isNew = (month: number): boolean => month >= first && month < first + values.length;
    const year = MONTHS.map((_, month) => (isNew(month) ? values[month - first] : now[month]) ?? null);
    store.set(path, year.every((value) => value === null) ? [] : year);
  };
  const pasted = (month: number) => (event: ClipboardEvent) => {
    const values = numbersIn(event.clipboardData?.getData("text") ?? "");
    if (values.length < 2) return;
    event.preventDefault();
    const taken = values.slice(0, 12 - month);
    put(month, field.temperature === true ? taken.map((value) => read(String(value))) : taken);
    said.textContent =
      taken.length < values.length
        ? `Took the first ${taken.length} of ${values.length} numbers, from ${MONTHS[month]} on.`
        : `Took ${taken.length} numbers, from ${MONTHS[month]} on.`;
    inputs.forEach(show);
  };
  const said = el("p", { class: "said", role: "status" });
  const problem = el("p", { class: "problem", id: `${id}-problem`, hidden: true });
  const inputs = MONTHS.map((name, month) =>
    el("input", {
      type: "text",
      inputmode: "decimal",
      autocomplete: "off",
      "aria-label": `${field.label}, ${name}`,
      oninput: ({ currentTarget }: Event) => put(month, [read((currentTarget as HTMLInputElement).value)]),
      onpaste: pasted(month),
    }),
  );
  const show = (input: HTMLInputElement, month: number): void => {
    input.value = write(listed()[month]);
  };
  const unit = el("span", { class: "unit" });
  const element = el(
    "div",
    {
      class: "field field-months",
      "data-path": where,
      role: "group",
      "aria-labelledby": `${id}-label`,
      "aria-describedby": `${id}-help`,
    },
    el("div", { class: "months-label", id: `${id}-label` }, field.label, " ", unit),
    el(
      "div",
      { class: "months" },
      ...inputs.map((input, month) => el("label", {}, el("span", {}, MONTHS[month]), input)),
    ),
    problem,
    said,
    el("p", { class: "help", id: `${id}-help` }, field.says),
  );
  const refresh = (): void => {
    element.hidden = field.when !== undefined && !field.when(valueAt(store.given, base));
    if (element.hidden) return;
    unit.textContent = field.temperature !== true ? field.unit : units() === "metric" ? "°C" : "°F";
    inputs.forEach((input, month) => {
      if (document.activeElement !== input) show(input, month);
    });
    const found = store.problems.flatMap((one) => {
      const [, month] = /^\[(\d+)\]$/.exec(one.path.slice(where.length)) ?? [];
      return one.path.startsWith(where) && month !== undefined
        ? [{ month: Number(month), problem: one }]
        : [];
    });
    const whole = store.problems.filter((one) => one.path === where);
    problem.textContent = [...whole.map((one) => `${problemWords(one)}.`), monthsProblem(found)]
      .join(" ")
      .trim();
    problem.hidden = problem.textContent === "";
    const wrong = new Set(found.map(({ month }) => month));
    inputs.forEach((input, month) => {
      const isWrong = wrong.has(month) || whole.length > 0;
      if (isWrong) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    });
    element.setAttribute("aria-describedby", problem.hidden ? `${id}-help` : `${problem.id} ${id}-help`);
  };
  return { element, refresh };
};
