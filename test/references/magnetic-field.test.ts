/** What goes with the declinations checked in `comparisons/magnetic-field.ts`: the model's name, and whether a needle is of use. */
import { expect, test } from "vitest";
import { magneticRows, northOf } from "./comparisons/magnetic-field.ts";

test.each(magneticRows.map((row) => [row.case_id, row] as const))("%s", (_, row) => {
  const north = northOf(row);
  expect(north.model.replace("-", "")).toBe(row.model);
  const level = Number(row.horizontal_intensity_nT);
  expect(north.needle).toBe(level < 2000 ? "useless" : level < 6000 ? "unsteady" : "steady");
});
