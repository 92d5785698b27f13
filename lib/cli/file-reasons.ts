/** What a file system answers, in words. */
const REASONS: Readonly<Record<string, string>> = {
  EEXIST: "it is there already",
  ENOENT: "there is no such file or folder",
  EACCES: "this user may not",
  EPERM: "this user may not",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of the path is a file",
  ELOOP: "its links lead in a circle",
  ENAMETOOLONG: "the name is too long",
  EROFS: "the disk is read-only",
  ENOSPC: "the disk is full",
  EDQUOT: "the disk quota is used up",
  EFBIG: "the file grew too large for the disk",
  EIO: "the disk does not answer",
};

/** The code of a file system's error; empty for any other. */
export const codeOf = (cause: unknown): string =>
  cause instanceof Error && "code" in cause ? String(cause.code) : "";

/** Why a file could not be read or written. */
export const reasonOf = (cause: unknown): string =>
  REASONS[codeOf(cause)] ?? (cause instanceof Error ? cause.message : String(cause));
