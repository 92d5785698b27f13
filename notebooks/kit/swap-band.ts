import { settingStyles } from "../../lib/report/chart/setting-styles.ts";
import { tiltShort } from "../../lib/report/words/words.ts";
import { swapRows } from "../../lib/season/legs/swap-rows.ts";
import type { SwapsAnswer } from "../../lib/season/legs/swaps-answer.ts";
import { dateWords } from "../../lib/units/dates.ts";
import { DAY_MS } from "../../lib/units/time.ts";
import { el } from "./dom.ts";

/** The swap calendar at a glance: a stretch of the season for each leg in use, as long as it is used. */
export const swapBand = (answer: SwapsAnswer): HTMLElement => {
  const rows = swapRows(answer);
  const styles = settingStyles(answer.settings.map((setting) => ({ setting })));
  const end = Date.parse(answer.days[answer.days.length - 1]?.date ?? "") + DAY_MS;
  return el(
    "ol",
    { class: "swap-band", "aria-label": "Which leg when" },
    ...rows.map(({ date, to }, index) => {
      const next = rows[index + 1];
      const days = ((next === undefined ? end : Date.parse(next.date)) - Date.parse(date)) / DAY_MS;
      const style = styles.find(({ name }) => name === to.name);
      return el(
        "li",
        { style: `flex-grow:${days};--leg:${style?.colour ?? "currentColor"}` },
        el("strong", {}, `${to.name} ${tiltShort(to.tiltDeg)}`),
        el("span", {}, `from ${dateWords(date).replace(/ \d{4}$/, "")}`),
      );
    }),
  );
};
