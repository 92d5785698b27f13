/** Coordinates as people write them: with a comma, a decimal comma, degrees and minutes, letters before or behind. */

/** What a piece of writing says of a place, decimal degrees: north and east positive. One of the two may be left unsaid. */
export interface WrittenCoordinates {
  readonly latitudeDeg?: number;
  readonly longitudeDeg?: number;
}

/** One angle as written: its value, how many numbers it took, and the letter beside it. */
interface WrittenAngle {
  readonly degrees: number;
  readonly parts: number;
  readonly letter: "N" | "S" | "E" | "W" | null;
}

/** All signs that stand for minus, degrees, minutes and seconds, written one way. */
const plainSigns = (text: string): string =>
  text
    .trim()
    .replace(/^geo:/i, "")
    .replace(/[\u2212\u2012\u2013]/g, "-")
    .replace(/[\u00ba\u02da]|\s*\bdeg(?:rees)?\b\.?/gi, "°")
    .replace(/[\u2032\u2019\u02b9`]/g, "'")
    .replace(/[\u2033\u201d\u02ba]|''/g, '"')
    .replace(/\bnorth\b/gi, "N")
    .replace(/\bsouth\b/gi, "S")
    .replace(/\beast\b/gi, "E")
    .replace(/\bwest\b/gi, "W")
    .replace(/\s+/g, " ");

const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const ANGLE = new RegExp(
  `^(?<before>[NSEW])? ?(?<sign>[+-])?(?<deg>${NUMBER}) ?[°:]? ?(?:(?<min>${NUMBER}) ?[':]? ?(?:(?<sec>${NUMBER}) ?"? ?)?)?(?<after>[NSEW])?$`,
  "i",
);

const numberOf = (text: string | undefined): number => Number((text ?? "0").replace(",", "."));

const isLetter = (text: string): text is "N" | "S" | "E" | "W" => /^[NSEW]$/.test(text);

const angleOf = (text: string): WrittenAngle | null => {
  const found = ANGLE.exec(text.trim())?.groups;
  if (found === undefined) return null;
  const { before, sign, deg, min, sec, after } = found;
  const letter = (before ?? after ?? "").toUpperCase();
  // A sign beside a letter, or a letter on both sides, says the direction twice.
  if ((before !== undefined && after !== undefined) || (sign !== undefined && letter !== "")) return null;
  const [degrees, minutes, seconds] = [numberOf(deg), numberOf(min), numberOf(sec)];
  const isBroken = (whole: string | undefined, next: string | undefined): boolean =>
    next !== undefined && /[.,]/.test(whole ?? "");
  if (minutes >= 60 || seconds >= 60 || isBroken(deg, min) || isBroken(min, sec)) return null;
  const size = degrees + minutes / 60 + seconds / 3600;
  return {
    degrees: sign === "-" || letter === "S" || letter === "W" ? -size : size,
    parts: 1 + (min === undefined ? 0 : 1) + (sec === undefined ? 0 : 1),
    letter: isLetter(letter) ? letter : null,
  };
};

const isOfLatitude = ({ letter }: WrittenAngle): boolean => letter === "N" || letter === "S";
const isOfLongitude = ({ letter }: WrittenAngle): boolean => letter === "E" || letter === "W";

/** Two angles as a place, latitude first where no letter says otherwise; `null` where they can't be one. */
const pairOf = (one: WrittenAngle, other: WrittenAngle): Required<WrittenCoordinates> | null => {
  const turned = isOfLongitude(one) || isOfLatitude(other);
  const [latitude, longitude] = turned ? [other, one] : [one, other];
  if (isOfLongitude(latitude) || isOfLatitude(longitude)) return null;
  const lettered = latitude.letter !== null && longitude.letter !== null;
  if (!lettered && one.parts !== other.parts) return null;
  if (Math.abs(latitude.degrees) > 90 || Math.abs(longitude.degrees) > 180) return null;
  return { latitudeDeg: latitude.degrees, longitudeDeg: longitude.degrees };
};

/** Every way to cut a text in two: at a comma, a semicolon, a slash or a space, and after or before a letter. */
const cuts = (text: string): readonly (readonly [string, string])[] =>
  Array.from({ length: text.length + 1 }, (_, at) => at).flatMap((at) => {
    const [head, tail] = [text.slice(0, at), text.slice(at)];
    if (/[,;/ ]$/.test(head)) return [[head.replace(/[,;/ ]+$/, ""), tail] as const];
    return /[NSEW]$/i.test(head) || /^[NSEW]/i.test(tail) ? [[head, tail] as const] : [];
  });

/**
 * Reads coordinates in any of the usual writings: `57.4778, -4.2247`, `57,4778 -4,2247`, `57°30'N 4°13'W`, `N57 30.5 W4 13.2`,
 * `geo:57.4778,-4.2247`; or one of the two, with its letter: `57.4778 N`. Without letters latitude stands first. Forms of
 * ISO 6709:2008 annex D (degrees, minutes, seconds) and RFC 5870 (geo) are among them, heights are not.
 *
 * @returns decimal degrees, north and east positive, latitude within 90 and longitude within 180; `null` where the text can't
 * be read, can be read in more than one way (`57,4` is one number or two), or lies beyond those ranges
 * @example writtenCoordinates("57°30'N 4°15'W") // { latitudeDeg: 57.5, longitudeDeg: -4.25 }
 */
export const writtenCoordinates = (text: string): WrittenCoordinates | null => {
  const plain = plainSigns(text);
  const alone = angleOf(plain);
  if (alone !== null && isOfLatitude(alone) && Math.abs(alone.degrees) <= 90)
    return { latitudeDeg: alone.degrees };
  if (alone !== null && isOfLongitude(alone) && Math.abs(alone.degrees) <= 180)
    return { longitudeDeg: alone.degrees };
  if (alone !== null && alone.parts === 1) return null;
  const readings = cuts(plain).flatMap(([head, tail]) => {
    const [one, other] = [angleOf(head), angleOf(tail)];
    const pair = one === null || other === null ? null : pairOf(one, other);
    return pair === null ? [] : [pair];
  });
  const [first] = readings;
  const isOne = readings.every(
    (reading) => reading.latitudeDeg === first?.latitudeDeg && reading.longitudeDeg === first.longitudeDeg,
  );
  return first !== undefined && isOne ? first : null;
};
