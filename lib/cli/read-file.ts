import { open, stat } from "node:fs/promises";
import { PlanError } from "../units/problem.ts";
import { reasonOf } from "./file-reasons.ts";

/** Plans are a few hundred lines; anything larger is another file taken by mistake. */
export const LARGEST_PLAN_BYTES = 1_000_000;

/** A year of one-minute weather is about 30 MB; ten of them still fit. */
export const LARGEST_WEATHER_BYTES = 400_000_000;

const CHUNK_BYTES = 1 << 20;

const refuse = (path: string, allowed: string, hint?: string): never => {
  throw new PlanError([{ path, allowed, ...(hint === undefined ? {} : { hint }) }]);
};

/**
 * Makes sure that a file can be opened and is no folder, before work on it begins.
 *
 * @throws PlanError when it can't
 */
export const checkReadable = async (path: string): Promise<void> => {
  try {
    const file = await open(path, "r");
    try {
      if ((await file.stat()).isDirectory()) throw Object.assign(new Error(path), { code: "EISDIR" });
    } finally {
      await file.close();
    }
  } catch (cause) {
    refuse(path, `can't be read: ${reasonOf(cause)}`);
  }
};

/**
 * Makes sure that a file named inside a plan is a plain one: a pipe that nobody writes to would be waited for without end.
 *
 * @throws PlanError when it is something else, or is not there
 */
export const checkPlainFile = async (path: string): Promise<void> => {
  try {
    if (!(await stat(path)).isFile()) refuse(path, "must be a plain file", "no pipe, device or folder");
  } catch (cause) {
    if (cause instanceof PlanError) throw cause;
    refuse(path, `can't be read: ${reasonOf(cause)}`);
  }
};

/**
 * Reads a text file of bounded size. A pipe or a device that never ends is stopped at the bound, so memory is bounded too.
 *
 * @throws PlanError when the file can't be read, is larger than the bound, or is not UTF-8 text
 */
export const readTextFile = async (path: string, largestBytes: number): Promise<string> => {
  const parts: Uint8Array[] = [];
  let bytes = 0;
  try {
    const file = await open(path, "r");
    try {
      while (bytes <= largestBytes) {
        const { bytesRead, buffer } = await file.read(new Uint8Array(CHUNK_BYTES), 0, CHUNK_BYTES);
        if (bytesRead === 0) break;
        bytes += bytesRead;
        parts.push(buffer.subarray(0, bytesRead));
      }
    } finally {
      await file.close();
    }
  } catch (cause) {
    refuse(path, `can't be read: ${reasonOf(cause)}`);
  }
  if (bytes > largestBytes) {
    refuse(path, `must be at most ${Math.round(largestBytes / 1e6)} MB`, "is it the file you meant?");
  }
  const all = Buffer.concat(parts);
  if (all.includes(0)) refuse(path, "must be text", "it holds zero bytes, as a program or a picture does");
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(all);
  } catch {
    return refuse(path, "must be UTF-8 text", "save it again as UTF-8");
  }
};
