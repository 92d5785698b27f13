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

/** What was last drawn under each name: it stands in, a little faded, until the new one is ready. */
const lastDrawn = new Map<string, SVGSVGElement>();

/** Longest that a chart in view waits for a quiet moment. */
const PATIENCE_MS = 300;

const whenQuiet = (then: () => void): void => {
  if (typeof requestIdleCallback === "function") requestIdleCallback(then, { timeout: PATIENCE_MS });
  else setTimeout(then, PATIENCE_MS / 3);
};

/**
 * Holds a chart. One that is handed over as a function is drawn in a quiet moment once its reader is near it, so that
 * a slider being moved waits for none but the charts that answer it; before printing, and for a file, it is drawn in any case.
 *
 * @param name of the chart, the same each time it is made anew
 */
export const chartFrame = (chart: Chart, name: string): ChartFrame => {
  const element = el("div", { class: "chart" });
  let drawn: SVGSVGElement | null = null;
  const show = (svg: SVGSVGElement): SVGSVGElement => {
    drawn = svg;
    lastDrawn.set(name, svg);
    letTipsGo(svg);
    element.classList.remove("waiting");
    element.style.minHeight = "";
    element.replaceChildren(svg);
    return svg;
  };
  if (typeof chart !== "function") {
    show(chart);
    return { element, chart: () => chart };
  }
  const draw = (): SVGSVGElement => drawn ?? show(chart());
  const before = lastDrawn.get(name);
  element.classList.add("waiting");
  if (before === undefined) element.style.minHeight = `${USUAL_HEIGHT_PX}px`;
  else element.append(before);
  const watcher = new IntersectionObserver(
    ([entry]) => {
      if (entry?.isIntersecting !== true) return;
      watcher.disconnect();
      // A newer one may have taken its place by then.
      whenQuiet(() => element.isConnected && draw());
    },
    { rootMargin: AHEAD },
  );
  watcher.observe(element);
  whileShown(element, "beforeprint", draw);
  return { element, chart: draw };
};
