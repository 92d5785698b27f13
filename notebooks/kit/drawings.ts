import { el } from "./dom.ts";

/** Side by side from this width on; a drawing never gets narrower than this. */
const LEAST_PX = 256;
const GAP_PX = 16;

/** How wide each of some drawings may be in a column of a width, px. */
export const drawingWidth = (width: number, count: number): number => {
  const perRow = Math.max(1, Math.min(count, Math.floor((width + GAP_PX) / (LEAST_PX + GAP_PX))));
  return Math.floor((width - GAP_PX * (perRow - 1)) / perRow);
};

/** Drawings that are looked at together, each with its own scale bar. */
export const drawings = (all: readonly SVGSVGElement[]): HTMLElement =>
  el("div", { class: "drawings" }, ...all.map((drawing) => el("div", { class: "drawing" }, drawing)));
