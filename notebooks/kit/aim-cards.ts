import type { AimCardLine } from "../../lib/report/words/aim-card.ts";
import { tiltWords } from "../../lib/stand/index.ts";
import { el } from "./dom.ts";

/** The day's aims as cards to follow outdoors: which leg, which way, when, and how to find the bearing. */
export const aimCards = (lines: readonly AimCardLine[]): HTMLElement =>
  el(
    "ol",
    { class: "aim-cards" },
    ...lines.map(({ setting, when, compass, byShadow, bySun }) =>
      el(
        "li",
        {},
        el(
          "p",
          {},
          el(
            "strong",
            {},
            setting.legMm === null
              ? "Lying flat"
              : `${setting.name}, facing ${Math.round(setting.bearingDeg)}°`,
          ),
          `, set ${/^\d/.test(when) ? `at ${when}` : when}. ${setting.legMm === null ? "" : `${tiltWords(setting.tiltDeg)}.`}`,
        ),
        ...(setting.legMm === null
          ? []
          : [compass, byShadow, bySun].flatMap((words) =>
              words === null ? [] : [el("p", { class: "count" }, words)],
            )),
      ),
    ),
  );
