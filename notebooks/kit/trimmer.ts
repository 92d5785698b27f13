import { trimWords } from "../../lib/report/index.ts";
import { type ReadFrom, type StandGeometry, tiltOfReading, trimOf } from "../../lib/stand/index.ts";
import { el, freshId } from "./dom.ts";

/** What was typed last, kept while the plan around it changes. */
const typed = { measured: "40", wanted: "35", from: "ground" as ReadFrom };

/** Two tilts in, the amount to saw off out; both are read from the same side, and the sentence says which. */
export const trimmer = (stand: StandGeometry): HTMLElement => {
  const said = el("p", { class: "trimmed", role: "status" });
  const field = (label: string, key: "measured" | "wanted"): HTMLElement => {
    const id = freshId(key);
    const input = el("input", {
      id,
      type: "text",
      inputmode: "decimal",
      autocomplete: "off",
      value: typed[key],
      oninput: () => {
        typed[key] = input.value;
        say();
      },
    });
    return el(
      "div",
      { class: "field" },
      el("label", { for: id }, label),
      el("div", { class: "controls" }, input, el("span", { class: "unit" }, "°")),
    );
  };
  const id = freshId("read-from");
  const from = el(
    "select",
    {
      id,
      onchange: () => {
        typed.from = from.value === "post" ? "post" : "ground";
        say();
      },
    },
    el("option", { value: "ground", selected: typed.from === "ground" }, "the ground: 0° flat, 90° upright"),
    el("option", { value: "post", selected: typed.from === "post" }, "a post: 90° flat, 0° upright"),
  );
  const degrees = (text: string): number =>
    text.trim() === "" ? Number.NaN : Number(text.trim().replace(",", "."));
  const say = (): void => {
    const [measured, wanted] = [degrees(typed.measured), degrees(typed.wanted)];
    const tilt = (deg: number): number => tiltOfReading({ deg, from: typed.from });
    said.textContent =
      Number.isNaN(measured) || Number.isNaN(wanted)
        ? "Type both angles in degrees."
        : trimWords(trimOf(stand, tilt(measured), tilt(wanted)));
  };
  say();
  return el(
    "div",
    { class: "trimmer" },
    el("div", { class: "field" }, el("label", { for: id }, "Angles are read from"), from),
    field("Measured with the leg as it is", "measured"),
    field("Wanted", "wanted"),
    said,
  );
};
