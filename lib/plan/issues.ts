import { z } from "zod";
import type { Problem } from "../units/problem.ts";
import { nearestName } from "./nearest-name.ts";

/** A path as a person writes it: `stand.legs[1].lengthMm`. */
export const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, key) =>
      typeof key === "number" ? `${text}[${key}]` : `${text}${text === "" ? "" : "."}${String(key)}`,
    "",
  ) || "plan";

const valueAt = (root: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === "object" && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    root,
  );

type Schema = z.core.$ZodType;

const wrapped = (schema: Schema): readonly Schema[] => {
  if (schema instanceof z.core.$ZodPipe) return [schema._zod.def.in, schema._zod.def.out];
  return schema instanceof z.core.$ZodDefault ||
    schema instanceof z.core.$ZodPrefault ||
    schema instanceof z.core.$ZodOptional
    ? [schema._zod.def.innerType]
    : [];
};

/** Wrappers such as defaults and pipes hide the schema that carries ranges and notes; this walks through them. */
const within = (schema: Schema): readonly Schema[] => [schema, ...wrapped(schema).flatMap(within)];

/** The schemas that may stand at a path, most outward first. */
const schemasAt = (schema: Schema, path: readonly PropertyKey[]): readonly Schema[] => {
  const layers = within(schema);
  const [key, ...rest] = path;
  const options = layers.flatMap((layer) =>
    layer instanceof z.core.$ZodUnion
      ? layer._zod.def.options.flatMap((option) => schemasAt(option, path))
      : [],
  );
  if (key === undefined) return [...layers, ...options];
  const children = layers.flatMap((layer): Schema[] => {
    if (layer instanceof z.core.$ZodObject) {
      const child = layer._zod.def.shape[String(key)];
      return child ? [child] : [];
    }
    return layer instanceof z.core.$ZodArray ? [layer._zod.def.element] : [];
  });
  return [...children.flatMap((child) => schemasAt(child, rest)), ...options];
};

interface Notes {
  readonly unit?: string;
  readonly hint?: string;
  readonly least?: number;
  readonly most?: number;
}

/** Takes the closed bound that a number's check sets, if it sets one. */
const boundOf = (def: z.core.$ZodCheckDef, notes: { least?: number; most?: number }): void => {
  const { check, value } = def as z.core.$ZodCheckDef & { readonly value?: unknown };
  if (typeof value !== "number") return;
  if (check === "greater_than") notes.least ??= value;
  if (check === "less_than") notes.most ??= value;
};

const notesAt = (schema: Schema, path: readonly PropertyKey[]): Notes => {
  const notes: { unit?: string; hint?: string; least?: number; most?: number } = {};
  for (const layer of schemasAt(schema, path)) {
    const meta = z.globalRegistry.get(layer);
    if (meta?.unit !== undefined) notes.unit ??= meta.unit;
    if (meta?.hint !== undefined) notes.hint ??= meta.hint;
    if (!(layer instanceof z.core.$ZodNumber)) continue;
    for (const { _zod } of layer._zod.def.checks ?? []) {
      boundOf(_zod.def, notes);
    }
  }
  return notes;
};

const keysAt = (schema: Schema, path: readonly PropertyKey[]): readonly string[] =>
  schemasAt(schema, path).flatMap((layer) =>
    layer instanceof z.core.$ZodObject ? Object.keys(layer._zod.def.shape) : [],
  );

const rangeText = ({ least, most, unit = "" }: Notes): string | null =>
  least === undefined || most === undefined ? null : `${least} to ${most}${unit === "" ? "" : ` ${unit}`}`;

const KIND_WORDS: Readonly<Record<string, string>> = {
  number: "a number",
  int: "a whole number",
  string: "text in quotes",
  object: "an object { }",
  array: "a list [ ]",
  boolean: "true or false",
};

const list = (values: readonly unknown[]): string => values.map((value) => JSON.stringify(value)).join(", ");

