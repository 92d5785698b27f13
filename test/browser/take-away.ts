import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { buildTakeAway } from "../../notebooks/kit/build/bundle.ts";

/** One notebook, built as its reader gets it: a single file, opened from disk. */
export interface TakeAway {
  readonly path: string;
  readonly url: string;
  readonly remove: () => Promise<void>;
}

/** Builds a notebook's take-away file into a folder of its own. */
export const builtTakeAway = async (file: string): Promise<TakeAway> => {
  const folder = await mkdtemp(join(tmpdir(), "panel-season-"));
  await buildTakeAway(folder, file);
  const path = join(folder, file);
  return {
    path,
    url: pathToFileURL(path).href,
    remove: () => rm(folder, { recursive: true, force: true }),
  };
};
