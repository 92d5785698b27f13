/**
 * How much light the ground sends back up.
 */
import type { GroundKind } from "../plan/site.ts";
import { type Monthly, twelveOf } from "./monthly.ts";

/**
 * Reflectance of level ground to sunlight, 0..1, and the range the sources give.
 * Grass: 0.20, the customary ground of Liu & Jordan 1963 and the middle of the handbooks' 0.15-0.25. Upright planes over grass
 * measured at Holzkirchen bear it out: with 0.20 they are met to +0.5 %, with the 0.23 of FAO-56's well-watered reference crop
 * (Allen et al. 1998) they come out 3 % too bright (`npm run validate:plane`). Fresh snow 0.80-0.90, old
 * snow 0.40-0.60, desert sand 0.35-0.45, forest 0.10-0.18, asphalt 0.05-0.12: handbook ranges (Oke 1987, table 1.1,
 * from memory); the value is the middle of the range. Bare soil 0.05-0.40 (dark wet to light dry), water 0.03-0.10 with
 * the sun up, sea ice 0.30-0.45: the same table. Gravel 0.15-0.30: common practice, no source.
 */
interface Reflectance {
  readonly albedo: number;
  readonly least: number;
  readonly most: number;
}

const GROUNDS: Readonly<Record<GroundKind, Reflectance>> = {
  grass: { albedo: 0.2, least: 0.15, most: 0.25 },
  "bare soil": { albedo: 0.2, least: 0.05, most: 0.4 },
  "dry sand": { albedo: 0.4, least: 0.35, most: 0.45 },
  gravel: { albedo: 0.22, least: 0.15, most: 0.3 },
  forest: { albedo: 0.14, least: 0.1, most: 0.18 },
  water: { albedo: 0.07, least: 0.03, most: 0.1 },
  asphalt: { albedo: 0.1, least: 0.05, most: 0.12 },
  "fresh snow": { albedo: 0.85, least: 0.8, most: 0.9 },
  "old snow": { albedo: 0.5, least: 0.4, most: 0.6 },
  "sea ice": { albedo: 0.38, least: 0.3, most: 0.45 },
};

/** Reflectance of a kind of ground, with the range found in the sources. */
export const reflectanceOf = (ground: GroundKind): Reflectance => GROUNDS[ground];

/**
 * Twelve reflectances, January first, from what a plan says of the ground: a kind, one number, or twelve.
 *
 * @example albedoOf("grass")[5] // 0.2
 */
export const albedoOf = (ground: GroundKind | Monthly): readonly number[] =>
  Array.from(twelveOf(typeof ground === "string" ? GROUNDS[ground].albedo : ground));
