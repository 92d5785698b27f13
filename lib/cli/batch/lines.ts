import { StringDecoder } from "node:string_decoder";
import { PlanError } from "../../units/problem.ts";

/** One line of the input, counted from 1. `text` is `null` when the line was too long to be a plan. */
export interface NumberedLine {
  readonly number: number;
  readonly text: string | null;
}

/** A line this many times too long is taken for a file that has none, such as a device that never ends. */
const HOPELESS = 64;

/**
 * The lines of a stream of UTF-8 text, one at a time. Never holds more than one line and one chunk: what is longer
 * than `longest` characters is passed over and told as `null`.
 *
 * @throws PlanError when no line break comes for 64 times as long
 */
export async function* linesOf(
  chunks: AsyncIterable<Uint8Array | string>,
  longest: number,
): AsyncGenerator<NumberedLine> {
  const decoder = new StringDecoder("utf8");
  let number = 1;
  let kept = "";
  let tooLong = false;
  let passedOver = 0;
  // A byte order mark may stand at the head of the file.
  const line = (): NumberedLine => ({
    number,
    text: tooLong ? null : (number === 1 ? kept.replace(/^\ufeff/, "") : kept).replace(/\r$/, ""),
  });
  for await (const chunk of chunks) {
    const text = typeof chunk === "string" ? chunk : decoder.write(Buffer.from(chunk));
    let from = 0;
    for (let at = text.indexOf("\n"); at !== -1; at = text.indexOf("\n", from)) {
      if (!tooLong) kept += text.slice(from, at);
      if (kept.length > longest) tooLong = true;
      yield line();
      number += 1;
      kept = "";
      tooLong = false;
      from = at + 1;
    }
    if (!tooLong) kept += text.slice(from);
    if (kept.length > longest) tooLong = true;
    if (tooLong) kept = "";
    passedOver = tooLong ? passedOver + text.length - from : 0;
    if (passedOver > longest * HOPELESS) {
      throw new PlanError([
        {
          path: `line ${number}`,
          value: undefined,
          allowed: `must end: ${Math.round((longest * HOPELESS) / 1e6)} MB went by without a line break`,
          hint: "one plan a line, as text; is it the file you meant?",
        },
      ]);
    }
  }
  if (kept !== "" || tooLong) yield line();
}
