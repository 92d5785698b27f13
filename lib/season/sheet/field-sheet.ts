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
import { changingPays, keptSetting } from "../legs/worthwhile.ts";
import type { PanelUnit } from "../light/panel-unit.ts";
import type { Period } from "../light/periods.ts";
import { judgedWh, seasonYield } from "../light/season-yield.ts";
import { type Setting, settingsOf } from "../light/settings.ts";
import type { SeasonSkies } from "../light/skies.ts";
import { intoBattery } from "./into-battery.ts";
import { type MonthExpectation, monthExpectations } from "./month-expectations.ts";

/** The turning that a sheet may spell out: one routine for the whole season. */
export interface Turning {
  readonly period: Period;
  readonly routine: DayRoutine;
  /** Mean of what all panels make on a day, Wh: those on the stand turned, fixed ones as they are. */
  readonly dayWh: number;
  /** Whether it brings enough more than changing legs by the calendar. */
  readonly pays: boolean;
}

/** All that a person takes along for a season, on one page. */
export interface FieldSheet {
  readonly plan: Plan;
  readonly days: readonly SeasonDay[];
  /** Bearing that the stand faces on the first leg in use, degrees from true north. */
  readonly facingDeg: number;
  readonly cutting: CuttingSheet;
  readonly swaps: readonly SwapRow[];
  /** The setting to leave the stand on where the changes bring too little, and the share they bring more; `null` where they pay. */
  readonly kept: { readonly setting: Setting; readonly moreShare: number } | null;
  /** Turning the panel in the course of the day; `null` where none is asked for, or one aim is the best. */
  readonly turning: Turning | null;
  readonly months: readonly MonthExpectation[];
  /** Means of all days of the season with the legs changed as the sheet says, Wh: what all panels make, and what of it the circuit can put into the battery. */
  readonly panelsDayWh: number;
  readonly batteryDayWh: number;
  readonly cloudIn: boolean;
}

/** Fewer aims than this are no turning. */
const LEAST_AIMS = 2;

/** Share that turning must bring more than the calendar to be worth its walks (our own choice). */
const LEAST_GAIN = 0.02;

/** Where the stand faces on the first leg in use; flat all season, as the plan has it. */
const firstFacing = ({ calendar, settings }: SwapsAnswer): number => {
  const used = calendar.stays.map(({ setting }) => settings[setting]);
  return (used.find(({ legMm }) => legMm !== null) ?? used[0]).bearingDeg;
};

/** For each day, which setting the swap calendar has in use. */
const settingInUse = ({ calendar, days }: SwapsAnswer): Uint8Array => {
  const inUse = new Uint8Array(days.length);
  for (const { setting, first, end } of calendar.stays) inUse.fill(setting, first, end);
  return inUse;
};

const keptOf = (answer: SwapsAnswer): FieldSheet["kept"] => {
  const { calendar, settings } = answer;
  if (calendar.swaps.length === 0 || changingPays(answer)) return null;
  const { index, totalWh } = keptSetting(answer);
  return { setting: settings[index], moreShare: calendar.totalWh / totalWh - 1 };
};

/** Mean of a day of some panels that no hand moves, Wh. */
const fixedDayWh = (skies: SeasonSkies, units: readonly PanelUnit[], anySetting: Setting): number => {
  const fixed = units.filter(({ fixedAim }) => fixedAim !== null);
  if (fixed.length === 0) return 0;
  return mean(judgedWh(seasonYield(skies, fixed, [anySetting]).settings[0])) ?? 0;
};

const turningOf = ({ periods }: Reaim, aims: number, fixedWh: number, calendarWh: number): Turning | null => {
  const [{ period, routines }] = periods;
  const routine: DayRoutine | undefined = routines[aims - 1];
  if (routine === undefined || routine.parts.length < LEAST_AIMS) return null;
  const dayWh = routine.dayWh + fixedWh;
  return { period, routine, dayWh, pays: dayWh > (1 + LEAST_GAIN) * calendarWh };
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
  const settings = settingsOf(plan);
  const yields = seasonYield(skies, units, settings);
  const inUse = settingInUse(swaps);
  const { days } = skies.sun;
  const panelsWh = Float64Array.from(days, (_, day) => judgedWh(yields.settings[inUse[day]])[day]);
  const panelsDayWh = mean(panelsWh) ?? 0;
  const battery = intoBattery(plan, skies, settings, inUse);
  const cloudIn = skies.expected.length > 0;
  const answer =
    aims < LEAST_AIMS
      ? null
      : reaim({ ...plan, aiming: { ...plan.aiming, mostAims: aims } }, skies, units, onProgress);
  return {
    plan,
    days,
    facingDeg: firstFacing(swaps),
    cutting: cuttingSheet(plan.stand, standPanels(plan).shortestMm, namedLegs(plan.stand)),
    swaps: swapRows(swaps),
    kept: keptOf(swaps),
    turning: answer && turningOf(answer, aims, fixedDayWh(skies, units, settings[0]), panelsDayWh),
    months: monthExpectations(days, panelsWh, battery, cloudIn),
    panelsDayWh,
    batteryDayWh: battery.reduce((sum, { weight, dayWh }) => sum + weight * (mean(dayWh) ?? 0), 0),
    cloudIn,
  };
};
