import { randomBytes } from "node:crypto";
import { link, open, rename, rm } from "node:fs/promises";
import { PlanError } from "../plan/problem.ts";

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

/**
 * Writes a whole file or nothing: to a temporary file beside it, flushed to disk, then put in place in one step.
 * Killed at any moment, either the old file stands or the new one.
 *
 * @param force whether a file that is there already may be replaced
 * @throws PlanError when it may not, or when it can't be written
 */
export const writeWholeFile = async (
  path: string,
  content: string | Uint8Array,
  { force }: { readonly force: boolean },
): Promise<void> => {
  const draft = `${path}.${randomBytes(6).toString("hex")}.tmp`;
  try {
    const file = await open(draft, "wx");
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await (force ? rename(draft, path) : putWhereFree(draft, path));
  } catch (cause) {
    const code = codeOf(cause);
    const reason = REASONS[code] ?? (cause instanceof Error ? cause.message : String(cause));
    throw new PlanError([
      {
        path,
        value: "file",
        allowed: `can't be written: ${reason}`,
        ...(code === "EEXIST" ? { hint: "--force replaces it" } : {}),
      },
    ]);
  } finally {
    await rm(draft, { force: true });
  }
};
