import { parseArgs } from "node:util";
import { nearestName } from "../plan/nearest-name.ts";
import { PlanError, problemLine } from "../units/problem.ts";
import { reasonOf } from "./file-reasons.ts";
import { generalHelp, verbHelp } from "./help.ts";
import { UsageError, type Verb, type VerbWords, type Voice } from "./verb.ts";
import { VERBS } from "./verbs.ts";
import { version } from "./version.ts";

/** What a run ended as: answered; the input can't be used; called in a way that is not known. */
export const EXIT = { answered: 0, badInput: 1, badCall: 2 } as const;

const HELP_WORDS: ReadonlySet<string> = new Set(["help", "--help", "-h"]);

const OPTION = /^--[a-z][a-z-]*$/;
const NEGATIVE = /^-[\d.]/;

/** `--near -43.2,147.3`: what begins with a minus sign and a digit is the option's value, not an option of its own. */
const withNegativeValues = (given: readonly string[]): readonly string[] =>
  given.reduce<string[]>((words, word) => {
    const before = words.at(-1);
    if (before !== undefined && OPTION.test(before) && NEGATIVE.test(word)) {
      words[words.length - 1] = `${before}=${word}`;
    } else words.push(word);
    return words;
  }, []);

const wordsFor = (verb: Verb, given: readonly string[]): VerbWords => {
  try {
    const { values, positionals } = parseArgs({
      args: [...withNegativeValues(given)],
      options: { ...verb.options, help: { type: "boolean", short: "h" } },
      allowPositionals: true,
      strict: true,
    });
    if (positionals.length > verb.mostWords) {
      throw new UsageError(`"${positionals[verb.mostWords]}" is one word too many for ${verb.name}`);
    }
    return { values, positionals };
  } catch (error) {
    if (error instanceof UsageError) throw error;
    const said = error instanceof Error ? error.message : String(error);
    const unknown = /Unknown option '--?([^']+)'/.exec(said)?.[1];
    if (unknown === undefined) throw new UsageError(said);
    const near = nearestName(unknown, Object.keys(verb.options));
    throw new UsageError(
      `--${unknown} is not an option of ${verb.name}${near === null ? "" : `; did you mean --${near}?`}`,
    );
  }
};

const findVerb = (name: string): Verb => {
  const verb = VERBS.find((candidate) => candidate.name === name);
  if (verb !== undefined) return verb;
  const near = nearestName(
    name,
    VERBS.map((candidate) => candidate.name),
  );
  throw new UsageError(`"${name}" is not a verb here${near === null ? "" : `; did you mean "${near}"?`}`);
};

const answer = async (given: readonly string[], voice: Voice): Promise<void> => {
  const [name, ...rest] = given;
  if (name === undefined || HELP_WORDS.has(name)) {
    voice.say(rest[0] === undefined ? generalHelp(VERBS) : verbHelp(findVerb(rest[0])));
    return;
  }
  if (name === "--version") {
    voice.say(await version());
    return;
  }
  const verb = findVerb(name);
  const words = wordsFor(verb, rest);
  if (words.values.help === true) voice.say(verbHelp(verb));
  else await verb.run(words, voice);
};

/** What a file system said, in a sentence; `null` for what is no file system's. */
const fileReason = (error: unknown): string | null => {
  if (!(error instanceof Error && "code" in error && "syscall" in error)) return null;
  const where = "path" in error && typeof error.path === "string" ? error.path : "the output";
  return `${where}: can't be written or read: ${reasonOf(error)}`;
};

/**
 * Runs one command line.
 *
 * @param given the words after the program's name
 * @returns the exit code: 0 answered, 1 the input can't be used (every problem was told), 2 the command itself is wrong
 */
export const runCli = async (given: readonly string[], voice: Voice): Promise<number> => {
  try {
    await answer(given, voice);
    return EXIT.answered;
  } catch (error) {
    if (error instanceof PlanError) {
      const count = error.problems.length;
      voice.remark(`${count === 1 ? "One problem" : `${count} problems`}:\n`);
      for (const problem of error.problems) voice.remark(`  ${problemLine(problem)}\n`);
      return EXIT.badInput;
    }
    if (error instanceof UsageError) {
      voice.remark(`${error.message}\nTry: panel-season help\n`);
      return EXIT.badCall;
    }
    const reason = fileReason(error);
    if (reason === null) throw error;
    voice.remark(`${reason}\n`);
    return EXIT.badInput;
  }
};
