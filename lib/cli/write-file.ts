import { randomBytes } from "node:crypto";
import { access, link, open, rename, rm } from "node:fs/promises";
import { PlanError, type Problem } from "../units/problem.ts";

/** A file to be written: its path and all of what shall stand in it. */
export interface WholeFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

const REASONS: Readonly<Record<string, string>> = {
  EEXIST: "it is there already",
  ENOENT: "its folder does not exist",
  EACCES: "this user may not write there",
  EROFS: "the disk is read-only",
  ENOSPC: "the disk is full",
  EDQUOT: "the disk quota is used up",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of the path is a file",
};

const codeOf = (cause: unknown): string =>
  cause instanceof Error && "code" in cause ? String(cause.code) : "";

const problemOf = (path: string, cause: unknown): Problem => {
  const code = codeOf(cause);
  const reason = REASONS[code] ?? (cause instanceof Error ? cause.message : String(cause));
  const hint = code === "EEXIST" ? { hint: "--force replaces it" } : {};
  return { path, allowed: `can't be written: ${reason}`, ...hint };
};

const isThere = async (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

/** Writes a draft beside the place it is for, and has it on disk before it is put there. */
const writeDraft = async (draft: string, content: string | Uint8Array): Promise<void> => {
  const file = await open(draft, "wx");
  try {
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
 * @param force whether files that are there already may be replaced
 * @throws PlanError naming every file that is in the way or can't be written
 */
export const writeWholeFiles = async (
  files: readonly WholeFile[],
  { force }: { readonly force: boolean },
): Promise<void> => {
  const drafts = files.map(({ path }) => `${path}.${randomBytes(6).toString("hex")}.tmp`);
  try {
    await forEachFile(files, async ({ path, content }, index) => {
      if (!force && (await isThere(path))) throw Object.assign(new Error(path), { code: "EEXIST" });
      await writeDraft(drafts[index], content);
    });
    await forEachFile(files, ({ path }, index) =>
      force ? rename(drafts[index], path) : putWhereFree(drafts[index], path),
    );
  } finally {
    await Promise.all(drafts.map((draft) => rm(draft, { force: true })));
  }
};
