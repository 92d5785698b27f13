/** Where a plan is, in words. */

const degrees = (value: number, positive: string, negative: string): string =>
  `${Number(Math.abs(value).toFixed(2))}° ${value < 0 ? negative : positive}`;

/** Coordinates to a hundredth of a degree, about a kilometre. @example coordinateWords({ latitudeDeg: 57.478, longitudeDeg: -4.2 }) // "57.48° N 4.2° W" */
export const coordinateWords = ({
  latitudeDeg,
  longitudeDeg,
}: {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}): string => `${degrees(latitudeDeg, "N", "S")} ${degrees(longitudeDeg, "E", "W")}`;

/** A place by its name and its coordinates; by these alone where it has no other name. */
export const placeWords = (site: {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}): string => (site.name === coordinateWords(site) ? site.name : `${site.name}, ${coordinateWords(site)}`);
