/**
 * What the default step costs in accuracy: daily energy against a run at 1 minute, on every day of a year, at five
 * latitudes, for aims all round. The step must hold 0.3 % of the day, or 2 Wh/m2 where that is more.
 */
import { describe, expect, test } from "vitest";
import type { SkyToPlane } from "../../../lib/plan/sky.ts";
import { domeColumns, emptyPlaneColumns, martinRuizGlass, planeColumns } from "../../../lib/plane/index.ts";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { DEFAULT_STEP_MINUTES, sunColumns } from "../../../lib/sun/index.ts";
import type { Aim } from "../../../lib/units/angle.ts";

const ALLOWED_SHARE = 0.003;
const ALLOWED_WH_M2 = 2;

const glass = martinRuizGlass();
const air = clearAirOf({ turbidity: "standard", waterCm: undefined, ozoneCm: 0.32 }, 0);

const AIMS: readonly Aim[] = [0, 15, 30, 45, 60, 75, 90].flatMap((tiltDeg) =>
  Array.from({ length: tiltDeg === 0 ? 1 : 24 }, (_, i) => ({ tiltDeg, bearingDeg: 15 * i })),
);

/** Light through the glass on each day of 2027, Wh/m2, for any aim. */
const dayLight = (latitudeDeg: number, stepMinutes: number, model: SkyToPlane) => {
  const sun = sunColumns(
    { latitudeDeg, longitudeDeg: 15, timeZone: "Etc/GMT-1" },
    { from: "2027-01-01", to: "2027-12-31" },
    stepMinutes,
  );
  const dome = domeColumns(sun, clearSkyColumns(sun, air, 0.2, { airC: 10, windMs: 2 }), model);
  const light = emptyPlaneColumns(sun.length);
  return (aim: Aim): readonly number[] => {
    planeColumns(sun, dome, aim, glass, light);
    return sun.days.map(({ first, end }) => {
      let sum = 0;
      for (let row = first; row < end; row += 1) sum += light.absorbed[row] * sun.hours[row];
      return sum;
    });
  };
};

describe.each(["perez", "isotropic"] as const)("the default step, %s sky", (model) => {
  test.each([0, 35, 52, 66, 78, -35])("holds at latitude %i, every day, every aim", (latitudeDeg) => {
    const atDefault = dayLight(latitudeDeg, DEFAULT_STEP_MINUTES, model);
    const atOneMinute = dayLight(latitudeDeg, 1, model);
    let worst = { share: 0, says: "" };
    for (const aim of AIMS) {
      const fine = atOneMinute(aim);
      atDefault(aim).forEach((energy, day) => {
        const share = Math.abs(energy - fine[day]) / Math.max(ALLOWED_WH_M2, ALLOWED_SHARE * fine[day]);
        if (share > worst.share)
          worst = {
            share,
            says: `tilt ${aim.tiltDeg} bearing ${aim.bearingDeg} day ${day + 1}: ${energy} against ${fine[day]}`,
          };
      });
    }
    expect(worst.share, worst.says).toBeLessThan(1);
    expect(worst.share).toBeGreaterThan(0);
  });
});
