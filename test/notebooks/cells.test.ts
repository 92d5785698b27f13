import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { defaultGlobals } from "../../node_modules/@observablehq/notebook-kit/dist/src/javascript/globals.js";
import * as libraries from "../../notebooks/kit/build/libraries.ts";
import { NOTEBOOKS, notebookFiles } from "../../notebooks/kit/build/notebook-files.ts";
import { readNotebook } from "../../notebooks/kit/check/read-notebook.ts";

/** What the kit's own standard library gives a cell without an import, as far as it works without a network. */
const KIT_NAMES = [
  "display",
  "view",
  "width",
  "dark",
  "now",
  "Generators",
  "Promises",
  "FileAttachment",
  "Mutable",
];

const files = notebookFiles();

test("there are notebooks to check, and one of them is the season's", () => {
  expect(files).toContain("season.html");
});

describe.each(files)("%s", (file) => {
  const html = readFileSync(join(NOTEBOOKS, file), "utf8");
  const notebook = readNotebook(file, html);

  test("has a title and cells, each with an id of its own", () => {
    expect(notebook.title).not.toBe("Untitled");
    expect(notebook.cells.length).toBeGreaterThan(2);
    expect(notebook.writtenIds).toHaveLength(notebook.cells.length);
    expect(new Set(notebook.writtenIds).size).toBe(notebook.writtenIds.length);
  });

  test("defines each name once", () => {
    const names = notebook.cells.flatMap(({ transpiled }) => transpiled.outputs ?? []);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
  });

  test("uses no unknown name", () => {
    const known = new Set([
      ...KIT_NAMES,
      ...Object.keys(libraries),
      ...defaultGlobals,
      ...notebook.cells.flatMap(({ transpiled }) => transpiled.outputs ?? []),
    ]);
    const unknown = notebook.cells.flatMap(({ id, transpiled }) =>
      (transpiled.inputs ?? []).filter((name) => !known.has(name)).map((name) => `cell ${id}: ${name}`),
    );
    expect(unknown).toEqual([]);
  });

  test("names no address of another host that a page would load from", () => {
    const addresses = [
      ...html.matchAll(/(?:src|import|from|url\(|fetch\()\s*=?\s*["'(]?\s*(?:https?:)?\/\/[^\s"')]+/g),
    ];
    expect(addresses.map(([text]) => text)).toEqual([]);
    for (const { transpiled } of notebook.cells)
      expect(transpiled.body).not.toMatch(/cdn\.|esm\.sh|npm:|jsr:/);
  });

  test("imports and reads only files that are there", () => {
    const named = notebook.cells.flatMap(({ source, transpiled }) => [
      ...[...source.matchAll(/from\s+["'](\.[^"'?]+)/g)].map(([, path = ""]) => path),
      ...(transpiled.files ?? []),
    ]);
    expect(named.filter((path) => !existsSync(join(NOTEBOOKS, path)))).toEqual([]);
  });

  test("gives every chart a label, a heading and its numbers", () => {
    for (const { id, source } of notebook.cells) {
      for (const call of source.match(/Plot\.plot\(/g) ?? []) {
        expect(source, `cell ${id}: ${call}`).toMatch(/ariaLabel:/);
      }
      const charts = source.match(/\b[a-z]\w*Chart\(/g) ?? [];
      const figures = source.match(/\bfigure\(/g) ?? [];
      expect(figures.length, `cell ${id}: a figure() for each of ${charts}`).toBeGreaterThanOrEqual(
        charts.length,
      );
    }
  });
});
