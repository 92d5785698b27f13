import { el } from "./dom.ts";

const GAP_PX = 28;
/** Two pictures stand side by side from this width on, else one below the other. */
const SIDE_BY_SIDE_PX = 720;

/** Two pictures that are read together. */
export const pair = (first: HTMLElement, second: HTMLElement): HTMLElement =>
  el("div", { class: "pair" }, first, second);

/** The width of each of two paired pictures, px, in a column of a width. */
export const pairWidth = (width: number): number =>
  width < SIDE_BY_SIDE_PX ? width : Math.floor((width - GAP_PX) / 2);
