import type { PlaneColumns } from "../../plane/columns.ts";
import type { DomeColumns } from "../../plane/dome-columns.ts";
import type { Glass } from "../../plane/glass.ts";
import { groundView } from "../../plane/incidence.ts";
import type { SunColumns } from "../../sun/columns.ts";
import { clampedAcos, toDegrees } from "../../units/angle.ts";

/** What a panel that always faces the sun sees at each row; the same under every sky. */
interface SunFacingViews {
  readonly sky: Float64Array;
  readonly band: Float64Array;
  readonly ground: Float64Array;
  readonly skyPasses: Float64Array;
  readonly groundPasses: Float64Array;
}

const viewsOf = (sun: SunColumns, dome: DomeColumns, glass: Glass): SunFacingViews => {
  const column = () => new Float64Array(sun.length);
  const views = {
    sky: column(),
    band: column(),
    ground: column(),
    skyPasses: column(),
    groundPasses: column(),
  };
  for (let row = 0; row < sun.length; row += 1) {
    const tiltDeg = toDegrees(clampedAcos(sun.up[row]));
    const aim = { tiltDeg, bearingDeg: toDegrees(Math.atan2(sun.east[row], sun.north[row])) };
    views.sky[row] = dome.viewOfSky(aim);
    views.band[row] = dome.viewOfBand(aim);
    views.ground[row] = groundView(tiltDeg);
    views.skyPasses[row] = glass.sky(tiltDeg);
    views.groundPasses[row] = glass.ground(tiltDeg);
  }
  return views;
};

/**
 * Makes the function that lays light on a panel turned square to the sun at every row: no stand can do it, so it is what
 * all re-aiming is measured against.
 *
 * @param dome any dome of the season: what is seen over the horizon is the same in all
 * @returns fills and returns `out`, W/m2
 */
export const facingSunOver = (
  sun: SunColumns,
  dome: DomeColumns,
  glass: Glass,
): ((dome: DomeColumns, out: PlaneColumns) => PlaneColumns) => {
  const views = viewsOf(sun, dome, glass);
  return ({ beam, circumsolar, dome: evenly, horizon, ground }, out) => {
    for (let row = 0; row < sun.length; row += 1) {
      const spread = evenly[row] * views.sky[row] + horizon[row] * views.band[row];
      const dark = circumsolar[row] + spread < 0;
      const fromSun = beam[row] + (dark ? 0 : circumsolar[row]);
      const fromSky = dark ? 0 : spread;
      const fromGround = ground[row] * views.ground[row];
      out.plane[row] = fromSun + fromSky + fromGround;
      out.absorbed[row] = fromSun + fromSky * views.skyPasses[row] + fromGround * views.groundPasses[row];
    }
    return out;
  };
};
