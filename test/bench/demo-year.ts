import { type Plan, type PlanInput, readPlan } from "../../lib/plan/index.ts";

/** A whole year with three settings: what the benchmarks and the referee run on. */
export const demoYear = (changes: Partial<PlanInput> = {}): Plan =>
  readPlan({
    name: "bench year",
    site: { latitudeDeg: 53.56, longitudeDeg: 8.59, timeZone: "Europe/Berlin" },
    season: { from: "2027-01-01", to: "2027-12-31" },
    panels: [{ name: "propped panel", module: { powerW: 100 }, lengthMm: 1050 }],
    stand: {
      pivotMm: 760,
      legs: [
        { name: "short", lengthMm: 300 },
        { name: "long", lengthMm: 700 },
      ],
    },
    ...changes,
  });
