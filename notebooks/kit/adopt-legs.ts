import type { NamedLeg } from "../../lib/stand/settings.ts";
import { el } from "./dom.ts";
import type { Setup } from "./plan/panel.ts";

/** Makes a set of legs the plan's own, so that every page and the field sheet go by it; says so where it is. */
export const adoptLegs = ({ plan, put }: Setup, legs: readonly NamedLeg[]): HTMLElement => {
  const stated = legs.map(({ name, legMm, owned }) => ({
    name,
    lengthMm: legMm,
    ...(owned ? { owned } : {}),
  }));
  const own = plan.stand.legs.map((leg) => ("lengthMm" in leg ? leg.lengthMm : null));
  if (own.length === legs.length && own.every((lengthMm, index) => lengthMm === legs[index]?.legMm)) {
    return el("p", { role: "status" }, "The plan has these legs: every page and the field sheet go by them.");
  }
  return el(
    "div",
    { class: "buttons" },
    el(
      "button",
      { type: "button", onclick: () => put(["stand", "legs"], stated) },
      legs.length === 1 ? "Put this leg into the plan" : "Put these legs into the plan",
    ),
  );
};
