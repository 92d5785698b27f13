/** What is wrong with a plan, in the words of the page: by the labels of its fields, never by the plan file's own names. */
import type { Problem } from "../../../lib/units/problem.ts";
import type { Field } from "./field.ts";
import type { Path } from "./path.ts";
import { SECTIONS } from "./section-list.ts";

/** The parts of a path as it is written: `stand.legs[1].lengthMm`. */
const partsOf = (text: string): Path =>
  [...text.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map(([, name, index]) =>
    index === undefined ? (name ?? "") : Number(index),
  );

const startsWith = (path: Path, start: Path): boolean =>
  start.length <= path.length && start.every((key, at) => path[at] === key);

/** The label of the field that a path leads to or into; `null` where no field does. */
const labelIn = (fields: readonly Field[], path: Path): string | null => {
  let into: string | null = null;
  for (const field of fields) {
    if (field.kind === "notice" || !startsWith(path, field.path)) continue;
    const rest = path.slice(field.path.length);
    if (field.kind === "list") {
      const [index, ...inner] = rest;
      if (typeof index !== "number") return field.label;
      const name = `${field.item} ${index + 1}`;
      const label = labelIn(field.fields, inner);
      return label === null ? name : `${name}, ${label.toLowerCase()}`;
    }
    if (field.kind === "months" && typeof rest[0] === "number") return `${field.label}, month ${rest[0] + 1}`;
    if (rest.length === 0 && field.kind !== "variant") return field.label;
    if (field.path.length > 0) into ??= field.label;
  }
  return into;
};

/**
 * A path of the plan as the page calls it: section and label, or as much of it as the page has.
 *
 * @example labelOf("site.longitudeDeg") // "Place, longitude"
 */
export const labelOf = (path: string): string | null => {
  const parts = partsOf(path);
  for (const { title, fields } of SECTIONS) {
    const label = labelIn(fields, parts);
    if (label !== null)
      return label.toLowerCase().startsWith(title.toLowerCase())
        ? label
        : `${title}, ${label.charAt(0).toLowerCase()}${label.slice(1)}`;
  }
  return null;
};

/** A path inside a sentence of the library's. */
const PATH_IN_WORDS = /\b[a-z][A-Za-z]*(?:\[\d+\])?(?:\.[a-z][A-Za-z]*(?:\[\d+\])?)+/g;

const inWords = (text: string): string =>
  text.replaceAll(PATH_IN_WORDS, (path) => {
    const label = labelOf(path);
    return label === null ? path : `\u201c${label}\u201d`;
  });

/** What is allowed at a field and what would mend it. */
export const problemWords = ({ allowed, hint }: Problem): string =>
  allowed.includes("an object { }")
    ? "must be filled in"
    : inWords(`${allowed}${hint === undefined ? "" : `; ${hint}`}`);

const found = (problem: Problem): string => {
  if (!("value" in problem)) return "";
  const { value } = problem;
  if (value === undefined || value === "" || value === null) return ", left empty";
  return typeof value === "string" || typeof value === "number" ? `, ${value}` : "";
};

/** A complaint as the page's list tells it: which field, what it holds, what is allowed, what would mend it. */
export const problemOnPage = (problem: Problem): string =>
  `${labelOf(problem.path) ?? `The plan\u2019s \u201c${problem.path}\u201d, which has no field on this page`}${found(problem)}: ${problemWords(problem)}`;
