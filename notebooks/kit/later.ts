import { el } from "./dom.ts";
import { whileShown } from "./while-shown.ts";

/** Made a little before it comes into view. */
const AHEAD = "300px";

/** Made in any case once nothing has changed for this long: a reader may jump, and a page may be copied whole. */
const CALM_MS = 700;

/** How high each part was when it was last seen, so that the page keeps still while it is made anew. */
const heights = new Map<string, number>();

/**
 * A part below the fold, made when its reader comes near it, prints, or rests: moving a slider then costs only what can
 * be seen.
 *
 * @param name tells the part from the others of the page
 */
export const later = (name: string, make: () => HTMLElement): HTMLElement => {
  const holder = el("div", { class: "later" });
  holder.style.minHeight = `${heights.get(name) ?? 200}px`;
  let made = false;
  const show = (): void => {
    if (made) return;
    made = true;
    watcher.disconnect();
    holder.append(make());
    holder.style.minHeight = "";
    requestAnimationFrame(() => {
      if (holder.isConnected) heights.set(name, holder.offsetHeight);
    });
  };
  const watcher = new IntersectionObserver(
    ([entry]) => {
      if (entry?.isIntersecting === true) show();
    },
    { rootMargin: AHEAD },
  );
  watcher.observe(holder);
  setTimeout(() => {
    if (holder.isConnected) show();
  }, CALM_MS);
  whileShown(holder, "beforeprint", show);
  return holder;
};
