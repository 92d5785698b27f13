import { readFile } from "node:fs/promises";

/** The package's version, from the manifest that lies beside `lib` and beside `dist` alike. */
export const version = async (): Promise<string> => {
  const manifest: unknown = JSON.parse(
    await readFile(new URL("../../package.json", import.meta.url), "utf8"),
  );
  return typeof manifest === "object" && manifest !== null && "version" in manifest
    ? String(manifest.version)
    : "unknown";
};
