/**
 * The libraries a cell may use without importing them, served from this machine.
 * Stands in for the kit's own list, which fetches each of them from another host when a page opens.
 */
export const d3 = () => import("d3");
export const htl = () => import("htl");
export const html = () => import("htl").then(({ html }) => html);
export const svg = () => import("htl").then(({ svg }) => svg);
export const Inputs = () => import("./inputs.ts");
export const Plot = () => import("@observablehq/plot");
export const md = () => import("observable:runtime/stdlib/md.js").then(({ md }) => md);
