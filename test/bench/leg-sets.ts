import { sum } from "d3";
import { bestSet } from "../../lib/season/legs/best-set.ts";
import { bestPeakedSets } from "../../lib/season/legs/peaked-set.ts";
import { bestPoorestSet } from "../../lib/season/legs/poorest-set.ts";
import { swapCalendar } from "../../lib/season/legs/swap-calendar.ts";
import { tiltLadder } from "../../lib/season/legs/tilt-ladder.ts";
import { panelUnits } from "../../lib/season/light/panel-unit.ts";
import { seasonClearSky, seasonSun } from "../../lib/season/light/season-skies.ts";
import { readySkies } from "../../lib/season/light/skies.ts";
import { demoYear } from "./demo-year.ts";
import { measure, measuredLine, ratioLine } from "./measure.ts";

/** Trying every set of three, the straightforward way, with the best of a day kept from the two already chosen. */
const bestOfThreeByTrying = (base: Float64Array, columns: readonly Float64Array[]): number => {
  let best = 0;
  for (let i = 0; i < columns.length; i += 1) {
    for (let j = i + 1; j < columns.length; j += 1) {
      const held = base.map((wh, day) => Math.max(wh, columns[i][day], columns[j][day]));
      for (let k = j + 1; k < columns.length; k += 1) {
        let total = 0;
        for (let day = 0; day < held.length; day += 1) total += Math.max(held[day], columns[k][day]);
        best = Math.max(best, total);
      }
    }
  }
  return best;
};

/** The best set of three legs of 76 tilts over a season of 214 days, against what the daily energies cost. */
export const benchLegSets = (): readonly string[] => {
  const plan = demoYear({ season: { from: "2027-04-01", to: "2027-10-31" } });
  const sun = seasonSun(plan);
  const skies = readySkies(sun, seasonClearSky(plan, sun), []);
  const units = panelUnits(plan.panels);
  const tilts = Array.from({ length: 76 }, (_, index) => 5 + index);
  const fine = Array.from({ length: 301 }, (_, index) => 5 + index / 4);
  const days = sun.days.length;
  const base = tiltLadder(skies, units, 180, [0]).dayWh[0];
  const ladder = tiltLadder(skies, units, 180, tilts).dayWh;
  const fineLadder = tiltLadder(skies, units, 180, fine).dayWh;
  const season = { groupOfDay: new Uint8Array(days), count: 1 };
  const months = [...new Set(sun.days.map(({ month }) => month))];
  const byMonth = {
    groupOfDay: Uint8Array.from(sun.days, ({ month }) => months.indexOf(month)),
    count: months.length,
  };
  const runs = measure(
    [
      {
        name: "daily energies of 76 tilts",
        run: () => sum(tiltLadder(skies, units, 180, tilts).dayWh, (dayWh) => dayWh[0]),
      },
      {
        name: "best sets of 1 to 4, single-peaked",
        run: () => sum(bestPeakedSets(base, ladder, 4) ?? [], ({ scoreWh }) => scoreWh),
      },
      {
        name: "best sets of 1 to 4 of 301 tilts, single-peaked",
        run: () => sum(bestPeakedSets(base, fineLadder, 4) ?? [], ({ scoreWh }) => scoreWh),
      },
      { name: "best set of 3, season total", run: () => bestSet(base, ladder, 3, season).scoreWh },
      {
        name: "best set of 4, worst month, by its poorest month first",
        run: () => bestPoorestSet(base, ladder, 4, byMonth).scoreWh,
      },
      { name: "trying every set of 3 of 76", run: () => bestOfThreeByTrying(base, ladder) },
      {
        name: "swap calendar of 4 settings",
        run: () => swapCalendar([base, ladder[15], ladder[35], ladder[60]]).totalWh,
      },
    ],
    3,
    1,
  );
  const [energies, peaked, , three, worst, trying] = runs.map(({ leastMs }) => leastMs);
  return [
    `Best legs of ${tilts.length} tilts over ${days} days:`,
    ...runs.map(measuredLine),
    ratioLine("best sets of 1 to 4, single-peaked / daily energies", peaked / energies, 20, "at most"),
    ratioLine("best set of 3 / daily energies", three / energies, 20, "at most"),
    ratioLine("best set of 4 by worst month / daily energies", worst / energies, 20, "at most"),
    ratioLine("trying every set / best set of 3", trying / three, 1, "at least"),
  ];
};
