import { mean } from "d3";
import type { Plan } from "../../plan/plan.ts";
import { type CuttingSheet, cuttingSheet } from "../../stand/cutting-sheet.ts";
import { namedLegs } from "../../stand/settings.ts";
import { standPanels } from "../../stand/stand-panel.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import { type DayRoutine, type Reaim, reaim } from "../aiming/reaim.ts";
import { standSeason } from "../legs/stand-season.ts";
import { type SwapRow, swapRows } from "../legs/swap-rows.ts";
import { type SwapsAnswer, swapsAnswer } from "../legs/swaps-answer.ts";
import type { PanelUnit } from "../light/panel-unit.ts";
import type { Period } from "../light/periods.ts";
import { judgedWh, seasonYield } from "../light/season-yield.ts";
import { settingsOf } from "../light/settings.ts";
import type { SeasonSkies } from "../light/skies.ts";
import { type MonthExpectation, monthExpectations } from "./month-expectations.ts";

/** The turning that a sheet spells out: one routine for the whole season. */
export interface Turning {
  readonly period: Period;
  readonly routine: DayRoutine;
  /** Mean of a day on the routine, and of one spent facing noon, Wh: panels on the stand. */
  readonly dayWh: number;
  readonly noonWh: number;
}

/** All that a person takes along for a season, on one page. */
export interface FieldSheet {
  readonly plan: Plan;
  readonly days: readonly SeasonDay[];
  /** Bearing that the stand faces, degrees from true north. */
  readonly facingDeg: number;
  readonly cutting: CuttingSheet;
  readonly swaps: readonly SwapRow[];
  /** Turning the panel in the course of the day; `null` where none is asked for, or none pays. */
  readonly turning: Turning | null;
  readonly months: readonly MonthExpectation[];
  /** Mean of all days of the season with the legs changed as the sheet says, Wh. */
  readonly dayWh: number;
  readonly cloudIn: boolean;
}

/** Fewer aims than this are no turning. */
const LEAST_AIMS = 2;

/** For each day, which setting the swap calendar has in use. */
const settingInUse = ({ calendar, days }: SwapsAnswer): Uint8Array => {
  const inUse = new Uint8Array(days.length);
  for (const { setting, first, end } of calendar.stays) inUse.fill(setting, first, end);
  return inUse;
};

const turningOf = ({ periods }: Reaim, aims: number): Turning | null => {
  const [{ period, routines, noon }] = periods;
  const routine: DayRoutine | undefined = routines[aims - 1];
  if (routine === undefined || routine.parts.length < LEAST_AIMS) return null;
  return { period, routine, dayWh: routine.dayWh, noonWh: noon.dayWh };
};

/**
 * What the field sheet of a plan says: its legs, the swap calendar, when to turn, and what to expect.
 *
 * @param aims aims a day to spell out, 1 (no turning) to 4
 * @param onProgress told how much of the aims is tried, 0 to 1
 * @throws PlanError when no panel is on the stand, a leg can't stand, or a piece is longer than all stock
 */
export const fieldSheet = (
  plan: Plan,
  skies: SeasonSkies,
  units: readonly PanelUnit[],
  aims: number,
  onProgress?: (share: number) => void,
): FieldSheet => {
  const season = standSeason(plan, skies, units);
  const swaps = swapsAnswer(season);
  const yields = seasonYield(skies, units, settingsOf(plan));
  const inUse = settingInUse(swaps);
  const { days } = skies.sun;
  const answer =
    aims < LEAST_AIMS
      ? null
      : reaim({ ...plan, aiming: { ...plan.aiming, mostAims: aims } }, skies, units, onProgress);
  return {
    plan,
    days,
    facingDeg: season.facingDeg,
    cutting: cuttingSheet(plan.stand, standPanels(plan).shortestMm, namedLegs(plan.stand)),
    swaps: swapRows(swaps),
    turning: answer && turningOf(answer, aims),
    months: monthExpectations(yields, inUse),
    dayWh: mean(days, (_, day) => judgedWh(yields.settings[inUse[day]])[day]) ?? 0,
    cloudIn: skies.expected.length > 0,
  };
};
