import { expect, test } from "vitest";
import { bearingColumn, writtenBearing } from "../../lib/report/table/setting-columns.ts";
import { csvText } from "../../lib/report/table/table.ts";

test("a bearing that rounds up to 360 is written as north, 0", () => {
  expect(writtenBearing(359.6, 0)).toBe(0);
  expect(writtenBearing(359.4, 0)).toBe(359);
  expect(writtenBearing(359.96, 1)).toBe(0);
  expect(writtenBearing(360, 1)).toBe(0);
  expect(writtenBearing(-90, 1)).toBe(270);
  const table = {
    title: "bearings",
    key: ["bearing_deg"],
    columns: [bearingColumn<number | null>((bearing) => bearing)],
    rows: [359.96, 187.25, null],
  };
  expect(csvText(table)).toBe("bearing_deg\r\n0\r\n187.3\r\n\r\n");
});
