import { el, freshId, saySo, type ViewOf, viewOf } from "./dom.ts";

/** What was picked last, by the picker's name, so that a pick outlives the plan it was made under. */
const picks = new Map<string, unknown>();

export interface ChoiceOptions<Value> {
  readonly label: string;
  readonly format: (choice: Value) => string;
  /** The choice before anything was picked [the first]. */
  readonly start?: Value;
  /** Whether it only asks for more work to be done, which is nothing to print [false]. */
  readonly asks?: boolean;
}

/**
 * Picks one of some choices; what was picked stays picked while the choices are made anew and it is still among them.
 *
 * @param name tells this pick from the others of the page
 * @param choices at least one
 * @throws RangeError when there is none
 */
export const choice = <Value>(
  name: string,
  choices: readonly Value[],
  { label, format, start, asks = false }: ChoiceOptions<Value>,
): ViewOf<Value> => {
  const [head] = choices;
  if (head === undefined) throw new RangeError("choice: expected at least one choice, received none");
  const id = freshId(name);
  const first =
    choices.find((each) => each === picks.get(name)) ?? choices.find((each) => each === start) ?? head;
  const select = el(
    "select",
    { id },
    ...choices.map((each) => el("option", { selected: each === first }, format(each))),
  );
  const picker = viewOf(
    el(
      "div",
      { class: asks ? "field choice asks" : "field choice" },
      el("label", { for: id }, label),
      select,
    ),
    first,
  );
  // The list's own word would come before the value has changed.
  select.addEventListener("input", (event) => {
    event.stopPropagation();
    picker.value = choices[select.selectedIndex] ?? first;
    picks.set(name, picker.value);
    saySo(picker);
  });
  return picker;
};
