import { turnedBack } from "./turn-back.ts";
import { unpacked } from "./unpack.ts";

/** Weather files that travel with the notebooks, loaded when a plan asks for one. */
const FILES = import.meta.glob<string>("../../../data/weather/*.csv", {
  query: "?packed",
  import: "default",
});

interface Sidecar {
  readonly title: string;
  readonly place: { readonly latitudeDeg: number; readonly longitudeDeg: number };
}

const SIDECARS = import.meta.glob<Sidecar>("../../../data/weather/*.json", {
  eager: true,
  import: "default",
});

const nameOf = (path: string): string => path.slice(path.lastIndexOf("/") + 1);

/** The shipped files, each under the name a plan file calls it by. */
export const weatherChoices = (): readonly { readonly value: string; readonly label: string }[] =>
  Object.keys(FILES).map((path) => ({
    value: `../weather/${nameOf(path)}`,
    label: SIDECARS[path.replace(/\.csv$/, ".json")]?.title ?? nameOf(path),
  }));

/** Where a shipped weather file was recorded, or `null` when none has that name. */
export const shippedWeatherPlace = (file: string): Sidecar["place"] | null => {
  const found = Object.entries(SIDECARS).find(
    ([path]) => nameOf(path) === nameOf(file).replace(/\.csv$/, ".json"),
  );
  return found?.[1].place ?? null;
};

/** The text of a shipped weather file, or `null` when none has that name. */
export const shippedWeather = async (file: string): Promise<string | null> => {
  const found = Object.entries(FILES).find(([path]) => nameOf(path) === nameOf(file));
  return found === undefined ? null : turnedBack(await unpacked(await found[1]()));
};
