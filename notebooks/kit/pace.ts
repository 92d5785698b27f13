/** How long the hand waits: marks in the browser's own timeline, which tests and developer tools read. */

const PREFIX = "panel-season:";

/** Marks that something happened: a change of the plan, a chart on show. */
export const marked = (what: "change" | "chart"): void => {
  performance.mark(PREFIX + what);
};

/** Measures from the last change of the plan to the next picture that shows its effect. */
export const measureRepaint = (): void => {
  marked("chart");
  requestAnimationFrame(() => {
    if (performance.getEntriesByName(`${PREFIX}change`).length === 0) return;
    performance.measure(`${PREFIX}repaint`, `${PREFIX}change`);
  });
};
