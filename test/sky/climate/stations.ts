import type { ClimateStation } from "../../../lib/sky/climate/station.ts";
import type { Problem } from "../../../lib/units/problem.ts";
import { PlanError } from "../../../lib/units/problem.ts";

export const twelve = (value: number): number[] => new Array<number>(12).fill(value);

/** Months that count from a first value up, one by one: each can be told from the others. */
export const counted = (first: number, step = 1): number[] =>
  Array.from({ length: 12 }, (_, month) => first + step * month);

/** An invented place at 50 N 8 E, 100 m up, whose light is half of what arrives above the air. */
export const station = (over: Partial<ClimateStation> = {}): ClimateStation => ({
  id: "inn",
  place: "Inn",
  country: "",
  latitudeDeg: 50,
  longitudeDeg: 8,
  elevationM: 100,
  source: "typical year",
  light: { kind: "clearness", index: twelve(0.5) },
  air: null,
  wind: null,
  dayMemory: null,
  ...over,
});

/** The complaints that some work ends in; none when it ends well. */
export const complaintsOf = (work: () => unknown): readonly Problem[] => {
  try {
    work();
    return [];
  } catch (error) {
    if (error instanceof PlanError) return error.problems;
    throw error;
  }
};
