import { readPlan } from "../../lib/plan/index.ts";
import type { Plan } from "../../lib/plan/plan.ts";
import {
  panelUnits,
  type SeasonYield,
  seasonYield,
  settingsOf,
  skiesOfPlan,
} from "../../lib/season/index.ts";

/** A short season with two legs, for tests of tables and charts: small numbers that can be looked at. */
export const aPlan = (changes: Readonly<Record<string, unknown>> = {}): Plan =>
  readPlan({
    name: "Reed-cutter's raft",
    site: { name: "the reed beds", latitudeDeg: 53, longitudeDeg: 6, timeZone: "Europe/Amsterdam" },
    season: { from: "2027-05-01", to: "2027-05-20", stepMinutes: 30 },
    panels: [{ name: "the panel", module: { powerW: 60 } }],
    stand: {
      pivotMm: 700,
      legs: [
        { name: "low", tiltDeg: 25, readFrom: "ground" },
        { name: "=HIGH()", tiltDeg: 55, readFrom: "ground" },
      ],
    },
    ...changes,
  });

/** The plan's yields under clear skies; with `cloudy`, each day's expected value is a share of the clear one. */
export const yieldsOf = (plan: Plan, cloudy?: (day: number) => number): SeasonYield => {
  const clear = seasonYield(skiesOfPlan(plan, null).skies, panelUnits(plan.panels), settingsOf(plan));
  if (cloudy === undefined) return clear;
  return {
    ...clear,
    weights: [1],
    settings: clear.settings.map((setting) => {
      const expectedWh = setting.clearWh.map((wh, day) => wh * cloudy(day));
      return { ...setting, expectedWh, underEachSky: [expectedWh] };
    }),
  };
};
