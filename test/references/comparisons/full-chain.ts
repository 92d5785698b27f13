/**
 * Whole days from the sun to the watt-hour, against an independent program that worked the same published formulas out:
 * sun, clear sky or weather file, sky to plane, glass, cell temperature, power.
 */
import { diodePanel, linearPanel, type PanelModel, panelPower } from "../../../lib/panel/index.ts";
import type { SkyToPlane } from "../../../lib/plan/sky.ts";
import {
  type DomeColumns,
  domeColumns,
  groundView,
  martinRuizGlass,
  planeColumns,
} from "../../../lib/plane/index.ts";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import type { SkyColumns } from "../../../lib/sky/columns.ts";
import { weatherSkyColumns } from "../../../lib/sky/weather/lay/weather-columns.ts";
import { parseWeather } from "../../../lib/sky/weather/read/parse-weather.ts";
import { type SunColumns, sunColumns } from "../../../lib/sun/index.ts";
import { type Aim, normalOf, toRadians } from "../../../lib/units/angle.ts";
import { absolute, type Case, type Comparison, relative } from "./comparison.ts";
import { module, PARTS, type Part, type Scenario, scenarios, weatherText } from "./scenario.ts";

const HALF_DAY_MS = 43_200_000;

/** Air of a scenario under a file: only the extraterrestrial light and the air mass of the clear columns are used. */
const ANY_AIR = {
  pressure_hPa: 1013,
  ozone_cm: 0.3,
  water_cm: 1,
  aod380: 0.1,
  aod500: 0.1,
  forward_ratio: 0.84,
  K1: 0.1,
};

const skyOf = (scenario: Scenario, sun: SunColumns): SkyColumns | null => {
  const air = scenario.sky ?? ANY_AIR;
  const clear = clearSkyColumns(
    sun,
    {
      pressureHPa: air.pressure_hPa,
      ozoneCm: air.ozone_cm,
      waterCm: air.water_cm,
      aod380: air.aod380,
      aod500: air.aod500,
      forwardShare: air.forward_ratio,
      aerosolAbsorption: air.K1,
    },
    scenario.ground_albedo,
    {
      airC: typeof scenario.air_temperature_C === "number" ? scenario.air_temperature_C : 0,
      windMs: scenario.wind_m_s,
    },
  );
  if (scenario.kind === "clear") return clear;
  const text = weatherText(scenario);
  if (text === null) return null;
  const place = {
    latitudeDeg: scenario.site.latitude_deg,
    longitudeDeg: scenario.site.longitude_deg_east,
  };
  return weatherSkyColumns(sun, parseWeather(text, { place, file: scenario.id }), clear, {
    latitudeDeg: place.latitudeDeg,
    split: "erbs",
  });
};

const { isc_A, voc_V, imp_A, vmp_V, alpha_isc_A_per_K, beta_voc_V_per_K } = module.single_diode_nameplate;
const linear = linearPanel(module.p_stc_W, module.gamma_per_K);
const diode = diodePanel({
  powerW: module.p_stc_W,
  iscA: isc_A,
  vocV: voc_V,
  impA: imp_A,
  vmpV: vmp_V,
  iscPctPerK: (100 * alpha_isc_A_per_K) / isc_A,
  vocPctPerK: (100 * beta_voc_V_per_K) / voc_V,
});

const energy = (sun: SunColumns, watts: Float64Array): number =>
  watts.reduce((sum, each, row) => sum + each * sun.hours[row], 0);

/** Energy of each part of the light on a plane, Wh/m2. */
const partsOf = (sun: SunColumns, dome: DomeColumns, aim: Aim): Readonly<Record<Part, number>> => {
  const normal = normalOf(aim);
  const cosine = sun.up.map((up, row) =>
    Math.max(0, sun.east[row] * normal.east + sun.north[row] * normal.north + up * normal.up),
  );
  const towards = (column: Float64Array) =>
    energy(
      sun,
      column.map((each, row) => each * cosine[row]),
    );
  return {
    beam: towards(dome.beam),
    circumsolar: towards(dome.circumsolar),
    dome: energy(sun, dome.dome) * dome.viewOfSky(aim),
    horizon: energy(sun, dome.horizon) * Math.sin(toRadians(aim.tiltDeg)),
    ground: energy(sun, dome.ground) * groundView(aim.tiltDeg),
  };
};

/** A scenario run through our chain at a step; `null` where its file is not at hand. */
const runOf = (scenario: Scenario, stepMinutes: number, model: SkyToPlane = "perez") => {
  const date = new Date(Date.parse(scenario.start_utc) + HALF_DAY_MS).toISOString().slice(0, 10);
  const sun = sunColumns(
    {
      latitudeDeg: scenario.site.latitude_deg,
      longitudeDeg: scenario.site.longitude_deg_east,
      timeZone: "UTC",
    },
    { from: date, to: date },
    stepMinutes,
  );
  const sky = skyOf(scenario, sun);
  if (sky === null) return null;
  const aim = { tiltDeg: scenario.plane.tilt_deg, bearingDeg: scenario.plane.bearing_deg };
  const dome = domeColumns(sun, sky, model);
  const light = planeColumns(sun, dome, aim, martinRuizGlass());
  const dc = (model: PanelModel) => energy(sun, panelPower(model, light, sky));
  return {
    plane: energy(sun, light.plane),
    absorbed: energy(sun, light.absorbed),
    linear: dc(linear),
    diode: dc(diode),
    parts: partsOf(sun, dome, aim),
  };
};

