import { createReadStream } from "node:fs";
import { availableParallelism } from "node:os";
import { dirname, resolve } from "node:path";
import { Tinypool } from "tinypool";
import { PlanError } from "../../units/problem.ts";
import { PLAN_OPTIONS, type PlanChanges, planChanges } from "../plan-options.ts";
import { progressCount } from "../progress.ts";
import { checkReadable, LARGEST_PLAN_BYTES } from "../read-file.ts";
import {
  switchedOn,
  textOption,
  UsageError,
  type Verb,
  type VerbWords,
  type Voice,
  wholeOption,
} from "../verb.ts";
import { checkWritable } from "../write-file.ts";
import { fingerprint, type LineTask } from "./answer-line.ts";
import { batchCsvHeader, batchCsvRows } from "./batch-table.ts";
import { linesOf, type NumberedLine } from "./lines.ts";
import { nameResults, nameResultsAsCsv } from "./name-results.ts";
import type { BatchResult } from "./result.ts";
import { type DoneLine, growingName, openResults } from "./results-file.ts";
import { inShard, type Shard, shardOf, WHOLE } from "./shard.ts";
import { workerEntry } from "./worker-entry.ts";

const help = `
  panel-season batch [FILE] [options]

FILE holds one plan a line (NDJSON); without it, standard input is read. Every plan is answered with its season's totals,
in the order of the input, the same whatever the number of workers. A plan that can't be used is told with its line
number and passed over.

  --out FILE       results go there (and to FILE.part while they grow); left out, to standard output
  --csv            one CSV table instead of NDJSON
  --from DATE      first day instead of every plan's own
  --to DATE        last day instead of every plan's own
  --climate WHERE  cloud from a climate instead of every plan's own sky: "nearest", a place's name,
                   or a kind of climate such as "hot desert"
  --step MINUTES   1, 2, 3, 5, 6, 10, 15, 20, 30 or 60 instead of every plan's own
  --workers N      how many plans are worked on at once [one for each core]
  --shard I/N      only every N-th line, starting at the I-th: N machines share a file
  --resume         go on with a FILE.part that an earlier run left
  --force          replace FILE when it is there already

Under a climate each setting has, beside the expected total, p10, p50 and p90 of seasons drawn from it, and the
places it was made from; under another sky these are empty.

Files that plans name are relative to FILE's folder, or to this one when plans come from standard input.

Examples
  panel-season batch plans.ndjson --out totals.ndjson
  panel-season batch plans.ndjson --climate nearest --out expected.csv --csv
  panel-season batch plans.ndjson --out totals.csv --csv --resume
  panel-season batch plans.ndjson --shard 3/16 --out part-3.ndjson
`;

/** Plans in the air for each worker: one at work, one waiting, so that no worker idles and memory stays bounded. */
const IN_THE_AIR = 2;

/** Where finished results go. */
interface Sink {
  readonly done: readonly DoneLine[];
  readonly add: (result: BatchResult) => Promise<void>;
  readonly finish: () => Promise<void>;
  readonly abandon: () => Promise<void>;
}

const spokenSink = (voice: Voice, csv: boolean): Sink => {
  if (csv) voice.say(batchCsvHeader().trimEnd());
  return {
    done: [],
    add: async (result) => voice.say(csv ? batchCsvRows(result).trimEnd() : JSON.stringify(result)),
    finish: async () => {},
    abandon: async () => {},
  };
};

/** Results are flushed to disk after this many, so that a kill costs little work. */
const SETTLE_EVERY = 32;

const fileSink = async (path: string, words: VerbWords): Promise<Sink> => {
  await checkWritable(path, { force: switchedOn(words, "force") });
  const results = await openResults(path, { resume: switchedOn(words, "resume") });
  let added = 0;
  return {
    done: results.done,
    add: async (result) => {
      await results.add(JSON.stringify(result));
      added += 1;
      if (added % SETTLE_EVERY === 0) await results.settle();
    },
    finish: async () => {
      await results.close();
      await (switchedOn(words, "csv") ? nameResultsAsCsv : nameResults)(growingName(path), path);
    },
    abandon: results.close,
  };
};

/** The lines still to be done, after checking that those already done are the same ones. */
async function* linesToDo(
  lines: AsyncIterable<NumberedLine>,
  shard: Shard,
  done: readonly DoneLine[],
  changes: PlanChanges,
): AsyncGenerator<NumberedLine> {
  let seen = 0;
  for await (const line of lines) {
    if (!inShard(line.number, shard) || line.text?.trim() === "") continue;
    const before = done[seen];
    seen += 1;
    if (before === undefined) {
      yield line;
    } else if (before.line !== line.number || before.sha256 !== fingerprint(line.text, changes)) {
      throw new PlanError([
        {
          path: `line ${line.number}`,
          allowed: "must be the line that the unfinished run answered",
          hint: "the input, the shard or an option has changed since: delete the .part file to start afresh",
        },
      ]);
    }
  }
  if (seen < done.length) {
    throw new PlanError([
      {
        path: "input",
        allowed: `must hold the ${done.length} lines that the unfinished run answered; it has ${seen}`,
        hint: "it is shorter than it was: take the whole input, or delete the .part file to start afresh",
      },
    ]);
  }
}

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const path = words.positionals[0];
  const out = textOption(words, "out");
  if (out === undefined && switchedOn(words, "resume")) throw new UsageError("--resume needs --out FILE");
  const shardText = textOption(words, "shard");
  const shard = shardText === undefined ? WHOLE : shardOf(shardText);
  const workers = wholeOption(words, "workers", [1, 256], "workers") ?? availableParallelism();
  const changes = planChanges(words);
  const folder = path === undefined ? process.cwd() : dirname(resolve(path));
  if (path !== undefined) await checkReadable(path);

  const sink = out === undefined ? spokenSink(voice, switchedOn(words, "csv")) : await fileSink(out, words);
  const pool = new Tinypool({ filename: workerEntry(), minThreads: workers, maxThreads: workers });
  const progress = progressCount("plans", voice);
  const inTheAir: Promise<BatchResult>[] = [];
  let answered = sink.done.length;
  let refused = 0;

  const landOldest = async (): Promise<void> => {
    const result = await inTheAir.shift();
    if (result === undefined) return;
    await sink.add(result);
    answered += 1;
    if ("problems" in result) {
      refused += 1;
      for (const problem of result.problems) voice.remark(`line ${result.line}: ${problem}\n`);
    }
    progress.at(answered);
  };

  try {
    const input = linesOf(path === undefined ? process.stdin : createReadStream(path), LARGEST_PLAN_BYTES);
    for await (const { number, text } of linesToDo(input, shard, sink.done, changes)) {
      const task: LineTask = { number, text, changes, folder };
      inTheAir.push(pool.run(task));
      if (inTheAir.length >= workers * IN_THE_AIR) await landOldest();
    }
    while (inTheAir.length > 0) await landOldest();
    await sink.finish();
  } catch (error) {
    await Promise.allSettled(inTheAir);
    await sink.abandon();
    throw error;
  } finally {
    progress.end();
    await pool.destroy();
  }
  voice.remark(`${answered} plans, ${refused} of them refused${out === undefined ? "" : `; wrote ${out}`}\n`);
};

export const batchVerb: Verb = {
  name: "batch",
  says: "season totals of many plans, one a line, on all cores",
  help,
  options: {
    ...PLAN_OPTIONS,
    out: { type: "string" },
    csv: { type: "boolean" },
    workers: { type: "string" },
    shard: { type: "string" },
    resume: { type: "boolean" },
    force: { type: "boolean" },
  },
  mostWords: 1,
  run,
};
