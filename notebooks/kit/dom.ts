type Child = Node | string | number | null | undefined | false;
type Properties = Readonly<Record<string, unknown>>;

const assign = (node: Element, name: string, value: unknown): void => {
  if (value === undefined || value === null || value === false) return;
  if (name.startsWith("on") && typeof value === "function") {
    node.addEventListener(name.slice(2), value as EventListener);
  } else if (value === true) {
    node.setAttribute(name, "");
  } else {
    node.setAttribute(name, String(value));
  }
};

/**
 * An HTML element with attributes and children. `onclick` and the like are listeners; text is always text.
 *
 * @example el("p", { class: "note" }, "Two ", el("em", {}, "legs"))
 */
export const el = <Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  properties: Properties = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Name] => {
  const node = document.createElement(name);
  for (const [key, value] of Object.entries(properties)) assign(node, key, value);
  node.append(
    ...children
      .filter(
        (child): child is Node | string | number => child !== null && child !== undefined && child !== false,
      )
      .map((child) => (typeof child === "number" ? String(child) : child)),
  );
  return node;
};

let lastId = 0;

/** An id that no other element of the page has. */
export const freshId = (what: string): string => {
  lastId += 1;
  return `${what}-${lastId}`;
};

/** An element that a cell can `view`: it has a value and says `input` when the value changes. */
export type ViewOf<Value> = HTMLElement & { value: Value };

/** Gives an element a value to view. */
export const viewOf = <Value>(element: HTMLElement, value: Value): ViewOf<Value> =>
  Object.assign(element, { value });

/** Says that the value of a viewed element has changed. */
export const saySo = (element: HTMLElement): void => {
  element.dispatchEvent(new Event("input", { bubbles: true }));
};
