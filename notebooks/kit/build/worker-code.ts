import { gzipSync } from "node:zlib";
import { build, type Rolldown } from "vite";

const QUERY = "?worker-code";

/** The code of a worker, bundled into one classic script. */
const bundled = async (entry: string): Promise<string> => {
  const result = await build({
    configFile: false,
    logLevel: "warn",
    build: {
      write: false,
      rolldownOptions: { input: entry, output: { format: "iife", codeSplitting: false } },
    },
  });
  const [output] = (Array.isArray(result) ? result : [result]) as readonly Rolldown.RolldownOutput[];
  const code = output?.output[0];
  if (code?.type !== "chunk") throw new Error(`${entry}: the bundler gave no code for the worker`);
  return code.code;
};

/**
 * Lets a page carry its worker: importing `worker.ts?worker-code` gives the worker's bundled code as gzip in base64.
 * A single file opened from disk has no other file to load a worker from, and would else hold most of the library twice.
 */
export const workerCode = () => ({
  name: "panel-season:worker-code",
  enforce: "pre" as const,
  async load(id: string): Promise<string | null> {
    if (!id.endsWith(QUERY)) return null;
    const code = await bundled(id.slice(0, -QUERY.length));
    return `export default ${JSON.stringify(gzipSync(code, { level: 9 }).toString("base64"))};`;
  },
});
