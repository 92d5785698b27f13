import { el, freshId, saySo, type ViewOf, viewOf } from "./dom.ts";

/** What was picked last, by the picker's name, so that a pick outlives the plan it was made under. */
const picks = new Map<string, string | number>();

export interface ChoiceOptions<Value> {
  readonly label: string;
  readonly format: (choice: Value) => string;
  /** The choice before anything was picked; the first one where it is not among them. */
  readonly start: Value;
}

/** Picks one of some choices; what was picked stays picked while the choices are made anew. */
export const keptChoice = <Value extends string | number>(
  name: string,
  choices: readonly Value[],
  { label, format, start }: ChoiceOptions<Value>,
): ViewOf<Value> => {
  const id = freshId(name);
  const kept = choices.find((choice) => choice === picks.get(name));
  const first = kept ?? choices.find((choice) => choice === start) ?? choices[0];
  const select = el(
    "select",
    { id },
    ...choices.map((choice) => el("option", { value: choice, selected: choice === first }, format(choice))),
  );
  const picker = viewOf(el("div", { class: "field" }, el("label", { for: id }, label), select), first);
  // The list's own word would come before the value has changed.
  select.addEventListener("input", (event) => {
    event.stopPropagation();
    picker.value = choices[select.selectedIndex];
    picks.set(name, picker.value);
    saySo(picker);
  });
  return picker;
};
