import type { Plan } from "../../plan/plan.ts";
import type { SettingFacts } from "../../season/legs/legs-answer.ts";
import { beaufortOf } from "../../stand/beaufort.ts";
import { standPanels } from "../../stand/stand-panel.ts";
import type { Steadiness } from "../../stand/steadiness.ts";
import { stowing } from "../../stand/stow.ts";
import { steadyAt } from "../words/steady-words.ts";
import { energyColumn, legInchesColumn, legMmColumn, settingColumn, tiltColumns } from "./setting-columns.ts";
import type { Column, Table } from "./table.ts";

/** One setting of the stand and all that is known of it. */
export interface LegRow extends SettingFacts {
  readonly steady: Steadiness;
  readonly stows: boolean;
}

const COLUMNS: readonly Column<LegRow>[] = [
  settingColumn(({ setting }) => setting.name),
  legMmColumn(({ setting }) => setting.legMm),
  legInchesColumn(({ setting }) => setting.legMm),
  ...tiltColumns<LegRow>(({ setting }) => setting.tiltDeg),
  energyColumn(
    "season_Wh",
    "season",
    "Energy of the panels on the stand when this setting is kept all season.",
    ({ totalWh }) => totalWh,
  ),
  energyColumn("mean_Wh_a_day", "a day", "The same for a mean day.", ({ tolerance }) => tolerance[0].dayWh),
  energyColumn(
    "per_mm_Wh_a_day",
    "1 mm of leg costs, a day",
    "What a leg 1 mm too long or too short costs on a mean day, the worse of the two.",
    ({ tolerance }) => tolerance[0].perMmWh,
    2,
  ),
  energyColumn(
    "per_degree_Wh_a_day",
    "1° of tilt costs, a day",
    "What a tilt 1 degree off costs on a mean day, the worse of the two.",
    ({ tolerance }) => tolerance[0].perDegWh,
    2,
  ),
  {
    name: "stows",
    title: "stows",
    datatype: "boolean",
    says: "Whether the leg stows inside the frame.",
    value: ({ stows }) => stows,
  },
  {
    name: "holds_wind_m_s",
    title: "may move above",
    unit: "metres per second",
    datatype: "decimal",
    says: "Mean wind at 10 m, as a forecast states it, above which the stand may move when it is only set down: an estimate with a safety factor of 1.5, rounded down. Stake it, and bring it in above that.",
    value: ({ steady }) => Math.floor(steady.forecastMs),
    decimals: 0,
  },
  {
    name: "holds_beaufort",
    title: "Beaufort",
    datatype: "string",
    says: "Beaufort force and name of that wind.",
    value: ({ steady }) => {
      const { force, name } = beaufortOf(Math.floor(steady.forecastMs));
      return `${force} ${name}`;
    },
  },
  {
    name: "moves_first",
    title: "moves first",
    datatype: "string",
    says: "What the stand does first when the wind is too strong.",
    value: ({ steady }) => steady.first,
  },
  {
    name: "ballast_kg",
    title: "ballast",
    unit: "kilograms",
    datatype: "decimal",
    says: "Ballast that would hold the wind of the plan's stand.steadying.holdWindMs with the same safety, half on the bottom edge and half on the leg's foot; empty where none does.",
    value: ({ steady }) => steady.ballastKg && Math.ceil(steady.ballastKg),
    decimals: 0,
  },
];

/** The settings of a plan's stand: lengths, both readings, yields, tolerances, stowing and wind. */
export const legsTable = (plan: Plan, settings: readonly SettingFacts[]): Table<LegRow> => {
  const stow = stowing(plan.stand, standPanels(plan).shortestMm);
  return {
    title: "Settings of the stand",
    key: ["setting"],
    columns: COLUMNS,
    rows: settings.map((facts) => ({
      ...facts,
      steady: steadyAt(plan, facts.setting.tiltDeg),
      stows: facts.setting.legMm === null || facts.setting.legMm <= stow.limitMm,
    })),
  };
};
