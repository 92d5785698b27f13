import { createReadStream } from "node:fs";
import { open, rename, rm } from "node:fs/promises";
import { batchCsvHeader, batchCsvRows } from "./batch-table.ts";
import { linesOf } from "./lines.ts";
import type { BatchResult } from "./result.ts";
import { LONGEST_RESULT } from "./results-file.ts";

/** Gives finished results their name, in one step. */
export const nameResults = (growing: string, path: string): Promise<void> => rename(growing, path);

/**
 * Turns finished results into a CSV table under the name asked for. Killed on the way, the results still stand under
 * their growing name, to be resumed.
 */
export const nameResultsAsCsv = async (growing: string, path: string): Promise<void> => {
  const draft = `${path}.tmp`;
  const file = await open(draft, "w");
  try {
    await file.appendFile(batchCsvHeader());
    for await (const { text } of linesOf(createReadStream(growing), LONGEST_RESULT)) {
      const result: BatchResult = JSON.parse(text ?? "");
      await file.appendFile(batchCsvRows(result));
    }
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(draft, path);
  await rm(growing);
};
