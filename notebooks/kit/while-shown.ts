/** Listeners of the whole page on behalf of elements that come and go: none outlives its element. */

interface Listener {
  readonly element: Element;
  readonly sinceMs: number;
  readonly then: (event: Event) => void;
}

/** A cell's new element is put on the page well within this time; one that is off it later is gone for good. */
const SETTLED_MS = 3000;

const listeners = new Map<string, Listener[]>();

const alive = ({ element, sinceMs }: Listener): boolean =>
  element.isConnected || performance.now() - sinceMs < SETTLED_MS;

/** Calls back at an event of the window for as long as an element is on the page. */
export const whileShown = (element: Element, eventName: string, then: (event: Event) => void): void => {
  const known = listeners.get(eventName);
  if (known === undefined) {
    addEventListener(eventName, (event) => {
      for (const listener of listeners.get(eventName) ?? []) {
        if (listener.element.isConnected) listener.then(event);
      }
    });
  }
  listeners.set(eventName, [...(known ?? []).filter(alive), { element, sinceMs: performance.now(), then }]);
};
