import { randomLcg, randomUniform } from "d3";
import { type Plan, type PlanInput, readPlan } from "../../lib/plan/index.ts";
import { type TiltLadder, tiltLadder } from "../../lib/season/legs/tilt-ladder.ts";
import { panelUnits } from "../../lib/season/light/panel-unit.ts";
import { seasonClearSky, seasonSun } from "../../lib/season/light/season-skies.ts";
import { facingOf } from "../../lib/season/light/settings.ts";
import { readySkies, type SeasonSkies } from "../../lib/season/light/skies.ts";

/** Plans all over the earth, for checks by trying everything: seeded, coarse steps, seasons of one to six months. */
export const randomPlan = (seed: number): Plan => {
  const random = randomLcg(seed / 1000);
  const between = (least: number, most: number): number => randomUniform.source(random)(least, most)();
  const from = Date.UTC(2027, Math.floor(between(0, 12)), Math.ceil(between(0, 28)));
  const to = from + Math.round(between(30, 180)) * 86_400_000;
  const date = (ms: number): string => new Date(ms).toISOString().slice(0, 10);
  const given: PlanInput = {
    site: {
      latitudeDeg: between(-70, 70),
      longitudeDeg: between(-180, 180),
      elevationM: between(0, 2500),
    },
    season: { from: date(from), to: date(to), stepMinutes: 60 },
    panels: [{ name: "panel", module: { powerW: between(20, 200) }, lengthMm: 1100 }],
    stand: {
      pivotMm: between(400, 900),
      legStyle: between(0, 1) < 0.5 ? "square" : "plumb",
      facingDeg: between(0, 360),
    },
  };
  return readPlan(given);
};

export const clearSkies = (plan: Plan): SeasonSkies => {
  const sun = seasonSun(plan);
  return readySkies(sun, seasonClearSky(plan, sun), []);
};

/** A plan's ladder under the clear sky. */
export const clearLadder = (plan: Plan, tiltsDeg: readonly number[]): TiltLadder =>
  tiltLadder(clearSkies(plan), panelUnits(plan.panels), facingOf(plan), tiltsDeg);
