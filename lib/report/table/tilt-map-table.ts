import { bestTilts, type TiltLadder } from "../../season/legs/tilt-ladder.ts";
import { energyColumn, tiltColumns } from "./setting-columns.ts";
import type { Table } from "./table.ts";

/** One day of the tilt-by-date map: its best tilt, and what that and a few others bring. */
export interface TiltMapRow {
  readonly date: string;
  readonly bestTiltDeg: number;
  readonly bestWh: number;
  /** Wh at 0, 15, 30 ... 90 degrees. */
  readonly everyFifteenWh: readonly number[];
}

const FIFTEENS = [0, 15, 30, 45, 60, 75, 90] as const;

const rowsOf = (ladder: TiltLadder): readonly TiltMapRow[] => {
  const best = bestTilts(ladder);
  const columns = FIFTEENS.map((tilt) => ladder.dayWh[ladder.tiltsDeg.indexOf(tilt)]);
  return ladder.days.flatMap(({ date }, day): TiltMapRow[] =>
    Number.isNaN(best[day])
      ? []
      : [
          {
            date,
            bestTiltDeg: best[day],
            bestWh: Math.max(...ladder.dayWh.map((column) => column[day])),
            everyFifteenWh: columns.map((column) => column[day]),
          },
        ],
  );
};

/**
 * The numbers behind the tilt-by-date map. A day without sun is left out: every tilt brings nothing.
 *
 * @param ladder gives the map; called only when the rows are looked at
 */
export const tiltMapTable = (ladder: () => TiltLadder): Table<TiltMapRow> => {
  let rows: readonly TiltMapRow[] | undefined;
  return {
    title: "Watt-hours a day by date and tilt",
    key: ["date"],
    get rows() {
      rows ??= rowsOf(ladder());
      return rows;
    },
    columns: [
      {
        name: "date",
        title: "date",
        datatype: "date",
        says: "Civil date of the day's solar noon.",
        value: ({ date }) => date,
      },
      ...tiltColumns<TiltMapRow>(({ bestTiltDeg }) => bestTiltDeg),
      energyColumn("best_Wh", "best", "What the best tilt brings that day.", ({ bestWh }) => bestWh),
      ...FIFTEENS.map((tilt, index) =>
        energyColumn<TiltMapRow>(
          `tilt_${tilt}_Wh`,
          `at ${tilt}°`,
          `What a tilt of ${tilt} degrees from the ground brings that day.`,
          ({ everyFifteenWh }) => everyFifteenWh[index],
        ),
      ),
    ],
  };
};