const allowedText = (issue: z.core.$ZodIssue, notes: Notes): string => {
  const range = rangeText(notes);
  switch (issue.code) {
    case "invalid_type": {
      const kind = KIND_WORDS[issue.expected] ?? issue.expected;
      return range === null ? `must be ${kind}` : `must be ${kind}, ${range}`;
    }
    case "too_small":
    case "too_big": {
      if (issue.origin === "array") {
        const bound = issue.code === "too_small" ? `at least ${issue.minimum}` : `at most ${issue.maximum}`;
        return issue.exact
          ? `must have exactly ${issue.code === "too_small" ? issue.minimum : issue.maximum} entries`
          : `must have ${bound} entries`;
      }
      if (issue.origin === "string") {
        return issue.code === "too_small"
          ? "must not be empty"
          : `must be at most ${issue.maximum} characters`;
      }
      return range === null ? issue.message : `must be ${range}`;
    }
    case "invalid_value":
      return issue.values.length === 1
        ? `must be ${list(issue.values)}`
        : `must be one of ${list(issue.values)}${notes.unit === undefined ? "" : ` ${notes.unit}`}`;
    case "invalid_union":
      return "options" in issue && Array.isArray(issue.options)
        ? `must be one of ${list(issue.options)}`
        : "is none of the forms it may take";
    case "invalid_format":
      return issue.format === "date" ? "must be a date" : issue.message;
    default:
      return issue.message;
  }
};

/** What is complained of only where a value is of the right kind. */
const BEYOND_KIND: ReadonlySet<string> = new Set(["too_small", "too_big", "custom"]);

/**
 * Of a union's branches, the one the user meant: the branch that is wrong inside, in fewest places, or whose kind it is.
 * `null` when each branch refuses the value outright, so that none was meant more than another.
 */
const meantBranch = (issue: z.core.$ZodIssueInvalidUnion): readonly z.core.$ZodIssue[] | null => {
  const inner = issue.errors.filter((errors) =>
    errors.every((error) => error.path.length > 0 || error.code === "unrecognized_keys"),
  );
  const ofItsKind = issue.errors.find((errors) => errors.every(({ code }) => BEYOND_KIND.has(code)));
  const best = [...inner].sort((a, b) => a.length - b.length)[0];
  return best ?? ofItsKind ?? null;
};

/**
 * Every complaint of a schema about a value, in our words: path, value, allowed range with unit, hint.
 *
 * @param root the value that was read, so that each complaint can quote what it found
 */
export const problemsOf = (
  schema: Schema,
  root: unknown,
  issues: readonly z.core.$ZodIssue[],
  base: readonly PropertyKey[] = [],
): readonly Problem[] =>
  issues.flatMap((issue): readonly Problem[] => {
    const path = [...base, ...issue.path];
    if (issue.code === "unrecognized_keys") {
      const known = keysAt(schema, path);
      return issue.keys.map((key) => {
        // A name that is known elsewhere may be wrong here: it is no better for being said again.
        const near = nearestName(
          key,
          known.filter((name) => name !== key),
        );
        return {
          path: pathText([...path, key]),
          value: valueAt(root, [...path, key]),
          allowed: "is not a key of a plan here",
          hint: near === null ? `known here: ${known.join(", ")}` : `did you mean "${near}"?`,
        };
      });
    }
    if (issue.code === "invalid_union") {
      const meant = meantBranch(issue);
      if (meant !== null) return problemsOf(schema, root, meant, path);
    }
    const notes = notesAt(schema, path);
    const own: unknown = issue.code === "custom" ? issue.params?.hint : undefined;
    const hint = typeof own === "string" ? own : notes.hint;
    return [
      {
        path: pathText(path),
        value: valueAt(root, path),
        allowed: allowedText(issue, notes),
        ...(hint === undefined ? {} : { hint }),
      },
    ];
  });
