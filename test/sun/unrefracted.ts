import { type Direction, directionOf, toDegrees } from "../../lib/units/angle.ts";

/** Refraction as suncalc adds it to a true altitude: Meeus 1998, eq. 16.4, held at its horizon value below. */
const refractionDeg = (trueDeg: number): number => {
  const h = (Math.max(trueDeg, 0) * Math.PI) / 180;
  return toDegrees(0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179)));
};

export const altitudeDegOf = ({ up }: Direction): number =>
  toDegrees(Math.asin(Math.max(-1, Math.min(1, up))));

export const bearingDegOf = ({ east, north }: Direction): number =>
  (toDegrees(Math.atan2(east, north)) + 360) % 360;

/** The direction without refraction: where the sun would be seen through no air. */
export const unrefracted = (apparent: Direction): Direction => {
  const seenDeg = altitudeDegOf(apparent);
  let trueDeg = seenDeg;
  for (let i = 0; i < 50; i++) trueDeg = seenDeg - refractionDeg(trueDeg);
  return directionOf(trueDeg, bearingDegOf(apparent));
};

/** Declination of the body in that (unrefracted) direction, degrees. */
export const declinationDegOf = ({ north, up }: Direction, latitudeDeg: number): number => {
  const latitude = (latitudeDeg * Math.PI) / 180;
  return toDegrees(Math.asin(up * Math.sin(latitude) + north * Math.cos(latitude)));
};
