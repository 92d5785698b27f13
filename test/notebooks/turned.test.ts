import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { turned } from "../../notebooks/kit/build/turned.ts";
import { turnedBack } from "../../notebooks/kit/weather/turn-back.ts";

describe("a table turned on its side", () => {
  const shipped = ["climates", "weather"].flatMap((folder) =>
    readdirSync(new URL(`../../data/${folder}/`, import.meta.url))
      .filter((name) => name.endsWith(".csv"))
      .map((name) => `${folder}/${name}`),
  );

  test.each(shipped)("%s comes back as it was, to the byte", (name) => {
    const text = readFileSync(new URL(`../../data/${name}`, import.meta.url), "utf8");
    expect(turnedBack(turned(text))).toBe(text.trim());
  });

  test("empty cells, text among numbers, commas and negative fractions too", () => {
    const text = [
      "place,a,b,c,at",
      "Inn,1,-0.5,x,2001-01-01T00:00:00Z",
      '"Hut, upper",,2.25,3,2001-01-01T01:30:00Z',
      "Lake,7,,,2001-01-01T00:30:00Z",
    ].join("\r\n");
    expect(turnedBack(turned(text))).toBe(text);
  });

  test("a tab in a cell cannot be told from the next one and is refused", () => {
    expect(() => turned("a,b\r\n1,x\ty")).toThrow(RangeError);
  });
});
