import { switchedOn, type VerbWords, type Voice } from "./verb.ts";
import { type WholeFile, writeWholeFiles } from "./write-file.ts";

/** What a verb has found, in the forms it can be handed over in. */
export interface Delivery {
  /** What the answer is about, a line of its own above it, such as a plan's name; `null` for none. */
  readonly heading: string | null;
  /** Files asked for by options. */
  readonly files: readonly WholeFile[];
  /** The answer for people, line by line. */
  readonly lines: readonly string[];
  /** The whole answer for programs, made only when asked for with `--json`. */
  readonly json: () => unknown;
}

/** Options of every verb that delivers. */
export const DELIVERY_OPTIONS = { json: { type: "boolean" }, force: { type: "boolean" } } as const;

/** Writes the files that were asked for, then says the answer: as JSON to a program, in words to a person. */
export const deliver = async (
  { heading, files, lines, json }: Delivery,
  words: VerbWords,
  voice: Voice,
): Promise<void> => {
  await writeWholeFiles(files, { force: switchedOn(words, "force"), inputs: words.positionals });
  voice.say(
    switchedOn(words, "json")
      ? JSON.stringify(json())
      : [...(heading === null ? [] : [heading, ""]), ...lines].join("\n"),
  );
  for (const { path } of files) voice.remark(`wrote ${path}\n`);
};
