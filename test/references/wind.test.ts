import { expect, test } from "vitest";
import { beaufortOf } from "../../lib/stand/beaufort.ts";
import { inputsOf, readReference } from "./read.ts";

// The limits themselves are in `comparisons/wind.ts`; here each must be read back as its own force.
test.each(readReference("wind.csv").filter(({ example }) => example === "Beaufort"))("$case_id", (row) => {
  expect(beaufortOf(Number(row.expected)).force).toBe(Number(inputsOf(row).force));
});
