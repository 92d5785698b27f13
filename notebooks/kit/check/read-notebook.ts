import { deserialize, type TranspiledJavaScript, transpile } from "@observablehq/notebook-kit";
import { parseHTML } from "linkedom";

/** One cell of a notebook as its file states it, and what the kit makes of it. */
export interface NotebookCell {
  readonly id: number;
  readonly mode: string;
  readonly source: string;
  readonly transpiled: TranspiledJavaScript;
  /** Line of the notebook's file on which the cell's code starts, from 1. */
  readonly firstLine: number;
}

export interface ReadNotebook {
  readonly file: string;
  readonly title: string;
  readonly cells: readonly NotebookCell[];
  /** Ids as written, with those that come twice or are missing. */
  readonly writtenIds: readonly string[];
}

/** The kit asks for a parser of pages; linkedom is one. */
const parser = {
  parseFromString: (text: string) => parseHTML(text).document,
} as unknown as DOMParser;

const SCRIPT = /<script\b[^>]*?\bid="(\d+)"[^>]*>/g;

/** Reads a notebook's file with the kit's own reader, and takes every cell apart with the kit's own compiler. */
export const readNotebook = (file: string, html: string): ReadNotebook => {
  const { title, cells } = deserialize(html, { parser });
  const starts = new Map<number, number>();
  const writtenIds: string[] = [];
  for (const tag of html.matchAll(SCRIPT)) {
    const [whole, id = ""] = tag;
    writtenIds.push(id);
    starts.set(Number(id), html.slice(0, tag.index + whole.length).split("\n").length + 1);
  }
  return {
    file,
    title,
    writtenIds,
    cells: cells.map((cell) => ({
      id: cell.id,
      mode: cell.mode,
      source: cell.value,
      transpiled: transpile(cell),
      firstLine: starts.get(cell.id) ?? 1,
    })),
  };
};

/** Cells in an order in which each comes after those it needs; a circle is left for the compiler to complain about. */
export const inDependencyOrder = (cells: readonly NotebookCell[]): readonly NotebookCell[] => {
  const definedBy = new Map(
    cells.flatMap((cell) => (cell.transpiled.outputs ?? []).map((name) => [name, cell])),
  );
  const ordered: NotebookCell[] = [];
  const entered = new Set<NotebookCell>();
  const visit = (cell: NotebookCell): void => {
    if (entered.has(cell)) return;
    entered.add(cell);
    for (const name of cell.transpiled.inputs ?? []) {
      const before = definedBy.get(name);
      if (before !== undefined) visit(before);
    }
    ordered.push(cell);
  };
  for (const cell of cells) visit(cell);
  return ordered;
};
