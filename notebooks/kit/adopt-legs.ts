import type { NamedLeg } from "../../lib/stand/settings.ts";
import { el } from "./dom.ts";
import type { Setup } from "./plan/panel.ts";

/** Makes a set of legs the plan's own, so that every page and the field sheet go by it. */
export const adoptLegs = ({ put }: Setup, legs: readonly NamedLeg[]): HTMLElement => {
  return el(
    "div",
    { class: "buttons" },
    el(
      "button",
      {
        type: "button",
        onclick: () =>
          put(
            ["stand", "legs"],
            legs.map(({ name, legMm, owned }) => ({ name, lengthMm: legMm, ...(owned ? { owned } : {}) })),
          ),
      },
      legs.length === 1 ? "Put this leg into the plan" : "Put these legs into the plan",
    ),
  );
};
