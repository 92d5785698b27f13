import { el } from "./dom.ts";
import { whileShown } from "./while-shown.ts";

/** A chart, or the way to draw one that stands below the fold and takes its time. */
export type Chart = SVGSVGElement | (() => SVGSVGElement);

/** Where a chart stands or will stand, and how to get at it. */
export interface ChartFrame {
  readonly element: HTMLElement;
  /** The chart, drawn now if it has not been. */
  readonly chart: () => SVGSVGElement;
}

/** Drawn a little before it comes into view. */
const AHEAD = "250px";
/** Kept free for a chart that has not been drawn yet. */
const USUAL_HEIGHT_PX = 280;

/** Plot drops a tip when a mouse leaves, and lets a pinned one go when the mouse presses beside it. */
const dropTip = (chart: SVGSVGElement): void => {
  for (const name of ["pointerleave", "pointerdown"]) {
    chart.dispatchEvent(new PointerEvent(name, { pointerType: "mouse" }));
  }
};

/** A tip under a finger goes away with a tap anywhere else, or with Escape. */
const letTipsGo = (chart: SVGSVGElement): void => {
  whileShown(chart, "pointerdown", ({ target }) => {
    if (!(target instanceof Node && chart.contains(target))) dropTip(chart);
  });
  whileShown(chart, "keydown", (event) => {
    if (event instanceof KeyboardEvent && event.key === "Escape") dropTip(chart);
  });
};

/**
 * Holds a chart. One that is handed over as a function is drawn when its reader comes near it, so that moving a
 * slider redraws only what can be seen; before printing, and for a file, it is drawn in any case.
 */
export const chartFrame = (chart: Chart): ChartFrame => {
  const element = el("div", { class: "chart" });
  let drawn: SVGSVGElement | null = null;
  const show = (svg: SVGSVGElement): SVGSVGElement => {
    drawn = svg;
    letTipsGo(svg);
    element.style.minHeight = "";
    element.replaceChildren(svg);
    return svg;
  };
  if (typeof chart !== "function") {
    show(chart);
    return { element, chart: () => chart };
  }
  const draw = (): SVGSVGElement => drawn ?? show(chart());
  element.style.minHeight = `${USUAL_HEIGHT_PX}px`;
  const watcher = new IntersectionObserver(
    ([entry]) => {
      if (entry?.isIntersecting !== true) return;
      watcher.disconnect();
      draw();
    },
    { rootMargin: AHEAD },
  );
  watcher.observe(element);
  whileShown(element, "beforeprint", draw);
  return { element, chart: draw };
};
