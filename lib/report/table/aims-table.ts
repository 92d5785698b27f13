import type { Reaim, ReaimPeriod } from "../../season/aiming/reaim.ts";
import { compassBearing } from "../../sun/magnetic.ts";
import { type CardPlace, northOf, walkWords } from "../words/aim-card.ts";
import { bearingColumn, settingColumn, tiltColumn, writtenBearing } from "./setting-columns.ts";
import { type Column, csvText, type Table } from "./table.ts";

/** One aim of one routine in one period. The limit has a row of its own, without an aim. */
export interface AimRow {
  readonly period: string;
  readonly routine: string;
  readonly aim: number;
  readonly from: string | null;
  readonly setting: string | null;
  readonly tiltDeg: number | null;
  readonly bearingDeg: number | null;
  readonly compassDeg: number | null;
  readonly expectedDayWh: number | null;
  readonly clearDayWh: number | null;
  readonly gainWh: number | null;
}

/** Names of the routines, as the table writes them. */
export const NOON_ROUTINE = "facing noon";
export const LIMIT_ROUTINE = "facing the sun";
export const routineName = (aims: number): string => (aims === 1 ? "1 aim" : `${aims} aims`);

const rowsOf = (
  place: CardPlace,
  { period, noon, routines, limitDayWh }: ReaimPeriod,
  cloudIn: boolean,
): readonly AimRow[] => {
  const north = northOf(place, period);
  const named = [
    { name: NOON_ROUTINE, routine: noon, before: null },
    ...routines.map((routine, index) => ({
      name: routineName(index + 1),
      routine,
      before: index === 0 ? noon : routines[index - 1],
    })),
  ];
  const aimed = named.flatMap(({ name, routine, before }) =>
    routine.parts.map(({ setting, fromMinutes }, index): AimRow => {
      const flat = setting.legMm === null;
      return {
        period: period.name,
        routine: name,
        aim: index + 1,
        from: index === 0 ? null : walkWords(place, period, fromMinutes),
        setting: setting.name,
        tiltDeg: setting.tiltDeg,
        bearingDeg: flat ? null : setting.bearingDeg,
        compassDeg:
          flat || north.needle === "useless"
            ? null
            : compassBearing(setting.bearingDeg, north.declinationDeg),
        expectedDayWh: cloudIn ? routine.dayWh : null,
        clearDayWh: routine.clearDayWh,
        gainWh: before === null ? null : routine.dayWh - before.dayWh,
      };
    }),
  );
  const limit: AimRow = {
    period: period.name,
    routine: LIMIT_ROUTINE,
    aim: 1,
    from: null,
    setting: null,
    tiltDeg: null,
    bearingDeg: null,
    compassDeg: null,
    expectedDayWh: cloudIn ? limitDayWh : null,
    clearDayWh: cloudIn ? null : limitDayWh,
    gainWh: limitDayWh - routines[routines.length - 1].dayWh,
  };
  return [...aimed, limit];
};

const COLUMNS: readonly Column<AimRow>[] = [
  {
    name: "period",
    title: "period",
    datatype: "string",
    says: "The whole season, kept to one routine, or a calendar month (year-month) with its own.",
    value: ({ period }) => period,
  },
  {
    name: "routine",
    title: "routine",
    datatype: "string",
    says: "How often the panel is turned: facing noon (lower end), at most 1, 2, 3 or 4 aims a day, or facing the sun (turned at every moment to where most light comes from, flatter under cloud: a limit that no stand reaches).",
    value: ({ routine }) => routine,
  },
  {
    name: "aim",
    title: "aim",
    datatype: "integer",
    says: "Number of the aim within the day.",
    value: ({ aim }) => aim,
  },
  {
    name: "from_clock",
    title: "walk out at",
    datatype: "string",
    says: "Clock time in the site's zone at which it is set, to five minutes; empty for the first aim, which is set the evening before.",
    value: ({ from }) => from,
  },
  settingColumn(({ setting }) => setting),
  tiltColumn(({ tiltDeg }) => tiltDeg),
  bearingColumn(({ bearingDeg }) => bearingDeg),
  {
    name: "compass_deg",
    title: "by compass",
    unit: "degrees",
    datatype: "integer",
    says: "The same bearing from magnetic north (World Magnetic Model, at the middle of the period); empty where a compass is of no use.",
    value: ({ compassDeg }) => (compassDeg === null ? null : writtenBearing(compassDeg, 0)),
  },
  {
    name: "expected_Wh_a_day",
    title: "expected a day",
    unit: "watt-hours",
    datatype: "integer",
    says: "Mean energy of a day on the routine with cloud included; empty when only the clear sky is known.",
    value: ({ expectedDayWh }) => expectedDayWh,
  },
  {
    name: "clear_Wh_a_day",
    title: "clear sky a day",
    unit: "watt-hours",
    datatype: "integer",
    says: "Mean energy of a day on the routine under a clear sky: an upper bound.",
    value: ({ clearDayWh }) => clearDayWh,
  },
  {
    name: "gain_Wh_a_day",
    title: "gain a day",
    unit: "watt-hours",
    datatype: "integer",
    says: "How much more the routine brings than the one before it, for one walk more.",
    value: ({ gainWh }) => gainWh,
  },
];

/** Routines by period, a row for each aim. */
export const aimsTable = ({ periods, cloudIn }: Reaim, place: CardPlace): Table<AimRow> => ({
  title: "Aims of a day and what they bring",
  columns: COLUMNS,
  rows: periods.flatMap((period) => rowsOf(place, period, cloudIn)),
  key: ["period", "routine", "aim"],
});

/** The aims as CSV. */
export const aimsCsv = (answer: Reaim, place: CardPlace): string => csvText(aimsTable(answer, place));
