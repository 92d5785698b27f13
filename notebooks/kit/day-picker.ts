import type { SeasonDay } from "../../lib/sun/columns.ts";
import { dateWords } from "../../lib/units/dates.ts";
import { el, freshId, saySo, type ViewOf, viewOf } from "./dom.ts";

/** The day that was picked last stays picked while the season around it changes. */
let pickedDate: string | null = null;

/** Picks one day of a season; its value is the day's index. */
export const dayPicker = (days: readonly SeasonDay[]): ViewOf<number> => {
  const found = days.findIndex(({ date }) => date === pickedDate);
  const start = found >= 0 ? found : Math.floor(days.length / 2);
  const id = freshId("day");
  const output = el("output", { for: id });
  const range = el("input", {
    id,
    type: "range",
    min: 0,
    max: days.length - 1,
    step: 1,
    value: start,
    oninput: () => pick(range.valueAsNumber),
  });
  const picker = viewOf(
    el("div", { class: "field day-picker" }, el("label", { for: id }, "Day"), range, output),
    start,
  );
  const show = (index: number): void => {
    const day = days[index];
    pickedDate = day?.date ?? null;
    output.textContent =
      day === undefined ? "" : `${dateWords(day.date)}, sun up ${day.sunHours.toFixed(1)} h`;
    range.setAttribute("aria-valuetext", output.textContent);
  };
  const pick = (index: number): void => {
    picker.value = index;
    show(index);
    saySo(picker);
  };
  // The slider's own word would come before the value has changed.
  range.addEventListener("input", (event) => event.stopPropagation());
  show(start);
  return picker;
};
