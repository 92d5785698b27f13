import { randomBytes } from "node:crypto";
import { link, lstat, open, realpath, rename, rm } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { PlanError, type Problem } from "../units/problem.ts";
import { codeOf, reasonOf } from "./file-reasons.ts";

/** A file to be written: its path and all of what shall stand in it. */
export interface WholeFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

const problemOf = (path: string, cause: unknown): Problem => {
  if (cause instanceof PlanError) return cause.problems[0] ?? { path, allowed: "can't be written" };
  const code = codeOf(cause);
  const hint = code === "EEXIST" ? { hint: "--force replaces it" } : {};
  const reason = code === "ENOENT" ? "its folder does not exist" : reasonOf(cause);
  return { path, allowed: `can't be written: ${reason}`, ...hint };
};

/** What stands under a name before anything is written there. */
interface Standing {
  /** Where a link leads, else the path itself: what is really written. */
  readonly target: string;
  /** Permissions of the file that is there; `null` where there is none. */
  readonly mode: number | null;
}

const cannot = (path: string, allowed: string, hint?: string): PlanError =>
  new PlanError([{ path, allowed, ...(hint === undefined ? {} : { hint }) }]);

/**
 * Looks at what stands under a name: nothing, or a plain file, or a link to one. A link is followed, so that what it leads to is
 * replaced and the link stays.
 *
 * @throws PlanError for a folder, a device, a pipe, a link that leads nowhere
 */
const lookAt = async (path: string): Promise<Standing> => {
  const own = await lstat(path).catch((cause: unknown) => {
    if (codeOf(cause) === "ENOENT") return null;
    throw cause;
  });
  if (own === null) return { target: path, mode: null };
  if (own.isSymbolicLink()) {
    const target = await realpath(path).catch(() => null);
    if (target === null) throw cannot(path, "is a link that leads nowhere", "take the link away first");
    return lookAt(target);
  }
  if (own.isDirectory()) throw cannot(path, "can't be written: it is a folder", "name a file in it");
  if (!own.isFile()) throw cannot(path, "is no plain file", "a pipe or a device is never replaced");
  return { target: path, mode: own.mode & 0o7777 };
};

/** Whether a file may be written: before the work that its content takes. */
export const checkWritable = async (path: string, { force }: { readonly force: boolean }): Promise<void> => {
  const problem = await lookAt(path).then(
    ({ mode }) =>
      mode !== null && !force ? problemOf(path, Object.assign(new Error(path), { code: "EEXIST" })) : null,
    (cause: unknown) => problemOf(path, cause),
  );
  if (problem !== null) throw new PlanError([problem]);
};

/** The same file named twice, under whatever names: one would be lost. */
const namedTwice = async (
  files: readonly WholeFile[],
  inputs: readonly string[],
): Promise<readonly Problem[]> => {
  const placeOf = async (path: string): Promise<string> =>
    realpath(path).catch(async () =>
      join(await realpath(dirname(path)).catch(() => resolve(dirname(path))), basename(path)),
    );
  const read = await Promise.all(inputs.map(placeOf));
  const seen = new Set<string>();
  const problems: Problem[] = [];
  for (const { path } of files) {
    const place = await placeOf(path);
    if (read.includes(place))
      problems.push({
        path,
        allowed: "is what the answer is made from: it is never written over",
        hint: "name another file",
      });
    else if (seen.has(place))
      problems.push({ path, allowed: "is asked for twice", hint: "each file needs a name of its own" });
    seen.add(place);
  }
  return problems;
};

/** Writes a draft beside the place it is for, and has it on disk before it is put there. */
const writeDraft = async (
  draft: string,
  content: string | Uint8Array,
  mode: number | null,
): Promise<void> => {
  const file = await open(draft, "wx");
  try {
    if (mode !== null) await file.chmod(mode);
    await file.writeFile(content);
    await file.sync();
  } finally {
    await file.close();
  }
};

/** What file systems without hard links (memory cards, some network folders) answer. */
const WITHOUT_LINKS: ReadonlySet<string> = new Set(["EPERM", "ENOTSUP", "ENOSYS", "EOPNOTSUPP"]);

/** Puts a draft under a name that must be free. */
const putWhereFree = async (draft: string, path: string): Promise<void> => {
  try {
    // A hard link fails when the name is taken, even by a file made a moment ago; a rename would replace it.
    await link(draft, path);
  } catch (cause) {
    if (!WITHOUT_LINKS.has(codeOf(cause))) throw cause;
    await (await open(path, "wx")).close();
    await rename(draft, path);
  }
};

/** Does the same to every file, and afterwards complains about all that failed. */
const forEachFile = async (
  files: readonly WholeFile[],
  act: (file: WholeFile, index: number) => Promise<void>,
): Promise<void> => {
  const outcomes = await Promise.allSettled(files.map(act));
  const problems = outcomes.flatMap((outcome, index) =>
    outcome.status === "rejected" ? [problemOf(files[index].path, outcome.reason)] : [],
  );
  if (problems.length > 0) throw new PlanError(problems);
};

/**
 * Writes whole files or none: each to a draft beside its place, flushed to disk, and only when every draft stands are
 * they put in place, each in one step. Killed at any moment, under every name stands either the old file or the new one.
 *
 * A file that is there keeps its permissions; a link is followed. Where one file can't be put in place, those put before it are taken
 * back: new ones away, old ones as they were.
 *
 * @param force whether files that are there already may be replaced
 * @param inputs files that the answer is made from, which are never written over
 * @throws PlanError naming every file that is in the way or can't be written
 */
export const writeWholeFiles = async (
  files: readonly WholeFile[],
  { force, inputs = [] }: { readonly force: boolean; readonly inputs?: readonly string[] },
): Promise<void> => {
  const twice = await namedTwice(files, inputs);
  if (twice.length > 0) throw new PlanError(twice);
  const marks = files.map(() => randomBytes(6).toString("hex"));
  const standing: Standing[] = files.map(({ path }) => ({ target: path, mode: null }));
  const draftOf = (index: number): string => join(dirname(standing[index].target), `.${marks[index]}.tmp`);
  const putBefore: number[] = [];
  const asideOf = (index: number): string => join(dirname(standing[index].target), `.${marks[index]}.old`);
  try {
    await forEachFile(files, async ({ path, content }, index) => {
      standing[index] = await lookAt(path);
      const { mode } = standing[index];
      if (!force && mode !== null) throw Object.assign(new Error(path), { code: "EEXIST" });
      await writeDraft(draftOf(index), content, mode);
    });
    try {
      for (const [index, { path }] of files.entries()) {
        const { target, mode } = standing[index];
        try {
          if (mode === null) await putWhereFree(draftOf(index), target);
          else {
            // The old file keeps a second name until all stand, so that it can be had back.
            await link(target, asideOf(index)).catch(() => undefined);
            await rename(draftOf(index), target);
          }
        } catch (cause) {
          throw new PlanError([problemOf(path, cause)]);
        }
        putBefore.push(index);
      }
    } catch (error) {
      for (const index of putBefore) {
        const { target, mode } = standing[index];
        await (mode === null
          ? rm(target, { force: true })
          : rename(asideOf(index), target).catch(() => undefined));
      }
      throw error;
    }
  } finally {
    await Promise.all(
      files.flatMap((_, index) => [rm(draftOf(index), { force: true }), rm(asideOf(index), { force: true })]),
    );
  }
};
