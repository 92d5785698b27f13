import { sum } from "d3";
import { dayEnergiesOver } from "../../lib/season/light/day-energy.ts";
import { totalWh } from "../../lib/season/light/day-sums.ts";
import { panelUnits } from "../../lib/season/light/panel-unit.ts";
import { seasonClearSky, seasonSun } from "../../lib/season/light/season-skies.ts";
import { seasonYield } from "../../lib/season/light/season-yield.ts";
import { settingsOf } from "../../lib/season/light/settings.ts";
import { readySkies } from "../../lib/season/light/skies.ts";
import { demoYear } from "./demo-year.ts";
import { measure, measuredLine, ratioLine } from "./measure.ts";
import { straightforwardSeason } from "./straightforward.ts";

/** The season engine against the straightforward version, and a tilt-by-date map against the sun columns. */
export const benchSeason = (): readonly string[] => {
  const plan = demoYear();
  const sun = seasonSun(plan);
  const clear = seasonClearSky(plan, sun);
  const skies = readySkies(sun, clear, []);
  const units = panelUnits(plan.panels);
  const settings = settingsOf(plan);
  const dayEnergies = dayEnergiesOver(sun);
  const day = new Float64Array(sun.days.length);

  const runs = measure([
    { name: "straightforward, 3 settings", run: () => sum(straightforwardSeason(plan).flat()) },
    {
      name: "engine, 3 settings, everything from the plan",
      run: () => {
        const columns = seasonSun(plan);
        const ready = readySkies(columns, seasonClearSky(plan, columns), []);
        return sum(seasonYield(ready, units, settings).settings, ({ clearWh }) => totalWh(clearWh));
      },
    },
    { name: "sun columns alone", run: () => seasonSun(plan).length },
    {
      name: "engine, 3 settings, on cached columns",
      run: () => sum(seasonYield(skies, units, settings).settings, ({ clearWh }) => totalWh(clearWh)),
    },
    {
      name: "engine, 91 tilts, on cached columns",
      run: () => {
        let total = 0;
        for (let tiltDeg = 0; tiltDeg <= 90; tiltDeg += 1) {
          total += totalWh(dayEnergies(skies.clear, units[0], { tiltDeg, bearingDeg: 180 }, day.fill(0)));
        }
        return total;
      },
    },
  ]);
  const [straight, whole, columns, cached, map] = runs.map(({ leastMs }) => leastMs);
  return [
    `A year, 10-minute steps, ${sun.length} daylight rows:`,
    ...runs.map(measuredLine),
    ratioLine("straightforward / engine from the plan", straight / whole, 10, "at least"),
    ratioLine("straightforward / engine on cached columns", straight / cached, 25, "at least"),
    ratioLine("year x 91 tilts / sun columns", map / columns, 4, "at most"),
    `  cost of one step and aim: ${((map * 1e6) / (91 * sun.length)).toFixed(1)} ns`,
  ];
};
