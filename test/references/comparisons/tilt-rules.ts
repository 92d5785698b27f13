/** Trade rules for the tilt: NREL's map note, Marion & Wilcox 1994, Lorenzo. The energies behind them are checked with the seasons. */
import {
  latitudeTilt,
  lorenzoRelativeLight,
  lorenzoTilt,
  summerTilt,
  winterTilt,
} from "../../../lib/stand/angle-rules.ts";
import { readReference } from "../read.ts";
import { absolute, type Comparison } from "./comparison.ts";
import { idOf, inputReader, numberOf } from "./fields.ts";

const rows = readReference("trade-rules.csv");

const RULES: Readonly<
  Record<string, { readonly tilt: (latitudeDeg: number) => number; readonly at45: number }>
> = {
  latitude: { tilt: latitudeTilt, at45: 45 },
  "latitude-15": { tilt: summerTilt, at45: 30 },
  "latitude+15": { tilt: winterTilt, at45: 60 },
};

export const tiltRules: readonly Comparison[] = [
  {
    quantity: "latitude rules at 45 N",
    reference: "NREL; 45, 30 and 60: common practice, no source",
    unit: "degrees",
    cause: "exact",
    count: 3,
    cases: () =>
      rows
        .filter(({ example }) => example === "rule")
        .map((row) => {
          const rule = RULES[row.expected ?? ""];
          if (rule === undefined) throw new Error(`${idOf(row)}: unknown rule ${row.expected}`);
          return absolute(idOf(row), rule.tilt(45), rule.at45, 0);
        }),
  },
  {
    quantity: "tilt that is best for the year",
    reference: "Lorenzo, in Luque & Hegedus, chapter 22, evaluated",
    unit: "degrees",
    cause: "one printed decimal",
    count: 2,
    cases: () =>
      rows
        .filter(({ quantity }) => quantity === "annual_optimum_tilt")
        .map((row) =>
          absolute(idOf(row), lorenzoTilt(inputReader(row)("latitude_deg")), numberOf(row, "expected"), 0.05),
        ),
  },
  {
    quantity: "a year's light at another tilt against the best",
    reference: "Lorenzo, in Luque & Hegedus, chapter 22, evaluated",
    unit: "1",
    cause: "three printed decimals",
    count: 18,
    cases: () =>
      rows
        .filter(({ quantity }) => quantity === "annual_relative_to_optimum")
        .map((row) => {
          const input = inputReader(row);
          const optimum = lorenzoTilt(input("latitude_deg"));
          return absolute(
            idOf(row),
            lorenzoRelativeLight(input("surface_tilt_deg"), optimum),
            numberOf(row, "expected"),
            0.0005,
          );
        }),
  },
];
