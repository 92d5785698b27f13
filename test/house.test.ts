import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, test } from "vitest";

/** The rooms in the order in which light becomes an answer; each imports only from those before it, and itself. */
const ROOMS = ["plan", "sun", "sky", "plane", "panel", "stand", "circuit", "season", "report", "cli"];

const lib = fileURLToPath(new URL("../lib", import.meta.url));

interface SourceFile {
  readonly path: string;
  readonly room: string;
  readonly imports: readonly string[];
}

const sources: readonly SourceFile[] = readdirSync(lib, { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".ts"))
  .map((path) => ({
    path: path.split(sep).join("/"),
    room: path.includes(sep) ? path.slice(0, path.indexOf(sep)) : path.replace(/\.ts$/, ""),
    imports: ts
      .preProcessFile(readFileSync(join(lib, path), "utf8"))
      .importedFiles.map((file) => file.fileName),
  }));

const roomOf = (from: string, specifier: string): string => {
  const target = relative(lib, join(lib, dirname(from), specifier)).split(sep);
  return target.length > 1 ? target[0] : target[0].replace(/\.ts$/, "");
};

describe("the house", () => {
  test("has a file in every room", () => {
    expect(new Set(sources.map(({ room }) => room))).toEqual(new Set([...ROOMS, "index"]));
  });

  test("lets light flow one way: no room imports from one below it", () => {
    const rank = new Map([
      ...ROOMS.map((room, index) => [room, index] as const),
      ["index", ROOMS.length] as const,
    ]);
    const upstream = sources.flatMap(({ path, room, imports }) =>
      imports
        .filter((specifier) => specifier.startsWith("."))
        .filter(
          (specifier) =>
            (rank.get(roomOf(path, specifier)) ?? Number.POSITIVE_INFINITY) > (rank.get(room) ?? -1),
        )
        .map((specifier) => `${path} imports ${specifier}`),
    );
    expect(upstream).toEqual([]);
  });

  test("is pure outside the command line: no Node modules", () => {
    const impure = sources
      .filter(({ room }) => room !== "cli")
      .flatMap(({ path, imports }) =>
        imports
          .filter((specifier) => specifier.startsWith("node:"))
          .map((specifier) => `${path} imports ${specifier}`),
      );
    expect(impure).toEqual([]);
  });

  test("has no circle of imports", () => {
    const graph = new Map(
      sources.map(({ path, imports }) => [
        path,
        imports
          .filter((specifier) => specifier.startsWith("."))
          .map((specifier) =>
            relative(lib, join(lib, dirname(path), specifier))
              .split(sep)
              .join("/"),
          ),
      ]),
    );
    const done = new Set<string>();
    const circles: string[] = [];
    const walk = (path: string, trail: readonly string[]): void => {
      if (trail.includes(path)) circles.push([...trail.slice(trail.indexOf(path)), path].join(" > "));
      if (done.has(path) || trail.includes(path)) return;
      for (const next of graph.get(path) ?? []) walk(next, [...trail, path]);
      done.add(path);
    };
    for (const path of graph.keys()) walk(path, []);
    expect(circles).toEqual([]);
  });
});
