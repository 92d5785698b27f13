import type { DayCurves } from "../../season/light/day-curves.ts";
import { clockHours, clockText } from "../words/day-clock.ts";
import { settingColumn } from "./setting-columns.ts";
import type { Table } from "./table.ts";

/** One step of a day under one setting. */
export interface DayRow {
  readonly date: string;
  readonly clock: string;
  readonly setting: string;
  readonly watts: number;
  readonly planeWm2: number;
}

/** One day through the hours, a row for each step and setting. */
export const dayTable = (curves: DayCurves, timeZone: string): Table<DayRow> => {
  const clock = Array.from(clockHours(curves, timeZone), clockText);
  return {
    title: `Power and light through ${curves.day.date}`,
    key: ["date", "clock", "setting"],
    rows: clock.flatMap((time, row) =>
      curves.curves.map(({ setting, watts, planeWm2 }) => ({
        date: curves.day.date,
        clock: time,
        setting: setting.name,
        watts: watts[row],
        planeWm2: planeWm2[row],
      })),
    ),
    columns: [
      {
        name: "date",
        title: "date",
        datatype: "date",
        says: "Civil date of the day's solar noon.",
        value: ({ date }) => date,
      },
      {
        name: "clock",
        title: "clock",
        datatype: "string",
        says: "Middle of the step on the site's clock, as it stands at that day's solar noon.",
        value: ({ clock: time }) => time,
      },
      settingColumn(({ setting }) => setting),
      {
        name: "power_W",
        title: "power",
        unit: "watts",
        datatype: "integer",
        says: "All panels together.",
        value: ({ watts }) => watts,
      },
      {
        name: "plane_W_m2",
        title: "light on the plane",
        unit: "watts per square metre",
        datatype: "integer",
        says: "Plane irradiance, before the glass.",
        value: ({ planeWm2 }) => planeWm2,
      },
    ],
  };
};
