import { createHash } from "node:crypto";
import { PlanError, problemLine } from "../../plan/problem.ts";
import { readPlanText } from "../../plan/read-plan.ts";
import { totalWh } from "../../season/day-sums.ts";
import { panelUnits } from "../../season/panel-unit.ts";
import { type SeasonYield, seasonYield } from "../../season/season-yield.ts";
import { settingsOf } from "../../season/settings.ts";
import { planSkies } from "../plan-skies.ts";
import type { BatchAnswer, BatchResult, SettingTotal } from "./result.ts";

/** One line to be answered, and the folder that its plan's files are relative to. */
export interface LineTask {
  readonly number: number;
  readonly text: string | null;
  readonly folder: string;
}

/** Fingerprint of an input line. */
export const fingerprint = (text: string | null): string =>
  createHash("sha256")
    .update(text ?? "")
    .digest("hex")
    .slice(0, 16);

const settingTotals = ({ settings, best }: SeasonYield): readonly SettingTotal[] =>
  settings.map(({ setting, clearWh, expectedWh }, index) => ({
    setting: setting.name,
    tilt_deg: Number(setting.tiltDeg.toFixed(1)),
    bearing_deg: Number(setting.bearingDeg.toFixed(1)),
    clear_Wh: Math.round(totalWh(clearWh)),
    expected_Wh: expectedWh === null ? null : Math.round(totalWh(expectedWh)),
    days_best: best.reduce((days, winner) => days + (winner === index ? 1 : 0), 0),
  }));

const answerPlan = async (text: string, folder: string): Promise<BatchAnswer> => {
  const plan = readPlanText(text);
  const { skies, notes } = await planSkies(plan, folder);
  return {
    plan: plan.name,
    latitude_deg: plan.site.latitudeDeg,
    longitude_deg: plan.site.longitudeDeg,
    from: plan.season.from,
    to: plan.season.to,
    sky: plan.sky.source,
    settings: settingTotals(seasonYield(skies, panelUnits(plan.panels), settingsOf(plan))),
    notes,
  };
};

/** Answers one line. What is wrong with its plan is a result too; only a fault of our own throws. */
export const answerLine = async ({ number, text, folder }: LineTask): Promise<BatchResult> => {
  const stamp = { line: number, sha256: fingerprint(text) };
  if (text === null) return { ...stamp, problems: ["the line is too long to be a plan"] };
  try {
    return { ...stamp, ...(await answerPlan(text, folder)) };
  } catch (error) {
    if (error instanceof PlanError) return { ...stamp, problems: error.problems.map(problemLine) };
    throw error;
  }
};
