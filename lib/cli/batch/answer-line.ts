import { createHash } from "node:crypto";
import { readPlanText } from "../../plan/read-plan.ts";
import { totalWh } from "../../season/light/day-sums.ts";
import { panelUnits } from "../../season/light/panel-unit.ts";
import type { SeasonCloud } from "../../season/light/season-cloud.ts";
import { type SeasonYield, seasonYield } from "../../season/light/season-yield.ts";
import { seasonBands, type TotalBand } from "../../season/light/sequences.ts";
import { settingsOf } from "../../season/light/settings.ts";
import { isRough } from "../../sky/climate/place/plan-climate.ts";
import { PlanError, problemLine } from "../../units/problem.ts";
import { changedPlan, type PlanChanges } from "../plan-options.ts";
import { planSkies } from "../plan-skies.ts";
import type { BatchAnswer, BatchResult, SettingTotal } from "./result.ts";

/** One line to be answered, what is changed in every plan, and the folder that plans' files are relative to. */
export interface LineTask {
  readonly number: number;
  readonly text: string | null;
  readonly changes: PlanChanges;
  readonly folder: string;
}

/** Fingerprint of what is asked: an input line, and what is changed in its plan. */
export const fingerprint = (text: string | null, changes: PlanChanges): string => {
  const given = Object.entries(changes).filter(([, value]) => value !== undefined);
  return createHash("sha256")
    .update(text ?? "")
    .update(given.length === 0 ? "" : JSON.stringify(given))
    .digest("hex")
    .slice(0, 16);
};

const bandOf = (band: TotalBand | undefined) => ({
  p10_Wh: band === undefined ? null : Math.round(band.p10Wh),
  p50_Wh: band === undefined ? null : Math.round(band.p50Wh),
  p90_Wh: band === undefined ? null : Math.round(band.p90Wh),
});

const settingTotals = (yields: SeasonYield, cloud: SeasonCloud | null): readonly SettingTotal[] => {
  const { settings, best } = yields;
  const bands = cloud === null ? [] : seasonBands(yields, cloud);
  return settings.map(({ setting, clearWh, expectedWh }, index) => ({
    setting: setting.name,
    tilt_deg: Number(setting.tiltDeg.toFixed(1)),
    bearing_deg: Number(setting.bearingDeg.toFixed(1)),
    clear_Wh: Math.round(totalWh(clearWh)),
    expected_Wh: expectedWh === null ? null : Math.round(totalWh(expectedWh)),
    ...bandOf(bands[index]),
    days_best: best.reduce((days, winner) => days + (winner === index ? 1 : 0), 0),
  }));
};

const climateWords = ({ chosen }: SeasonCloud): string => `${isRough(chosen) ? "rough: " : ""}${chosen.says}`;

const answerPlan = async (text: string, changes: PlanChanges, folder: string): Promise<BatchAnswer> => {
  const plan = changedPlan(readPlanText(text), changes);
  const { skies, notes, cloud } = await planSkies(plan, folder);
  return {
    plan: plan.name,
    latitude_deg: plan.site.latitudeDeg,
    longitude_deg: plan.site.longitudeDeg,
    from: plan.season.from,
    to: plan.season.to,
    sky: plan.sky.source,
    climate: cloud === null ? null : climateWords(cloud),
    settings: settingTotals(seasonYield(skies, panelUnits(plan.panels), settingsOf(plan)), cloud),
    notes,
  };
};

const NOT_UTF8 = "\ufffd";

/** Answers one line. What is wrong with its plan is a result too; so is a fault of our own, which must not stop the others. */
export const answerLine = async ({ number, text, changes, folder }: LineTask): Promise<BatchResult> => {
  const stamp = { line: number, sha256: fingerprint(text, changes) };
  if (text === null) return { ...stamp, problems: ["the line is too long to be a plan"] };
  if (text.includes(NOT_UTF8))
    return { ...stamp, problems: ["the line is not UTF-8 text: save the file again as UTF-8"] };
  try {
    return { ...stamp, ...(await answerPlan(text, changes, folder)) };
  } catch (error) {
    if (error instanceof PlanError) return { ...stamp, problems: error.problems.map(problemLine) };
    const said = error instanceof Error ? error.message : String(error);
    return { ...stamp, problems: [`it could not be worked out, a fault of this program: ${said}`] };
  }
};
