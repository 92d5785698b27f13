import { writtenCoordinates } from "../../../lib/units/coordinates.ts";
import { el, freshId } from "../dom.ts";
import type { Field } from "./field.ts";
import type { Row, RowContext } from "./field-row.ts";
import { valueAt } from "./path.ts";

/** A browser that does not answer by then is asked no longer. */
const LONGEST_WAIT_MS = 20_000;
/** Digits kept of a position the browser gives: 0.0001 degrees are 11 m. */
const DECIMALS = 4;

const HOW = "Write it like 57.4778, -4.2247 or 57°30'N 4°13'W.";

const rounded = (degrees: number): number => Number(degrees.toFixed(DECIMALS));

/** Latitude and longitude in one field, in any usual writing, or from the browser when it is asked by a tap. */
export const fieldCoordinates = (
  field: Extract<Field, { readonly kind: "coordinates" }>,
  { store, base }: RowContext,
): Row => {
  const id = freshId("plan");
  const path = [...base, ...field.path];
  const said = el("p", { class: "help", id: `${id}-said`, role: "status" });
  const placed = (): { readonly latitudeDeg: number; readonly longitudeDeg: number } | null => {
    const [latitudeDeg, longitudeDeg] = ["latitudeDeg", "longitudeDeg"].map((key) =>
      valueAt(store.given, [...path, key]),
    );
    return typeof latitudeDeg === "number" && typeof longitudeDeg === "number"
      ? { latitudeDeg, longitudeDeg }
      : null;
  };
  const put = (place: object): void => {
    const before = valueAt(store.given, path);
    store.set(path, { ...(typeof before === "object" ? before : {}), ...place }, field.along);
  };
  const read = (): void => {
    const place = writtenCoordinates(input.value);
    said.textContent = place === null && input.value.trim() !== "" ? `Not read as a place. ${HOW}` : "";
    if (place === null) return;
    put(place);
    show();
  };
  const input = el("input", {
    id,
    type: "text",
    autocomplete: "off",
    class: "wide",
    "aria-describedby": said.id,
    onchange: read,
  });
  const show = (): void => {
    const place = placed();
    input.value = place === null ? "" : `${place.latitudeDeg}, ${place.longitudeDeg}`;
  };
  const found = ({ coords }: GeolocationPosition): void => {
    said.textContent = `Found to within ${Math.ceil(coords.accuracy).toLocaleString("en")} m.`;
    put({ latitudeDeg: rounded(coords.latitude), longitudeDeg: rounded(coords.longitude) });
    show();
  };
  const failed = ({ code, PERMISSION_DENIED }: GeolocationPositionError): void => {
    said.textContent =
      code === PERMISSION_DENIED
        ? `The browser was not allowed to tell where it is. ${HOW}`
        : `The browser could not find where it is. ${HOW}`;
  };
  const ask = (): void => {
    said.textContent = "Asking the browser where it is ...";
    navigator.geolocation.getCurrentPosition(found, failed, { timeout: LONGEST_WAIT_MS });
  };
  const element = el(
    "div",
    { class: "field field-text" },
    el("label", { for: id }, field.label),
    el(
      "div",
      { class: "controls" },
      input,
      "geolocation" in navigator
        ? el("button", { type: "button", class: "quiet", onclick: ask }, "Where I am")
        : "",
    ),
    said,
    el("p", { class: "help" }, `${HOW} South and west are negative, or have their letter.`),
  );
  return {
    element,
    refresh: () => {
      if (document.activeElement !== input) show();
    },
  };
};
