/** Sky to plane against the textbook's worked hour and the Perez model evaluated elsewhere. */

import {
  circumsolarShare,
  cosIncidence,
  horizonShare,
  lightOnPlane,
  martinRuizGlass,
  perez,
  skyBrightness,
  skyClearness,
  skyView,
} from "../../../lib/plane/index.ts";
import { airMassOfSine } from "../../../lib/sky/air-mass.ts";
import { erbsHourly } from "../../../lib/sky/diffuse-share/erbs.ts";
import { extraterrestrialBetween } from "../../../lib/sky/extraterrestrial.ts";
import { directionAtHourAngle } from "../../../lib/sun/hour-angle.ts";
import { cooperDeclinationDeg } from "../../../lib/sun/orbit.ts";
import { type Direction, directionOf, normalOf, toRadians } from "../../../lib/units/angle.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Case, type Comparison } from "./comparison.ts";
import { idOf, inputReader, lastDigitOf, numberOf } from "./fields.ts";

const rows = readReference("tilted-plane.csv");
const J_PER_WH = 3600;
const FROM_MJ_TO_W = 1e6 / J_PER_WH;

/** The textbook's hour from 9 to 10, read at its middle: 37.5 degrees before noon. */
const HOUR_ANGLES_DEG = [-45, -30] as const;

/** Everything the textbook's example works out, hour sums in MJ/m2. */
const workedHour = (row: ReferenceRow): Readonly<Record<string, number>> => {
  const input = inputReader(row);
  const day = input("day_of_year");
  const declinationDeg = cooperDeclinationDeg(day);
  const normalWm2 = input("solar_constant_W_per_m2") * (1 + 0.033 * Math.cos((2 * Math.PI * day) / 365));
  const above = extraterrestrialBetween(input("latitude_deg"), declinationDeg, ...HOUR_ANGLES_DEG, normalWm2);
  const globalWm2 = input("global_hour_MJ_per_m2") * FROM_MJ_TO_W;
  const diffuse = globalWm2 * erbsHourly(globalWm2 / above);
  const sun: Direction = directionAtHourAngle(
    input("latitude_deg"),
    declinationDeg,
    (HOUR_ANGLES_DEG[0] + HOUR_ANGLES_DEG[1]) / 2,
  );
  const aim = { tiltDeg: input("surface_tilt_deg"), bearingDeg: input("surface_bearing_deg") };
  const beamRatio = cosIncidence(sun, normalOf(aim)) / sun.up;
  const light = {
    beamNormal: (globalWm2 - diffuse) / sun.up,
    diffuse,
    global: globalWm2,
    // The example takes the hour's own extraterrestrial light and 1 / cos z for the air mass.
    extraterrestrial: above / sun.up,
    airMass: 1 / sun.up,
    albedo: input("albedo"),
  };
  const glass = martinRuizGlass();
  const even = lightOnPlane(sun, light, aim, glass, "isotropic");
  const byPerez = lightOnPlane(sun, light, aim, glass, "perez");
  const hour = (wattsPerM2: number): number => wattsPerM2 / FROM_MJ_TO_W;
  return {
    diffuse_horizontal_hour: hour(diffuse),
    beam_horizontal_hour: hour(globalWm2 - diffuse),
    beam_ratio_Rb: beamRatio,
    beam_on_plane_hour: hour(even.beam),
    "sky_diffuse_on_plane_hour (isotropic)": hour(even.dome),
    ground_on_plane_hour: hour(even.ground),
    "plane_total_hour (isotropic)": hour(even.plane),
    "plane_total_hour (Perez 1990)": hour(byPerez.plane),
  };
};

/** The quantities of the Perez model for one sky and one plane. */
const perezParts = (row: ReferenceRow): Readonly<Record<string, number>> => {
  const input = inputReader(row);
  const zenithRad = toRadians(input("zenith_deg"));
  const [beamNormal, diffuse] = [input("beam_normal_W_per_m2"), input("diffuse_horizontal_W_per_m2")];
  const extraterrestrial = input("extraterrestrial_normal_W_per_m2");
  const sinAltitude = directionOf(90 - input("zenith_deg"), 0).up;
  const airMass = airMassOfSine(sinAltitude);
  const clearness = skyClearness(beamNormal, diffuse, zenithRad);
  const brightness = skyBrightness(diffuse, airMass, extraterrestrial);
  const split = perez(
    { beamNormal, diffuse, sinAltitude, extraterrestrial, airMass },
    { circumsolar: 0, dome: 0, horizon: 0 },
  );
  const tiltDeg = input("surface_tilt_deg");
  return {
    sky_clearness_epsilon: clearness,
    sky_brightness_Delta: brightness,
    F1: circumsolarShare(clearness, brightness, zenithRad),
    F2: horizonShare(clearness, brightness, zenithRad),
    sky_diffuse_on_plane:
      split.circumsolar * Math.cos(toRadians(input("incidence_deg"))) +
      split.dome * skyView(tiltDeg) +
      split.horizon * Math.sin(toRadians(tiltDeg)),
  };
};

const caseOf = (
  row: ReferenceRow,
  computed: Readonly<Record<string, number>>,
  tolerance: number = numberOf(row, "tolerance"),
): Case => {
  const ours = computed[row.quantity ?? ""];
  if (ours === undefined) throw new Error(`${idOf(row)}: unknown quantity ${row.quantity}`);
  return absolute(idOf(row), ours, numberOf(row, "expected"), tolerance);
};

const starting = (prefix: string): readonly ReferenceRow[] =>
  rows.filter((row) => idOf(row).startsWith(prefix));

export const tiltedPlane: readonly Comparison[] = [
  {
    quantity: "light on a tilted plane, isotropic and Perez, one worked hour",
    reference: "Duffie & Beckman, Examples 2.15.1 and 2.16.2",
    unit: "MJ/m2 (ratio: 1)",
    cause: "the example's own rounding from step to step",
    count: 8,
    cases: () => starting("DB").map((row) => caseOf(row, workedHour(row))),
  },
  ...(
    [
      ["sky_clearness_epsilon", "sky clearness of the Perez sky", "1", "the last printed digit"],
      ["sky_brightness_Delta", "sky brightness of the Perez sky", "1", "the last printed digit"],
      ["F1", "circumsolar share F1", "1", "the last printed digit"],
      ["F2", "horizon share F2", "1", "the last printed digit"],
      ["sky_diffuse_on_plane", "sky diffuse on a plane, Perez", "W/m2", "the last printed digit"],
    ] as const
  ).map(
    ([name, quantity, unit, cause]): Comparison => ({
      quantity,
      reference: "Perez et al. 1990, evaluated by an independent program",
      unit,
      cause,
      count: 8,
      cases: () => {
        const own = starting("PEREZ").filter((row) => row.quantity === name);
        return own.map((row) => caseOf(row, perezParts(row), lastDigitOf(own)));
      },
    }),
  ),
];
