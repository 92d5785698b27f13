import type { ParseArgsConfig } from "node:util";

/** What a verb is given to speak through, so that tests can listen. */
export interface Voice {
  /** The answer: standard output. */
  readonly say: (text: string) => void;
  /** Remarks, progress and complaints: standard error. */
  readonly remark: (text: string) => void;
  /** Whether a person watches standard error, so that a progress line is of use. */
  readonly watched: boolean;
}

type Options = NonNullable<ParseArgsConfig["options"]>;

/** The words after a verb, taken apart. */
export interface VerbWords {
  readonly values: Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>;
  readonly positionals: readonly string[];
}

/** One verb of the command line. */
export interface Verb {
  readonly name: string;
  /** What it answers, in one line. */
  readonly says: string;
  /** The whole help text, after the name. */
  readonly help: string;
  readonly options: Options;
  /** Most positional words it takes. */
  readonly mostWords: number;
  /** Answers, or throws: `PlanError` for what the user gave, `UsageError` for how it was called. */
  readonly run: (words: VerbWords, voice: Voice) => Promise<void>;
}

/** The command line was called in a way it does not know. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}

/** The text of an option, or `undefined` when it was not given. */
export const textOption = ({ values }: VerbWords, name: string): string | undefined => {
  const value = values[name];
  return typeof value === "string" ? value : undefined;
};

/** Whether a switch was given. */
export const switchedOn = ({ values }: VerbWords, name: string): boolean => values[name] === true;

/** A number option within a closed range, or `undefined` when it was not given. */
export const numberOption = (
  words: VerbWords,
  name: string,
  [least, most]: readonly [number, number],
  unit: string,
): number | undefined => {
  const text = textOption(words, name);
  if (text === undefined) return undefined;
  const value = text.trim() === "" ? Number.NaN : Number(text);
  if (!(value >= least && value <= most)) {
    throw new UsageError(`--${name} ${text}: must be ${least} to ${most} ${unit}`);
  }
  return value;
};

/** The same for things that are counted: a fraction is refused. */
export const wholeOption = (
  words: VerbWords,
  name: string,
  [least, most]: readonly [number, number],
  unit: string,
): number | undefined => {
  const value = numberOption(words, name, [least, most], unit);
  if (value !== undefined && !Number.isInteger(value)) {
    throw new UsageError(`--${name} ${value}: must be a whole number, ${least} to ${most} ${unit}`);
  }
  return value;
};
