import { expect, test } from "vitest";
import { NO_LOSSES, shareLeft } from "../../lib/panel/index.ts";

test("losses are taken from what the others left", () => {
  expect(shareLeft(NO_LOSSES)).toBe(1);
  expect(shareLeft({ dust: 0.5, other: 0.5 })).toBe(0.25);
  expect(shareLeft({ dust: 0.1, other: 0.2 })).toBeCloseTo(0.72, 12);
  expect(shareLeft({ ...NO_LOSSES, dust: 1 })).toBe(0);
});

test("a loss beyond 0 to 1 is refused by name", () => {
  expect(() => shareLeft({ ...NO_LOSSES, dust: 3 })).toThrow(
    new RangeError("shareLeft: expected dust loss 0 to 1, received 3"),
  );
  expect(() => shareLeft({ ...NO_LOSSES, other: -0.01 })).toThrow("other loss");
  expect(() => shareLeft({ ...NO_LOSSES, other: Number.NaN })).toThrow("received NaN");
});
