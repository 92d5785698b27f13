import { faimanCellC, panelMaxPower } from "../../lib/panel/index.ts";
import type { Plan } from "../../lib/plan/index.ts";
import { heightM } from "../../lib/plan/site.ts";
import { lightOnPlane, martinRuizGlass } from "../../lib/plane/index.ts";
import { panelUnits } from "../../lib/season/light/panel-unit.ts";
import { settingsOf } from "../../lib/season/light/settings.ts";
import { relativeAirMass } from "../../lib/sky/air-mass.ts";
import { birdClearLight } from "../../lib/sky/bird.ts";
import { extraterrestrialNormal } from "../../lib/sky/extraterrestrial.ts";
import { albedoOf } from "../../lib/sky/ground.ts";
import { clearAirOf } from "../../lib/sky/turbidity.ts";
import { solarDays, sunVector } from "../../lib/sun/index.ts";
import type { Direction } from "../../lib/units/angle.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/** The part of a step with the sun in sight, found by halving; empty when both ends are dark. */
const sunlitPart = (
  startMs: number,
  stepMs: number,
  sunAt: (timeMs: number) => Direction,
): readonly [fromMs: number, toMs: number] => {
  const endMs = startMs + stepMs;
  const [startsLit, endsLit] = [sunAt(startMs).up > 0, sunAt(endMs).up > 0];
  if (startsLit === endsLit) return startsLit ? [startMs, endMs] : [startMs, startMs];
  let [dark, lit] = startsLit ? [endMs, startMs] : [startMs, endMs];
  while (Math.abs(lit - dark) > 100) {
    const middle = (lit + dark) / 2;
    if (sunAt(middle).up > 0) lit = middle;
    else dark = middle;
  }
  return startsLit ? [startMs, lit] : [lit, endMs];
};

/**
 * The season as one would write it down first: for each setting, each day and each step, ask where the sun is, what
 * the sky sends, what falls on the plane, how warm the cell gets, and add the watts up; an object for each answer.
 * The same formulas as the engine, one moment at a time: its referee, and the measure of its speed.
 *
 * @returns Wh for each setting and day under the clear sky
 */
export const straightforwardSeason = (plan: Plan): readonly (readonly number[])[] => {
  const { site, season, air } = plan;
  const clearAir = clearAirOf(air, heightM(site));
  const albedos = albedoOf(site.ground);
  const units = panelUnits(plan.panels);
  const glass = martinRuizGlass();
  const stepMs = season.stepMinutes * MINUTE_MS;
  const steps = 1440 / season.stepMinutes;
  const sunAt = (timeMs: number) => sunVector(timeMs, site.latitudeDeg, site.longitudeDeg);
  const monthly = (value: number | readonly number[], month: number): number =>
    typeof value === "number" ? value : value[month - 1];

  return settingsOf(plan).map((setting) =>
    solarDays(site, season).map((day) => {
      let energyWh = 0;
      for (let step = 0; step < steps; step += 1) {
        const [fromMs, toMs] = sunlitPart(day.startMs + (step + 0.25) * stepMs, stepMs, sunAt);
        if (toMs <= fromMs) continue;
        const timeMs = (fromMs + toMs) / 2;
        const hours = (toMs - fromMs) / HOUR_MS;
        const sun = sunAt(timeMs);
        const instant = new Date(timeMs);
        const dayOfYear = Math.floor((timeMs - Date.UTC(instant.getUTCFullYear(), 0, 1)) / 86_400_000) + 1;
        const extraterrestrial = extraterrestrialNormal(dayOfYear);
        const airMass = relativeAirMass((Math.asin(sun.up) * 180) / Math.PI);
        const albedo = albedos[day.month - 1];
        const clear = birdClearLight(extraterrestrial, sun.up, airMass, clearAir, albedo);
        for (const unit of units) {
          const light = lightOnPlane(
            sun,
            { ...clear, extraterrestrial, airMass, albedo },
            unit.fixedAim ?? setting,
            glass,
            plan.sky.toPlane,
          );
          const cellC = faimanCellC(
            light.plane,
            monthly(air.temperatureC, day.month),
            monthly(air.windMs, day.month),
            unit.model.heatLoss,
          );
          energyWh += panelMaxPower(unit.model, light.absorbed, cellC).watts * unit.howMany * hours;
        }
      }
      return energyWh;
    }),
  );
};
