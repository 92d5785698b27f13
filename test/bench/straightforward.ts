import { faimanCellC, HEAT_LOSS, linearPowerW } from "../../lib/panel/index.ts";
import type { Plan } from "../../lib/plan/index.ts";
import { lightOnPlane, martinRuizGlass } from "../../lib/plane/index.ts";
import { panelUnits } from "../../lib/season/panel-unit.ts";
import { settingsOf } from "../../lib/season/settings.ts";
import { relativeAirMass } from "../../lib/sky/air-mass.ts";
import { birdClearLight } from "../../lib/sky/bird.ts";
import { extraterrestrialNormal } from "../../lib/sky/extraterrestrial.ts";
import { albedoOf } from "../../lib/sky/ground.ts";
import { clearAirOf } from "../../lib/sky/turbidity.ts";
import { solarDays, sunVector } from "../../lib/sun/index.ts";

const MINUTE_MS = 60_000;

/**
 * The season as one would write it down first: for each setting, each day and each step, ask where the sun is, what
 * the sky sends, what falls on the plane, how warm the cell gets, and add the watts up; an object for each answer.
 * The same formulas as the engine, one moment at a time: its referee, and the measure of its speed.
 *
 * @returns Wh for each setting and day under the clear sky
 */
export const straightforwardSeason = (plan: Plan): readonly (readonly number[])[] => {
  const { site, season, air } = plan;
  const clearAir = clearAirOf(air, site.elevationM);
  const albedos = albedoOf(site.ground);
  const glass = martinRuizGlass();
  const hours = season.stepMinutes / 60;
  const steps = 1440 / season.stepMinutes;
  const monthly = (value: number | readonly number[], month: number): number =>
    typeof value === "number" ? value : value[month - 1];

  return settingsOf(plan).map((setting) =>
    solarDays(site, season).map((day) => {
      let energyWh = 0;
      for (let step = 0; step < steps; step += 1) {
        const timeMs = day.startMs + (step + 0.5) * season.stepMinutes * MINUTE_MS;
        const sun = sunVector(timeMs, site.latitudeDeg, site.longitudeDeg);
        if (sun.up <= 0) continue;
        const instant = new Date(timeMs);
        const dayOfYear = Math.floor((timeMs - Date.UTC(instant.getUTCFullYear(), 0, 1)) / 86_400_000) + 1;
        const extraterrestrial = extraterrestrialNormal(dayOfYear);
        const airMass = relativeAirMass((Math.asin(sun.up) * 180) / Math.PI);
        const albedo = albedos[day.month - 1];
        const clear = birdClearLight(extraterrestrial, sun.up, airMass, clearAir, albedo);
        for (const unit of panelUnits(plan.panels)) {
          const light = lightOnPlane(
            sun,
            { ...clear, extraterrestrial, airMass, albedo },
            unit.fixedAim ?? setting,
            glass,
            plan.sky.toPlane,
          );
          const mount = unit.model.heatLoss ?? HEAT_LOSS["open-rack"];
          const cellC = faimanCellC(
            light.plane,
            monthly(air.temperatureC, day.month),
            monthly(air.windMs, day.month),
            mount,
          );
          energyWh +=
            linearPowerW(unit.model, light.absorbed, cellC) * unit.model.shareLeft * unit.howMany * hours;
        }
      }
      return energyWh;
    }),
  );
};
