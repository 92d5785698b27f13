/** The 30-year solar radiation manual: planes of two places from their horizontal months. */
import { readReference } from "../read.ts";
import { expectedOnPlanes, type MonthErrors, monthErrors, type Place, yearOver } from "./place.ts";

const rows = readReference("tilted-climate.csv");
const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export interface ManualPlane {
  readonly name: string;
  /** As the manual calls it: `latitude-15`, `latitude`, `latitude+15`, `90`. */
  readonly tilt: string;
  readonly tiltDeg: number;
  readonly errors: MonthErrors;
}

/** Every plane of the manual that is here: our months from the horizontal means alone, against its own. */
export const manualPlanes = (): readonly ManualPlane[] =>
  [...new Set(rows.map(({ station }) => station))].flatMap((name) => {
    const own = rows.filter(({ station }) => station === name);
    const [first] = own;
    const place: Place = {
      name,
      latitudeDeg: Number(first.latitude_deg),
      longitudeDeg: Number(first.longitude_deg_east),
      elevationM: Number(first.elevation_m),
      year: 1975, // the middle of 1961-1990
      ground: 0.2,
    };
    const monthly = (tilt: string, column: string): readonly number[] =>
      MONTH_DAYS.map((_, index) => {
        const row = own.find((each) => each.tilt_name === tilt && Number(each.month) === index + 1);
        return row === undefined ? Number.NaN : Number(row[column]);
      });
    const tilts = [...new Set(own.map(({ tilt_name }) => tilt_name))];
    const level = monthly(tilts[0], "global_horizontal_daily_kWh_per_m2");
    const aims = tilts.map((tilt) => ({
      tiltDeg: Number(own.find(({ tilt_name }) => tilt_name === tilt)?.surface_tilt_deg),
      bearingDeg: Number(first.surface_bearing_deg),
    }));
    const ours = expectedOnPlanes(yearOver(place), place, level, aims);
    return tilts.map((tilt, index) => ({
      name,
      tilt,
      tiltDeg: aims[index].tiltDeg,
      errors: monthErrors(
        ours[index],
        monthly(tilt, "plane_total_daily_kWh_per_m2").map((day, month) => day * MONTH_DAYS[month]),
      ),
    }));
  });
