import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, test } from "vitest";

/** The rooms in the order in which light becomes an answer; each imports only from those before it, and itself. */
const ROOMS = [
  "units",
  "plan",
  "sun",
  "sky",
  "plane",
  "panel",
  "stand",
  "circuit",
  "season",
  "report",
  "cli",
];

/** Rooms that have parts, each part in the order in which one builds on the other; what stands in the room itself comes first. */
const PARTS: Readonly<Record<string, readonly string[]>> = {
  season: ["light", "legs", "aiming", "battery", "sheet"],
  report: ["words", "table", "chart", "paper"],
  "sky/climate": ["table", "world", "place", "days"],
  "sky/weather": ["read", "lay"],
};

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

  test("lets parts of a room build one way, and has no part that is not listed", () => {
    const astray = sources.flatMap(({ path, imports }) =>
      Object.entries(PARTS).flatMap(([room, parts]) => {
        const partOf = (file: string): number | null => {
          if (!file.startsWith(`${room}/`)) return null;
          const inside = file.slice(room.length + 1);
          if (!inside.includes("/")) return inside === "index.ts" ? parts.length : -1;
          const rank = parts.indexOf(inside.slice(0, inside.indexOf("/")));
          return rank < 0 ? Number.NaN : rank;
        };
        const from = partOf(path);
        if (from === null) return [];
        return imports
          .filter((specifier) => specifier.startsWith("."))
          .map((specifier) =>
            relative(lib, join(lib, dirname(path), specifier))
              .split(sep)
              .join("/"),
          )
          .filter((target) => {
            const to = partOf(target);
            return to !== null && !(to <= from);
          })
          .map((target) => `${path} imports ${target}`);
      }),
    );
    expect(astray).toEqual([]);
  });

  test("has doors for those outside only: within lib a thing is imported from the file that states it", () => {
    const throughDoors = sources
      .filter(({ path }) => !path.endsWith("index.ts"))
      .flatMap(({ path, imports }) =>
        imports
          .filter((specifier) => specifier.startsWith(".") && specifier.endsWith("index.ts"))
          .map((specifier) => `${path} imports ${specifier}`),
      );
    expect(throughDoors).toEqual([]);
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
