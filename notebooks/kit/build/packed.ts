import { readFile } from "node:fs/promises";
import { gzipSync } from "node:zlib";
import type { Plugin } from "vite";
import { turned } from "./turned.ts";

const QUERY = "?packed";

/**
 * Lets a page carry a text file, such as a year of weather, at a quarter of its size, a CSV turned on its side (`turned`): importing `file.csv?packed`
 * gives its gzip as base64, which `kit/weather/unpack.ts` opens again with the browser's own decompression.
 */
export const packed = (): Plugin => ({
  name: "panel-season:packed",
  enforce: "pre",
  async load(id) {
    if (!id.endsWith(QUERY)) return null;
    const file = id.slice(0, -QUERY.length);
    const bytes = await readFile(file);
    const text = file.endsWith(".csv") ? turned(bytes.toString("utf8")) : bytes;
    return `export default ${JSON.stringify(gzipSync(text, { level: 9 }).toString("base64"))};`;
  },
});
