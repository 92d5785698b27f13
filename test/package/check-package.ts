/**
 * `npm run check:package`: what someone who depends on the package will meet. Builds it, packs it, installs the tarball into
 * an empty project and uses it there: the README's example by import and (where Node can) by require, in a bundle for
 * browsers, with its types, and one function alone for its size. Needs the package registry.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";

const root = fileURLToPath(new URL("../..", import.meta.url));
const project = mkdtempSync(join(tmpdir(), "panel-season-consumer-"));
const LARGEST_LEG_BYTES = 2000;
const failures: string[] = [];

const run = (command: string, args: readonly string[], cwd: string): string =>
  execFileSync(command, [...args], { cwd, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });

const check = (what: string, works: () => string): void => {
  try {
    console.log(`ok    ${what}${((found) => (found === "" ? "" : `: ${found}`))(works())}`);
  } catch (error) {
    failures.push(what);
    const output =
      error instanceof Error && "stdout" in error
        ? `${error.stdout}${"stderr" in error ? error.stderr : ""}`
        : "";
    console.log(`FAIL  ${what}: ${error instanceof Error ? error.message : String(error)}\n${output}`);
  }
};

const readmeExample = (): string => {
  const found = /```ts\n([\s\S]*?)```/.exec(readFileSync(join(root, "README.md"), "utf8"))?.[1];
  if (found === undefined) throw new Error("the README has no ts example");
  return found;
};

const bundle = async (code: string): Promise<Uint8Array> => {
  const { outputFiles } = await build({
    stdin: { contents: code, resolveDir: project },
    bundle: true,
    minify: true,
    write: false,
    format: "esm",
    platform: "browser",
  });
  return outputFiles[0].contents;
};

/** Nothing may travel but what is on this list. */
const ALLOWED =
  /^(package\.json|README\.md|LICENSE|CHANGELOG\.md|dist\/[\w/.-]+\.(js|d\.ts)|data\/(plans|weather|climates)\/[\w-]+\.(json|csv))$/;

try {
  run("npm", ["run", "build"], root);
  const packed: unknown = JSON.parse(run("npm", ["pack", "--json", "--pack-destination", project], root));
  const [tarball] = Object.values(
    packed as Record<string, { filename: string; files: { path: string }[]; size: number }>,
  );
  check("the tarball holds only what is allowed", () => {
    const extra = tarball.files.map(({ path }) => path).filter((path) => !ALLOWED.test(path));
    if (extra.length > 0) throw new Error(extra.join(", "));
    return `${tarball.files.length} files, ${Math.round(tarball.size / 1000)} kB`;
  });
  writeFileSync(
    join(project, "package.json"),
    JSON.stringify({ name: "consumer", private: true, type: "module" }),
  );
  run("npm", ["install", "--no-audit", "--no-fund", `./${tarball.filename}`], project);

  const example = readmeExample();
  writeFileSync(join(project, "example.mjs"), example);
  check("the README's example, by import", () =>
    run("node", ["example.mjs"], project).trim().split("\n").join("; "),
  );
  writeFileSync(
    join(project, "example.cjs"),
    example.replace(/^import (\{[^}]*\}) from ("[^"]+");/m, "const $1 = require($2);"),
  );
  const requires = process.features as { readonly require_module?: boolean };
  if (requires.require_module === true) {
    check("the README's example, by require", () =>
      run("node", ["example.cjs"], project).trim().split("\n").join("; "),
    );
  } else console.log("--    this Node can't require ES modules");
  check("the command line", () =>
    run("npx", ["panel-season", "season", "--json", "--to", "2027-03-20"], project).length.toString(),
  );
  writeFileSync(
    join(project, "types.ts"),
    `${example}\nconst wrong: string = plan.site.latitudeDeg; // @ts-expect-error\n`.replace(
      /const wrong(.*) \/\/ @ts-expect-error/,
      "// @ts-expect-error\nexport const wrong$1",
    ),
  );
  check("its types", () =>
    run(
      join(root, "node_modules/.bin/tsc"),
      ["--noEmit", "--strict", "--module", "nodenext", "--target", "es2022", "types.ts"],
      project,
    ),
  );
  const whole = await bundle(example);
  check(
    "a bundle of the example for browsers",
    () => `${Math.round(whole.length / 1000)} kB, ${Math.round(gzipSync(whole).length / 1000)} kB gzipped`,
  );
  for (const door of ["panel-season", "panel-season/stand"]) {
    const leg = await bundle(`import { tiltOfLeg } from "${door}"; console.log(tiltOfLeg);`);
    check(`leg length to tilt alone, from ${door}`, () => {
      if (leg.length > LARGEST_LEG_BYTES)
        throw new Error(`${leg.length} bytes, at most ${LARGEST_LEG_BYTES}`);
      return `${leg.length} bytes`;
    });
  }
  check("publint", () => run("npx", ["publint", "--strict"], root).trim().split("\n").at(-1) ?? "");
  check("are the types wrong", () => {
    run("npx", ["attw", "--pack", ".", "--profile", "esm-only"], root);
    return "no problem";
  });
} finally {
  rmSync(project, { recursive: true, force: true });
}
console.log(failures.length === 0 ? "The package is sound." : `${failures.length} checks failed.`);
process.exitCode = failures.length === 0 ? 0 : 1;
