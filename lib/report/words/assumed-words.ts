import { type CompleteNameplate, completeNameplate } from "../../plan/nameplate.ts";
import type { Plan } from "../../plan/plan.ts";
import { listWords } from "./words.ts";

type Assumed = CompleteNameplate["assumed"][number];

/** Each value of a nameplate as a plate prints it: name, decimals, unit. */
const PRINTED: Readonly<Record<Assumed, readonly [name: string, decimals: number, unit: string]>> = {
  powerW: ["power", 0, "W"],
  vmpV: ["Vmp", 1, "V"],
  impA: ["Imp", 2, "A"],
  vocV: ["Voc", 1, "V"],
  iscA: ["Isc", 2, "A"],
  powerPctPerK: ["coefficient of power", 2, "%/K"],
  vocPctPerK: ["coefficient of Voc", 2, "%/K"],
  iscPctPerK: ["coefficient of Isc", 2, "%/K"],
};

/** What had to be assumed of each panel's nameplate, a sentence for each panel that leaves something out. */
export const assumedWords = ({ panels }: Pick<Plan, "panels">): readonly string[] =>
  panels.flatMap(({ name, module }) => {
    const plate = completeNameplate(module);
    const values = plate.assumed.map((key) => {
      const [printed, decimals, unit] = PRINTED[key];
      return `${printed} ${plate[key]?.toFixed(decimals)} ${unit}`;
    });
    return values.length === 0
      ? []
      : [`${name}: not stated, and taken as usual: ${listWords(values)}. Better read them off the plate.`];
  });
