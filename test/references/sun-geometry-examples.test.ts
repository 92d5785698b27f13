import { expect, test } from "vitest";
import { unseenExamples } from "./comparisons/sun-examples.ts";

test("every worked example of sun geometry is compared, or named as another algorithm's inner step", () => {
  expect(unseenExamples()).toEqual([]);
});
