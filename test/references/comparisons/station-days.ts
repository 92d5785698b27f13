/** Every day of every tilted sensor, computed and measured, for drawing. */
import type { MeasuredPlane, MeasuredStation } from "../../../notebooks/kit/checks/outcomes.ts";
import { holzkirchenRuns } from "./holzkirchen.ts";
import { nyAlesundRuns } from "./ny-alesund.ts";
import { dailyError, MODELS, type PlaneRun } from "./station.ts";

/** Steps are ten minutes: a sum of W/m2 over six of them is Wh/m2. */
const STEPS_AN_HOUR = 6;

const whole = (wattSteps: number): number => Math.round(wattSteps / STEPS_AN_HOUR);

const planesOf = (runs: readonly PlaneRun[]): readonly MeasuredPlane[] =>
  runs.map(({ aim, byModel }) => ({
    ...aim,
    errors: MODELS.map((model) => ({ model, ...dailyError(byModel[model]) })),
    days: byModel.perez.map(
      ({ date, computed, measured }) => [date, whole(computed), whole(measured)] as const,
    ),
  }));

/** The stations with what they measured on the level, and their planes. */
export const stationDays = (): readonly MeasuredStation[] => [
  {
    station: "Holzkirchen 47.9° N, upright",
    from: "global and diffuse light measured on the level, ground 0.20",
    planes: planesOf(holzkirchenRuns("measured")),
  },
  ...([45, 90] as const).map((tiltDeg) => ({
    station: `Ny-Ålesund 78.9° N, ${tiltDeg === 90 ? "upright" : "tilt 45°"}`,
    from: "global light measured on the level, split by Engerer 2015; ground light measured",
    planes: planesOf(nyAlesundRuns(tiltDeg, "engerer")),
  })),
];
