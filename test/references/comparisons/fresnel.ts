/** Fresnel's equations: a second opinion on the glass from plain optics, used by the checks alone. */
import { clampedAsin, toRadians } from "../../../lib/units/angle.ts";

/** Reflectance of one surface between air and a refractive index, for both polarisations and their mean. */
export const fresnel = (refractiveIndex: number, incidenceDeg: number) => {
  const outside = toRadians(incidenceDeg);
  if (outside === 0) {
    const mean = ((refractiveIndex - 1) / (refractiveIndex + 1)) ** 2;
    return { perpendicular: mean, parallel: mean, mean };
  }
  const inside = clampedAsin(Math.sin(outside) / refractiveIndex);
  const perpendicular = (Math.sin(inside - outside) / Math.sin(inside + outside)) ** 2;
  const parallel = (Math.tan(inside - outside) / Math.tan(inside + outside)) ** 2;
  return { perpendicular, parallel, mean: (perpendicular + parallel) / 2 };
};

/** What passes a stack of clear sheets that swallow nothing: Duffie & Beckman, equation 5.1.8. */
export const sheetsPass = (refractiveIndex: number, sheets: number, incidenceDeg: number): number => {
  const { perpendicular, parallel } = fresnel(refractiveIndex, incidenceDeg);
  const pass = (r: number): number => (1 - r) / (1 + (2 * sheets - 1) * r);
  return (pass(perpendicular) + pass(parallel)) / 2;
};
