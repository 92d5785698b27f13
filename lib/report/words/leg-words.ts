import { tiltWords } from "../../stand/reading.ts";
import { lengthWords } from "./words.ts";

/** A leg in words. @example legWords({ legMm: 404.1, tiltDeg: 30 }) // "404 mm (15 15/16 in), 30° from the ground (60° from a post)" */
export const legWords = ({ legMm, tiltDeg }: { readonly legMm: number; readonly tiltDeg: number }): string =>
  `${lengthWords(legMm)}, ${tiltWords(tiltDeg)}`;
