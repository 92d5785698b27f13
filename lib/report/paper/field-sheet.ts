import { mean, quantile } from "d3";
import type { Plan } from "../../plan/plan.ts";
import { heightM } from "../../plan/site.ts";
import { type DayRoutine, type Reaim, reaim } from "../../season/aiming/reaim.ts";
import { standSeason } from "../../season/legs/stand-season.ts";
import { type SwapsAnswer, swapsAnswer } from "../../season/legs/swaps-answer.ts";
import type { PanelUnit } from "../../season/light/panel-unit.ts";
import { judgedWh, type SeasonYield, seasonYield } from "../../season/light/season-yield.ts";
import { settingsOf } from "../../season/light/settings.ts";
import type { SeasonSkies } from "../../season/light/skies.ts";
import { type CuttingSheet, cuttingSheet } from "../../stand/cutting-sheet.ts";
import { namedLegs } from "../../stand/settings.ts";
import { standPanels } from "../../stand/stand-panel.ts";
import { WIND_CAUTION } from "../../stand/steadiness.ts";
import { magneticDeclination } from "../../sun/magnetic.ts";
import { type SwapRow, swapRows } from "../table/swaps-table.ts";
import { type AimCardLine, aimCard, cardPlace } from "../words/aim-card.ts";
import { circuitCautions } from "../words/circuit-cautions.ts";
import { compassWords } from "../words/plain-directions.ts";

/** What a month can be expected to bring with the legs changed as the sheet says. Wh a day, all panels. */
export interface MonthExpectation {
  /** `2027-06`. */
  readonly month: string;
  readonly meanWh: number;
  /** Nine days in ten bring more than p10, one in ten more than p90; `null` when only the clear sky is known. */
  readonly p10Wh: number | null;
  readonly p90Wh: number | null;
}

/** All that a person takes along for a season, on one page. */
export interface FieldSheet {
  readonly plan: Plan;
  readonly facingDeg: number;
  /** The facing as a compass shows it, with how far that can be trusted. */
  readonly compass: string;
  readonly cutting: CuttingSheet;
  readonly swaps: readonly SwapRow[];
  readonly lastDate: string;
  /** Turning it in the course of the day: the routine, what it brings, and what facing noon all day brings. */
  readonly turning: {
    readonly lines: readonly AimCardLine[];
    readonly dayWh: number;
    readonly noonWh: number;
  } | null;
  readonly months: readonly MonthExpectation[];
  /** Mean of all days of the season with the legs changed as the sheet says, Wh. */
  readonly dayWh: number;
  readonly cloudIn: boolean;
  readonly cautions: readonly string[];
}

/** Fewer walks than this are no turning. */
const LEAST_AIMS = 2;

/** For each day, which setting the swap calendar has in use. */
const settingInUse = ({ calendar, days }: SwapsAnswer): Uint8Array => {
  const inUse = new Uint8Array(days.length);
  for (const { setting, first, end } of calendar.stays) inUse.fill(setting, first, end);
  return inUse;
};

/**
 * What each month brings when every day has the setting that is in use on it: the mean, and the spread of single days
 * over the month's days and all expected skies (each sky counted by its share).
 */
export const monthExpectations = (
  { days, settings, weights }: SeasonYield,
  inUse: Uint8Array,
): readonly MonthExpectation[] => {
  const months = [...new Set(days.map(({ date }) => date.slice(0, 7)))];
  // Skies of unequal share are repeated in proportion, to whole parts of the least likely one.
  const least = Math.min(...weights);
  const copies = weights.map((weight) => Math.max(1, Math.round(weight / least)));
  return months.map((month): MonthExpectation => {
    const own = days.flatMap(({ date }, day) => (date.startsWith(month) ? [day] : []));
    const expected = own.map((day) => judgedWh(settings[inUse[day]])[day]);
    const single = own.flatMap((day) =>
      settings[inUse[day]].underEachSky.flatMap((dayWh, sky) => Array<number>(copies[sky]).fill(dayWh[day])),
    );
    return {
      month,
      meanWh: mean(expected) ?? 0,
      p10Wh: quantile(single, 0.1) ?? null,
      p90Wh: quantile(single, 0.9) ?? null,
    };
  });
};

const turningOf = (
  plan: Plan,
  skies: SeasonSkies,
  { periods }: Reaim,
  aims: number,
): FieldSheet["turning"] => {
  const [season] = periods;
  const routine: DayRoutine | undefined = season.routines[aims - 1];
  if (routine === undefined || routine.parts.length < LEAST_AIMS) return null;
  return {
    lines: aimCard(cardPlace(plan.site, skies.sun.days), season.period, routine),
    dayWh: routine.dayWh,
    noonWh: season.noon.dayWh,
  };
};

/**
 * The field sheet of a plan: its legs, the swap calendar, where to face, when to turn, what to expect, and the cautions.
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
  const middle = days[Math.floor(days.length / 2)];
  const { latitudeDeg, longitudeDeg } = plan.site;
  const north = magneticDeclination(latitudeDeg, longitudeDeg, heightM(plan.site), middle.noonMs);
  const answer =
    aims < LEAST_AIMS
      ? null
      : reaim({ ...plan, aiming: { ...plan.aiming, mostAims: aims } }, skies, units, onProgress);
  return {
    plan,
    facingDeg: season.facingDeg,
    compass: compassWords(season.facingDeg, north),
    cutting: cuttingSheet(plan.stand, standPanels(plan).shortestMm, namedLegs(plan.stand)),
    swaps: swapRows(swaps),
    lastDate: days[days.length - 1].date,
    turning: answer && turningOf(plan, skies, answer, aims),
    months: monthExpectations(yields, inUse),
    dayWh: mean(days, (_, day) => judgedWh(yields.settings[inUse[day]])[day]) ?? 0,
    cloudIn: skies.expected.length > 0,
    cautions: [WIND_CAUTION, ...circuitCautions(plan)],
  };
};
