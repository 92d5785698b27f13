/** How long the hand waits: marks in the browser's own timeline, which tests and developer tools read. */

const PREFIX = "panel-season:";

/** Marks that something happened: a change of the plan, a chart on show. */
export const marked = (what: "change" | "chart"): void => {
  performance.mark(PREFIX + what);
};

const afterThisFrame = (then: () => void): void => {
  // A message is handled after the frame being made now has been handed over to be shown.
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    then();
    port1.close();
  };
  port2.postMessage(null);
};

/** Measures from the last change of the plan to the next picture that shows its effect. */
export const measureRepaint = (): void => {
  marked("chart");
  afterThisFrame(() => {
    if (performance.getEntriesByName(`${PREFIX}change`).length === 0) return;
    performance.measure(`${PREFIX}repaint`, `${PREFIX}change`);
  });
};
