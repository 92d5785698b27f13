import Papa from "papaparse";
import { expect, test } from "vitest";
import { csvText, seasonCsv, seasonTable, type Table, tableMetadata } from "../../lib/report/index.ts";
import { aPlan, yieldsOf } from "./a-season.ts";

const HEADER = "date,setting,tilt_deg,bearing_deg,sun_hours,clear_Wh,expected_Wh,best";

const parsed = (csv: string) =>
  Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });

test("has the promised header, CRLF line ends, a row for each day and setting", () => {
  const csv = seasonCsv(yieldsOf(aPlan(), () => 0.5));
  expect(csv.split("\r\n")[0]).toBe(HEADER);
  expect(csv.endsWith("\r\n")).toBe(true);
  expect(csv.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  const { data, errors } = parsed(csv);
  expect(errors).toEqual([]);
  expect(data).toHaveLength(20 * 3);
});

test("a table without rows is its header, one line", () => {
  const { rows: _, ...rest } = seasonTable(yieldsOf(aPlan()));
  expect(csvText({ ...rest, rows: [] })).toBe(`${HEADER}\r\n`);
});

test("marks exactly one setting best on each day, the one with the most", () => {
  const { data } = parsed(seasonCsv(yieldsOf(aPlan(), () => 0.5)));
  const dates = [...new Set(data.map(({ date }) => date))];
  expect(dates).toHaveLength(20);
  for (const date of dates) {
    const day = data.filter((row) => row.date === date);
    const best = day.filter((row) => row.best === "true");
    expect(best).toHaveLength(1);
    const most = Math.max(...day.map((row) => Number(row.expected_Wh)));
    expect(Number(best[0]?.expected_Wh)).toBe(most);
  }
});

test("leaves expected empty under clear skies, and never says NaN", () => {
  const csv = seasonCsv(yieldsOf(aPlan()));
  expect(new Set(parsed(csv).data.map((row) => row.expected_Wh))).toEqual(new Set([""]));
  expect(csv).not.toMatch(/NaN|Infinity|undefined|null/);
});

test("text that a spreadsheet would take for a formula is neutralised; numbers are never touched", () => {
  const csv = seasonCsv(yieldsOf(aPlan()));
  expect(csv).toContain("'=HIGH()");
  const table: Table<{ readonly name: string; readonly value: number }> = {
    title: "made up",
    key: ["name"],
    rows: ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "plain, with comma", 'quote "d"'].map((name) => ({
      name,
      value: -2.5,
    })),
    columns: [
      { name: "name", title: "name", datatype: "string", says: "text", value: ({ name }) => name },
      {
        name: "value",
        title: "value",
        datatype: "decimal",
        says: "number",
        value: ({ value }) => value,
        decimals: 1,
      },
    ],
  };
  const { data } = parsed(csvText(table));
  expect(data.map((row) => row.name)).toEqual([
    "'=1+1",
    "'+1",
    "'-1",
    "'@SUM(A1)",
    "'\tx",
    "plain, with comma",
    'quote "d"',
  ]);
  expect(new Set(data.map((row) => row.value))).toEqual(new Set(["-2.5"]));
});

test("refuses to write a number that is none", () => {
  const broken: Table<number> = {
    title: "broken",
    key: [],
    rows: [1, Number.NaN],
    columns: [
      { name: "energy_Wh", title: "energy", datatype: "integer", says: "energy", value: (row) => row },
    ],
  };
  expect(() => csvText(broken)).toThrow(/csvText: expected a finite energy_Wh in row 2, received NaN/);
});

// "Metadata Vocabulary for Tabular Data", W3C Recommendation 17 December 2015, sections 5.3 to 5.6 and 6.4.
test("metadata follow the W3C vocabulary and describe the very columns of the file", () => {
  const table = seasonTable(yieldsOf(aPlan(), () => 0.5));
  const metadata = JSON.parse(
    JSON.stringify(
      tableMetadata(table, "season.csv", { plan: { name: "x" }, models: ["a", "b"], version: "1.2.3" }),
    ),
  );
  expect(metadata["@context"]).toEqual(["http://www.w3.org/ns/csvw", { "@language": "en" }]);
  expect(metadata.url).toBe("season.csv");
  const { columns, primaryKey } = metadata.tableSchema;
  expect(columns.map((column: { name: string }) => column.name)).toEqual(HEADER.split(","));
  expect(columns.map((column: { titles: string[] }) => column.titles[0])).toEqual(HEADER.split(","));
  expect(primaryKey).toEqual(["date", "setting"]);
  expect(metadata).not.toHaveProperty("rdfs:comment");
  const noted = tableMetadata(table, "season.csv", { plan: {}, models: [], notes: ["Rough."], version: "1" });
  expect(noted["rdfs:comment"]).toEqual(["Rough."]);
  const byName = Object.fromEntries(columns.map((column: { name: string }) => [column.name, column]));
  expect(byName.tilt_deg["schema:unitText"]).toBe("degrees");
  expect(byName.expected_Wh["schema:unitText"]).toBe("watt-hours");
  expect(byName.date.datatype).toEqual({ base: "date", format: "yyyy-MM-dd" });
  expect(byName.best.datatype).toEqual({ base: "boolean", format: "true|false" });
  for (const column of columns) expect(column["dc:description"].length).toBeGreaterThan(10);
  expect(metadata.notes).toEqual([{ plan: { name: "x" } }]);
  expect(metadata["dc:creator"]).toBe("panel-season 1.2.3");
});