/** Scenarios that can be run here; the rest needs a file that may not travel. */
const runnable = scenarios.filter((scenario) => scenario.kind === "clear" || weatherText(scenario) !== null);

/** Every scenario that there is. */
export const scenarioIds: readonly string[] = scenarios.map(({ id }) => id);

/** Scenarios left out here, and why. */
export const leftOut: readonly string[] = scenarios
  .filter((scenario) => !runnable.includes(scenario))
  .map(
    ({ id, name }) =>
      `${id} (${name}) was not run: its weather may not be shipped; set PANEL_SEASON_DATASETS to a folder that holds it`,
  );

const casesAt = (stepMinutes: number, level: "same_formulas" | "lawful_choices"): readonly Case[] =>
  runnable.flatMap((scenario) => {
    const run = runOf(scenario, stepMinutes);
    if (run === null) throw new Error(`${scenario.id}: no weather`);
    const { id, expected } = scenario;
    const allowed = scenario.tolerance[level];
    return [
      relative(`${id} plane`, run.plane, expected.plane_Wh_m2, allowed.plane_pct),
      relative(`${id} after glass`, run.absorbed, expected.plane_after_glass_Wh_m2, allowed.after_glass_pct),
      relative(`${id} linear power`, run.linear, expected.dc_energy_Wh, allowed.dc_pct),
      relative(`${id} single diode`, run.diode, expected.dc_energy_single_diode_Wh, allowed.dc_pct),
    ];
  });

const partCases = (): readonly Case[] =>
  runnable.flatMap((scenario) => {
    const run = runOf(scenario, 1);
    if (run === null) throw new Error(`${scenario.id}: no weather`);
    const { expected, tolerance, id } = scenario;
    return PARTS.map((part) => ({
      id: `${id} ${part}`,
      ours: run.parts[part],
      theirs: expected.parts_Wh_m2[part],
      difference: (100 * (run.parts[part] - expected.parts_Wh_m2[part])) / expected.plane_Wh_m2,
      tolerance: tolerance.same_formulas.plane_pct,
    }));
  });

/** What the other two models give, in per cent from the default one. */
const otherModelCases = (): readonly Case[] =>
  runnable.flatMap((scenario) => {
    const perez = runOf(scenario, 1);
    return (["hay-davies", "isotropic"] as const).flatMap((model) => {
      const run = runOf(scenario, 1, model);
      if (perez === null || run === null) throw new Error(`${scenario.id}: no weather`);
      const theirs = scenario.deviations[model];
      // Half the last digit, and what the tolerance of the sun leaves of a difference of this size.
      const allowed = (pct: number) =>
        0.01 + (scenario.tolerance.same_formulas.plane_pct * Math.abs(pct)) / 100;
      const from = (name: string, part: "plane" | "absorbed", pct: number): Case =>
        absolute(`${scenario.id} ${model} ${name}`, 100 * (run[part] / perez[part] - 1), pct, allowed(pct));
      return [
        from("plane", "plane", theirs.plane_pct),
        from("after glass", "absorbed", theirs.after_glass_pct),
      ];
    });
  });

const REFERENCE = `${runnable.length} whole days, an independent program working the same formulas`;

export const fullChain: readonly Comparison[] = [
  {
    quantity: "day's energy on the plane, after glass, by either panel model; 1-minute steps",
    reference: REFERENCE,
    unit: "%",
    cause: "0.02 degrees of sun; more at grazing sun",
    count: 4 * runnable.length,
    cases: () => casesAt(1, "same_formulas"),
  },
  {
    quantity: "the same at the default 10-minute step",
    reference: REFERENCE,
    unit: "%",
    cause: "coarser steps, one sun for an interval of a file",
    count: 4 * runnable.length,
    cases: () => casesAt(10, "lawful_choices"),
  },
  {
    quantity: "beam, circumsolar, dome, horizon and ground light of those days; 1-minute steps",
    reference: REFERENCE,
    unit: "% of the plane's light",
    cause: "0.02 degrees of sun; more at grazing sun",
    count: 5 * runnable.length,
    cases: partCases,
  },
  {
    quantity: "Hay-Davies and even sky from Perez, plane and after glass; 1-minute steps",
    reference: REFERENCE,
    unit: "%",
    cause: "two printed decimals, and 0.02 degrees of sun on a difference of that size",
    count: 4 * runnable.length,
    cases: otherModelCases,
  },
];
