/**
 * Complaints about what a user gave us. All wording about a value has one shape:
 * where it stands, what was found, what is allowed (with its unit), and what would mend it.
 */
export interface Problem {
  /** Where: a path into the plan (`site.longitudeDeg`, `stand.legs[1]`), or a file and row (`weather.csv row 17`). */
  readonly path: string;
  /** What was found there, as given: `undefined` when it is missing. Left out where the place itself is at fault, as a file. */
  readonly value?: unknown;
  /** What is allowed, with its unit: `must be -180 to 180 degrees`. */
  readonly allowed: string;
  /** What would mend it: `west is negative`. */
  readonly hint?: string;
}

const LONGEST_SHOWN_VALUE = 60;

/** JSON where there is any: what is nested without end, circular or no JSON at all is named by its kind. */
const writtenOut = (value: unknown): string => {
  try {
    return JSON.stringify(value) ?? String(value);
  } catch {
    return typeof value === "object" ? (Array.isArray(value) ? "[ ... ]" : "{ ... }") : String(value);
  }
};

/** Control characters and those that turn the writing round: what a hostile name would do to a terminal. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const UNSEEN = /[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g;

const visible = (text: string): string =>
  text.replace(UNSEEN, (each) => `\\u${each.charCodeAt(0).toString(16).padStart(4, "0")}`);

const shownValue = (value: unknown): string => {
  if (value === undefined) return "missing";
  const text = typeof value === "number" ? String(value) : writtenOut(value);
  return text.length > LONGEST_SHOWN_VALUE ? `${text.slice(0, LONGEST_SHOWN_VALUE)}...` : text;
};

/** One complaint as one line: `site.longitudeDeg 191.2: must be -180 to 180 degrees; west is negative`. */
export const problemLine = (problem: Problem): string => {
  const { path, value, allowed, hint } = problem;
  const found = "value" in problem ? ` ${shownValue(value)}` : "";
  return visible(`${path}${found}: ${allowed}${hint === undefined ? "" : `; ${hint}`}`);
};

/** Input that cannot be used. Carries every problem found, not only the first. */
export class PlanError extends Error {
  override readonly name = "PlanError";
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map(problemLine).join("\n"));
    this.problems = problems;
  }
}

/** A number that must lie in a range: `null` when it does, else the complaint. */
export const rangeProblem = (
  path: string,
  value: number,
  [least, most]: readonly [number, number],
  unit: string,
  hint?: string,
): Problem | null =>
  value >= least && value <= most
    ? null
    : {
        path,
        value,
        allowed: `must be ${least} to ${most} ${unit}`,
        ...(hint === undefined ? {} : { hint }),
      };
