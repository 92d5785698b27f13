import { type FileHandle, open } from "node:fs/promises";
import { PlanError } from "../../units/problem.ts";
import { linesOf } from "./lines.ts";

/** A line of results already on disk. */
export interface DoneLine {
  readonly line: number;
  readonly sha256: string;
}

/** Results as they grow, in a file that is given its own name only when it is whole. */
export interface ResultsFile {
  /** Lines that an earlier run left, in order. */
  readonly done: readonly DoneLine[];
  /** Adds one result. It is on disk, whole, once `settle` has returned. */
  readonly add: (line: string) => Promise<void>;
  readonly settle: () => Promise<void>;
  /** Flushes and closes the file under its growing name: to be resumed, or to be given its name. */
  readonly close: () => Promise<void>;
}

/** Results are a few hundred bytes for each setting; a longer line is no result. */
export const LONGEST_RESULT = 10_000_000;

/** The growing file's name. */
export const growingName = (path: string): string => `${path}.part`;

const parsed = (text: string | null): unknown => {
  try {
    return JSON.parse(text ?? "");
  } catch {
    return null;
  }
};

const isDone = (value: unknown): value is DoneLine =>
  typeof value === "object" &&
  value !== null &&
  "line" in value &&
  typeof value.line === "number" &&
  "sha256" in value &&
  typeof value.sha256 === "string";

interface WholeLines {
  readonly done: readonly DoneLine[];
  /** Bytes that the whole lines take up. */
  readonly bytes: number;
}

/** The whole lines of a growing file: a kill may have cut the last one short, or just before its line break. */
const wholeLines = async (file: FileHandle): Promise<WholeLines> => {
  const { size } = await file.stat();
  const done: DoneLine[] = [];
  let bytes = 0;
  for await (const { text } of linesOf(
    file.createReadStream({ start: 0, autoClose: false }),
    LONGEST_RESULT,
  )) {
    const value = parsed(text);
    const end = bytes + Buffer.byteLength(text ?? "") + 1;
    if (!isDone(value) || end > size) break;
    done.push({ line: value.line, sha256: value.sha256 });
    bytes = end;
  }
  return { done, bytes };
};

/**
 * Opens a results file, from the start or where an earlier run was cut off.
 *
 * @throws PlanError when there is something to resume and that was not asked for
 */
export const openResults = async (
  path: string,
  { resume }: { readonly resume: boolean },
): Promise<ResultsFile> => {
  const growing = growingName(path);
  let file: FileHandle;
  try {
    file = await open(growing, resume ? "a+" : "ax+");
  } catch (cause) {
    const taken = cause instanceof Error && "code" in cause && cause.code === "EEXIST";
    throw new PlanError([
      {
        path: growing,
        allowed: taken ? "is left from a run that did not finish" : `can't be written: ${String(cause)}`,
        ...(taken ? { hint: "--resume goes on with it; delete it to start afresh" } : {}),
      },
    ]);
  }
  const { done, bytes } = await wholeLines(file);
  await file.truncate(bytes);
  return {
    done,
    add: async (line) => {
      await file.appendFile(`${line}\n`);
    },
    settle: () => file.datasync(),
    close: async () => {
      await file.sync();
      await file.close();
    },
  };
};
