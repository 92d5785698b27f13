import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

test("leg length to tilt, with its refusals, travels alone in under 2 kB", async () => {
  const { outputFiles } = await build({
    stdin: {
      contents: 'import { tiltOfLeg } from "./lib/index.ts"; console.log(tiltOfLeg);',
      resolveDir: root,
    },
    bundle: true,
    minify: true,
    write: false,
    format: "esm",
    platform: "browser",
  });
  expect(outputFiles[0].contents.length).toBeLessThan(2000);
});
