import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { SLIPS } from "./slip-list.ts";

test("there are at least 60 slips, each of which can still be put into the code in just one place", () => {
  expect(SLIPS.length).toBeGreaterThanOrEqual(60);
  const lost = SLIPS.filter(
    ({ file, from }) =>
      readFileSync(new URL(`../../${file}`, import.meta.url), "utf8").split(from).length !== 2,
  );
  expect(lost.map(({ file, from }) => `${file}: ${from}`)).toEqual([]);
});
