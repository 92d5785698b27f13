import { type FileHandle, open, readFile, rm } from "node:fs/promises";
import { PlanError } from "../../units/problem.ts";
import { codeOf, reasonOf } from "../file-reasons.ts";
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

/** How a result of ours begins: what a kill may have left of the last line. */
const BEGINNING = '{"line":';

const isCutOff = (text: string | null): boolean =>
  text !== null && (text.startsWith(BEGINNING) || BEGINNING.startsWith(text));

/**
 * The whole lines of a growing file: a kill may have cut the last one short, or just before its line break.
 *
 * @throws PlanError where anything else stands in it: it is not ours, or was changed
 */
const wholeLines = async (path: string, file: FileHandle): Promise<WholeLines> => {
  const { size } = await file.stat();
  const done: DoneLine[] = [];
  let bytes = 0;
  for await (const { number, text } of linesOf(
    file.createReadStream({ start: 0, autoClose: false }),
    LONGEST_RESULT,
  )) {
    const value = parsed(text);
    const end = bytes + Buffer.byteLength(text ?? "") + 1;
    const isLast = end > size;
    if (isDone(value) && !isLast) {
      done.push({ line: value.line, sha256: value.sha256 });
      bytes = end;
      continue;
    }
    if (isLast && isCutOff(text)) break;
    throw new PlanError([
      {
        path: `${path}, line ${number}`,
        allowed: "holds no result of an unfinished run",
        hint: "it is another file, or was changed: it stays as it is; move it away to start afresh",
      },
    ]);
  }
  return { done, bytes };
};

const refuse = (path: string, allowed: string, hint?: string): PlanError =>
  new PlanError([{ path, allowed, ...(hint === undefined ? {} : { hint }) }]);

const openGrowing = async (growing: string, resume: boolean): Promise<FileHandle> => {
  try {
    return await open(growing, resume ? "a+" : "ax+");
  } catch (cause) {
    throw codeOf(cause) === "EEXIST"
      ? refuse(
          growing,
          "is left from a run that did not finish",
          "--resume goes on with it; delete it to start afresh",
        )
      : refuse(growing, `can't be written: ${reasonOf(cause)}`);
  }
};

const isRunning = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (cause) {
    return codeOf(cause) === "EPERM";
  }
};

/**
 * Takes the lock of a growing file: two runs on one output would double its lines. A lock whose run has died is taken over.
 *
 * @returns what gives it back
 */
const lockOf = async (growing: string): Promise<() => Promise<void>> => {
  const path = `${growing}.lock`;
  for (let tries = 0; tries < 2; tries += 1) {
    try {
      const file = await open(path, "wx");
      await file.writeFile(String(process.pid));
      await file.close();
      return () => rm(path, { force: true });
    } catch (cause) {
      if (codeOf(cause) !== "EEXIST") throw refuse(growing, `can't be written: ${reasonOf(cause)}`);
      const holder = Number(await readFile(path, "utf8").catch(() => ""));
      if (!Number.isInteger(holder) || holder <= 0 || isRunning(holder)) break;
      await rm(path, { force: true });
    }
  }
  throw refuse(
    growing,
    "is being written by another run",
    `wait until that has ended; if none is running, delete ${path}`,
  );
};

/**
 * Opens a results file, from the start or where an earlier run was cut off.
 *
 * @throws PlanError when there is something to resume and that was not asked for, when another run is at it, or when what
 * is there is no unfinished run
 */
export const openResults = async (
  path: string,
  { resume }: { readonly resume: boolean },
): Promise<ResultsFile> => {
  const growing = growingName(path);
  const giveBack = await lockOf(growing);
  try {
    const file = await openGrowing(growing, resume);
    const { done, bytes } = await wholeLines(growing, file).catch(async (cause: unknown) => {
      await file.close();
      throw cause;
    });
    await file.truncate(bytes);
    return {
      done,
      add: async (line) => {
        await file.appendFile(`${line}\n`);
      },
      settle: () => file.datasync(),
      close: async () => {
        try {
          await file.sync();
        } finally {
          await file.close();
          await giveBack();
        }
      },
    };
  } catch (cause) {
    await giveBack();
    throw cause;
  }
};
