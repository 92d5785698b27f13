import { resolve } from "node:path";
import type { Plan } from "../plan/plan.ts";
import { type PlanSkies, skiesOfPlan } from "../season/light/skies-of-plan.ts";
import { planClimates } from "./climate-tables.ts";
import { checkPlainFile, LARGEST_WEATHER_BYTES, readTextFile } from "./read-file.ts";

/**
 * Makes the skies that a plan asks for, reading the files it names.
 *
 * @param folder what file names in the plan are relative to
 * @throws PlanError when a file can't be read or used
 */
export const planSkies = async (plan: Plan, folder: string): Promise<PlanSkies> => {
  const { sky } = plan;
  switch (sky.source) {
    case "clear":
      return skiesOfPlan(plan, null);
    case "climate":
      return skiesOfPlan(plan, null, await planClimates(sky.from, folder));
    case "weather": {
      const textOf = async (file: string): Promise<string> => {
        await checkPlainFile(resolve(folder, file));
        return readTextFile(resolve(folder, file), LARGEST_WEATHER_BYTES);
      };
      const airCsv = sky.airFile === undefined ? null : await textOf(sky.airFile);
      return skiesOfPlan(plan, await textOf(sky.file), undefined, airCsv);
    }
  }
};
