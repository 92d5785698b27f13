import { el, freshId, saySo, type ViewOf, viewOf } from "./dom.ts";

/**
 * Picks one of several things by their names; its value is the thing itself, the first to begin with.
 *
 * @param choices at least one
 * @throws RangeError when there is none
 */
export const choice = <Thing>(
  label: string,
  choices: readonly Thing[],
  nameOf: (thing: Thing) => string,
): ViewOf<Thing> => {
  const [first] = choices;
  if (first === undefined) throw new RangeError("choice: expected at least one choice, received none");
  const id = freshId("choice");
  const select = el(
    "select",
    {
      id,
      onchange: () => {
        picker.value = choices[select.selectedIndex] ?? first;
        saySo(picker);
      },
    },
    ...choices.map((thing) => el("option", {}, nameOf(thing))),
  );
  const picker = viewOf(el("div", { class: "field choice" }, el("label", { for: id }, label), select), first);
  // The select's own word would come before the value has changed.
  select.addEventListener("input", (event) => event.stopPropagation());
  return picker;
};
