/** What the browser keeps between visits. Where it may keep nothing (private windows, some file pages), nothing is kept. */

const PREFIX = "panel-season/";

export const kept = (name: string): string | null => {
  try {
    return localStorage.getItem(PREFIX + name);
  } catch {
    return null;
  }
};

export const keep = (name: string, text: string): boolean => {
  try {
    localStorage.setItem(PREFIX + name, text);
    return true;
  } catch {
    return false;
  }
};

/** Calls back when another tab of the same notebooks keeps something under that name. */
export const whenKeptElsewhere = (name: string, then: (text: string) => void): void => {
  addEventListener("storage", ({ key, newValue }) => {
    if (key === PREFIX + name && newValue !== null) then(newValue);
  });
};
