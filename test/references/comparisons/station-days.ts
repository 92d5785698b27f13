/** Every day of every tilted sensor, computed and measured, for drawing. */
import { holzkirchenRuns } from "./holzkirchen.ts";
import { nyAlesundRuns } from "./ny-alesund.ts";
import { dailyError, MODELS, type PlaneRun } from "./station.ts";

/** Steps are ten minutes: a sum of W/m2 over six of them is Wh/m2. */
const STEPS_AN_HOUR = 6;

const whole = (wattSteps: number): number => Math.round(wattSteps / STEPS_AN_HOUR);

const planesOf = (runs: readonly PlaneRun[]) =>
  runs.map(({ aim, byModel }) => ({
    ...aim,
    errors: MODELS.map((model) => ({ model, ...dailyError(byModel[model]) })),
    /** Date, computed by the default model, measured; Wh/m2. */
    days: byModel.perez.map(
      ({ date, computed, measured }) => [date, whole(computed), whole(measured)] as const,
    ),
  }));

/** The stations with what they measured on the level, and all their planes. */
export const stationDays = () => [
  {
    station: "Holzkirchen, Bavaria, 47.9 N",
    from: "global and diffuse light measured on the level, ground 0.20",
    planes: planesOf(holzkirchenRuns("measured")),
  },
  {
    station: "Ny-Alesund, Svalbard, 78.9 N",
    from: "global light measured on the level, diffuse by Engerer 2015, ground light measured",
    planes: planesOf([...nyAlesundRuns(45, "engerer"), ...nyAlesundRuns(90, "engerer")]),
  },
];
