import { keep, kept } from "../plan/keep.ts";
import { shippedWeather } from "./shipped.ts";

/** Weather files the person has opened, for as long as the page is open. */
const opened = new Map<string, string>();

const keptAs = (name: string): string => `weather/${name}`;

/** Takes a weather file in; the browser keeps it for the next visit where there is room. */
export const takeWeather = (name: string, csv: string): void => {
  opened.set(name, csv);
  keep(keptAs(name), csv);
};

/** The text of a weather file: one the person has opened, else one that travels with the notebooks, else `null`. */
export const weatherText = async (file: string): Promise<string | null> =>
  opened.get(file) ?? kept(keptAs(file)) ?? shippedWeather(file);
