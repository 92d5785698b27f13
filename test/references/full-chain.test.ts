/** Which of the full-chain scenarios were run: all that may travel, and the one that may not where its file is at hand. */
import { expect, test } from "vitest";
import { fullChain, leftOut, scenarioIds } from "./comparisons/full-chain.ts";

test("there are twelve scenarios, and only the one whose weather may not be shipped can be left out", () => {
  expect(scenarioIds).toHaveLength(12);
  for (const each of leftOut) console.info(each);
  expect(leftOut.filter((each) => !each.startsWith("S19"))).toEqual([]);
});

test.skipIf(leftOut.length > 0)("with the folder of series named, that one is run too", () => {
  const [oneMinute] = fullChain;
  expect(oneMinute?.cases().filter(({ id }) => id.startsWith("S19"))).toHaveLength(4);
});
