import { readdir, readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { DataSidecar } from "../report/words/credits.ts";

const FOLDERS = ["climates", "weather"] as const;

/** The sidecars of all data that travels with the package, by folder and name. */
export const shippedSidecars = async (): Promise<readonly DataSidecar[]> => {
  const all: DataSidecar[] = [];
  for (const folder of FOLDERS) {
    const at = fileURLToPath(new URL(`../../data/${folder}/`, import.meta.url));
    for (const name of (await readdir(at)).sort()) {
      if (name.endsWith(".json")) all.push(JSON.parse(await readFile(`${at}${name}`, "utf8")) as DataSidecar);
    }
  }
  return all;
};
