import { sum } from "d3";
import { readPlan } from "../../lib/plan/index.ts";
import { totalWh } from "../../lib/season/light/day-sums.ts";
import { panelUnits } from "../../lib/season/light/panel-unit.ts";
import { seasonClearSky, seasonSun } from "../../lib/season/light/season-skies.ts";
import { seasonYield } from "../../lib/season/light/season-yield.ts";
import { drawSeasons, seasonBands } from "../../lib/season/light/sequences.ts";
import { settingsOf } from "../../lib/season/light/settings.ts";
import { readySkies } from "../../lib/season/light/skies.ts";
import { skiesOfPlan } from "../../lib/season/light/skies-of-plan.ts";
import { skyAtRatio } from "../../lib/sky/climate/days/cloud-skies.ts";
import type { SkyColumns } from "../../lib/sky/columns.ts";
import { measure, measuredLine, ratioLine } from "./measure.ts";

const SEASONS = 200;
/** The straightforward way takes minutes; a few seasons tell what each costs. */
const SEASONS_IN_FULL = 4;

/** 214 days and three settings at the plan's usual ten-minute steps, under a stated climate. */
const climatePlan = () =>
  readPlan({
    site: { latitudeDeg: 53.56, longitudeDeg: 8.59, timeZone: "Europe/Berlin" },
    season: { from: "2027-04-01", to: "2027-10-31" },
    sky: {
      source: "climate",
      from: { kind: "months", globalKWhM2: [0.6, 1.1, 2.5, 3.8, 4.6, 5.4, 5.0, 4.3, 3.1, 1.8, 0.8, 0.4] },
      seasons: SEASONS,
    },
    panels: [{ name: "propped panel", module: { powerW: 100 }, lengthMm: 1050 }],
    stand: {
      pivotMm: 760,
      legs: [
        { name: "short", lengthMm: 300 },
        { name: "long", lengthMm: 700 },
      ],
    },
  });

/** Expected days and bands against the clear-sky season; 200 drawn seasons against running each through the chain. */
export const benchClimate = (): readonly string[] => {
  const plan = climatePlan();
  const units = panelUnits(plan.panels);
  const settings = settingsOf(plan);
  const { skies, cloud } = skiesOfPlan(plan, null);
  if (cloud === null) throw new Error("benchClimate: expected a climate");
  const yields = seasonYield(skies, units, settings);
  const draws = drawSeasons(yields, cloud);

  /** One drawn season written out as sky columns, day by day. */
  const skyOfSeason = (season: number): SkyColumns => {
    const { sun, clear } = skies;
    const sky = skyAtRatio(sun, clear.sky, cloud.days, 0);
    for (const [day, { first, end }] of sun.days.entries()) {
      const ratio = draws.ratio[season * draws.days + day];
      for (let row = first; row < end; row += 1) {
        sky.global[row] = ratio * clear.sky.global[row];
        sky.beamNormal[row] = ratio * ratio * clear.sky.beamNormal[row];
        sky.diffuse[row] = sky.global[row] - sky.beamNormal[row] * sun.up[row];
      }
    }
    return sky;
  };

  const runs = measure(
    [
      {
        name: "clear-sky season, 3 settings, from the plan",
        run: () => {
          const sun = seasonSun(plan);
          const ready = readySkies(sun, seasonClearSky(plan, sun), []);
          return sum(seasonYield(ready, units, settings).settings, ({ clearWh }) => totalWh(clearWh));
        },
      },
      {
        name: "expected days and bands, 3 settings, from the plan",
        run: () =>
          sum(seasonYield(skiesOfPlan(plan, null).skies, units, settings).settings, ({ expectedWh }) =>
            totalWh(expectedWh ?? new Float64Array()),
          ),
      },
      {
        name: `${SEASONS} drawn seasons, 3 settings`,
        run: () => sum(seasonBands(yields, cloud), ({ p50Wh }) => p50Wh),
      },
      {
        name: `${SEASONS_IN_FULL} drawn seasons in full, 3 settings`,
        run: () => {
          let total = 0;
          for (let season = 0; season < SEASONS_IN_FULL; season += 1) {
            const ready = readySkies(skies.sun, skyOfSeason(season), []);
            total += sum(seasonYield(ready, units, settings).settings, ({ clearWh }) => totalWh(clearWh));
          }
          return total;
        },
      },
    ],
    5,
    1,
  );
  const [clear, expected, drawn, inFull] = runs.map(({ leastMs }) => leastMs);
  return [
    `A climate's season, ${skies.sun.days.length} days, 10-minute steps:`,
    ...runs.map(measuredLine),
    ratioLine("expected and bands / clear-sky season", expected / clear, 15, "at most"),
    ratioLine(
      `${SEASONS} seasons in full / drawn and looked up`,
      ((inFull / SEASONS_IN_FULL) * SEASONS) / drawn,
      10,
      "at least",
    ),
  ];
};
