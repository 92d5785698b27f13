import type { Plan } from "../../plan/plan.ts";
import type { SunColumns } from "../../sun/columns.ts";
import { MINUTE_MS } from "../../units/time.ts";
import { type SwapAnswer, swapCalendar } from "../legs/swap-calendar.ts";
import { aimEnergyOver } from "../legs/tilt-ladder.ts";
import { type AimPlan, aimByDay, heldAim } from "../light/aim-plan.ts";
import type { PanelUnit } from "../light/panel-unit.ts";
import type { Setting } from "../light/settings.ts";
import type { SeasonSkies } from "../light/skies.ts";
import { reaim } from "./reaim.ts";

/**
 * The legs used through a season: the setting that the swap calendar has on each day, the stand facing as planned. The
 * calendar goes by what dates usually bring: nobody changes legs by weather that is still to come.
 */
export const legsInUse = (
  skies: SeasonSkies,
  onStand: readonly PanelUnit[],
  settings: readonly Setting[],
): AimPlan => {
  const ofDay = new Uint8Array(skies.sun.days.length);
  for (const { setting, first, end } of calendarOver(skies, onStand, settings).stays) {
    ofDay.fill(setting, first, end);
  }
  return aimByDay(skies.sun, settings, ofDay);
};

/** The one setting that brings most when it is never changed, the stand facing as planned. */
export const bestLegForGood = (
  skies: SeasonSkies,
  onStand: readonly PanelUnit[],
  settings: readonly Setting[],
): AimPlan => heldAim(settings[calendarOver(skies, onStand, settings).forgetSetting]);

const calendarOver = (
  skies: SeasonSkies,
  onStand: readonly PanelUnit[],
  settings: readonly Setting[],
): SwapAnswer => {
  // A fixed panel stands in for one of its kind on legs, where none is on the stand yet.
  const energy = aimEnergyOver(
    skies,
    onStand.map((unit) => ({ ...unit, fixedAim: null })),
  );
  return swapCalendar(settings.map(({ tiltDeg, bearingDeg }) => energy(tiltDeg, bearingDeg)));
};

/** The stand turned after the sun: each month's best routine with at most so many aims a day. */
export const turnedAfterSun = (
  plan: Pick<Plan, "site" | "stand" | "aiming">,
  skies: SeasonSkies,
  onStand: readonly PanelUnit[],
  aimsADay: number,
): AimPlan => {
  const { sun } = skies;
  const aiming = { ...plan.aiming, mostAims: aimsADay };
  const [, ...months] = reaim({ ...plan, aiming }, skies, onStand).periods;
  const aims: Setting[] = [];
  const numberOf = (setting: Setting): number => {
    const at = aims.findIndex(
      (aim) => aim.tiltDeg === setting.tiltDeg && aim.bearingDeg === setting.bearingDeg,
    );
    return at === -1 ? aims.push(setting) - 1 : at;
  };
  const ofRow = new Uint8Array(sun.length);
  for (const { period, routines } of months) {
    const { parts } = routines[routines.length - 1];
    const numbers = parts.map(({ setting }) => numberOf(setting));
    fillRows(sun, period, parts, numbers, ofRow);
  }
  return { aims, ofRow };
};

const fillRows = (
  { days, timeMs }: SunColumns,
  period: { readonly first: number; readonly end: number },
  parts: readonly { readonly fromMinutes: number; readonly toMinutes: number }[],
  numbers: readonly number[],
  ofRow: Uint8Array,
): void => {
  for (const { first, end, noonMs } of days.slice(period.first, period.end)) {
    for (let row = first; row < end; row += 1) {
      const minutes = (timeMs[row] - noonMs) / MINUTE_MS;
      const part = parts.findIndex(({ toMinutes }) => minutes < toMinutes);
      ofRow[row] = numbers[part === -1 ? parts.length - 1 : part];
    }
  }
};
