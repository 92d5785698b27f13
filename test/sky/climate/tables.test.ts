import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { monthSuns } from "../../../lib/sky/climate/month-sun.ts";
import { monthlyClearness, monthlyGlobal } from "../../../lib/sky/climate/station.ts";
import { parseCheckedTable, parseClimateTable } from "../../../lib/sky/climate/table/climate-table.ts";
import { LIGHT_TABLES } from "../../../lib/sky/climate/world/shipped-climates.ts";
import { PlanError } from "../../../lib/units/problem.ts";
import { shipped, shippedText } from "./shipped.ts";

const MONTHS = Array.from({ length: 12 }, (_, month) => String(month + 1).padStart(2, "0"));

/** A table of one place, invented, about 54 N: a northern year in kWh/m2 a day. */
const NORTHERN = [0.6, 1.2, 2.5, 3.9, 4.9, 5.3, 5.0, 4.3, 3.0, 1.7, 0.8, 0.5];

const table = (
  values: readonly (number | string)[],
  { before = "global_", after = "_kWh_m2_day", latitude = 54 as number | string, more = "" } = {},
): string => {
  const columns = values.map((_, month) => `${before}${MONTHS[month] ?? month + 1}${after}`);
  return `place,latitude_deg,longitude_deg,${columns.join(",")}${more === "" ? "" : `,${more.split("=")[0]}`}\nhut,${latitude},8,${values.join(",")}${more === "" ? "" : `,${more.split("=")[1]}`}\n`;
};

const problemsOf = (csv: string): readonly string[] => {
  try {
    parseClimateTable(csv, "my.csv");
  } catch (error) {
    if (error instanceof PlanError) return error.message.split("\n");
    throw error;
  }
  return [];
};

describe("shipped tables", () => {
  test("hold every station they say, in the units they say", () => {
    expect(shipped.stations).toHaveLength(274 + 39 + 1268 + 668 + 132);
    // What is read without looking is what the careful reader makes of it.
    for (const name of LIGHT_TABLES) {
      expect(parseCheckedTable(shippedText(name), name)).toEqual(parseClimateTable(shippedText(name), name));
    }
    expect(new Set(shipped.stations.map(({ id }) => id)).size).toBe(shipped.stations.length);
    const denver = shipped.stations.find(({ id }) => id === "tmy3-725650");
    expect(denver).toMatchObject({ place: "Denver, CO", country: "United States", source: "typical year" });
    // 1670 kWh/m2 a year in the hours of the same typical year.
    const year = monthlyGlobal(denver!.light, denver!.latitudeDeg).reduce(
      (sum, value, month) => sum + value * monthSuns(0)[month].days,
      0,
    );
    expect(year).toBeGreaterThan(1660);
    expect(year).toBeLessThan(1680);
  });

  test.each([...LIGHT_TABLES, "air-normals", "air-typical-years", "world-clearness", "world-air"])(
    "%s carries its sources, licences and every column's meaning",
    (name) => {
      const sidecar = JSON.parse(
        readFileSync(new URL(`../../../data/climates/${name}.json`, import.meta.url), "utf8"),
      );
      expect(sidecar.file).toBe(`${name}.csv`);
      for (const source of sidecar.sources) expect(source.licence).toMatch(/\S/);
      const headers = shippedText(name).split("\r\n")[0].split(",");
      const documented = Object.keys(sidecar.columns);
      for (const header of headers)
        expect(documented).toContain(header.replace(/_\d\d(?=_|$)/, "_MM").replace(/^at_.*/, "at_LONGITUDE"));
    },
  );

  test("the share-alike file stands alone and says so", () => {
    expect(shippedText("sunshine-stations")).not.toContain("W-ivorycoast");
    const sidecar = readFileSync(
      new URL("../../../data/climates/sunshine-stations-share-alike.json", import.meta.url),
      "utf8",
    );
    expect(sidecar).toContain("CC BY-SA 4.0");
  });

  test("no month of any place is brighter than nine tenths of the light above the air, nor black by day", () => {
    for (const { light, latitudeDeg } of shipped.stations) {
      for (const clearness of monthlyClearness(light, latitudeDeg)) {
        if (Number.isNaN(clearness)) continue;
        expect(clearness).toBeLessThan(0.9);
        expect(clearness).toBeGreaterThanOrEqual(0);
      }
    }
  });
});

describe("parseClimateTable", () => {
  test("reads kWh, MJ, clearness and sunshine alike", () => {
    const suns = monthSuns(54);
    const kWh = parseClimateTable(table(NORTHERN)).stations[0];
    const forms = [
      table(
        NORTHERN.map((value) => value * 3.6),
        { after: "_MJ_m2_day" },
      ),
      table(
        NORTHERN.map((value, month) => value / suns[month].extraterrestrialKWhM2),
        { before: "clearness_", after: "" },
      ),
    ];
    for (const csv of forms) {
      const { light } = parseClimateTable(csv).stations[0];
      for (const [month, value] of monthlyGlobal(light, 54).entries()) {
        expect(value).toBeCloseTo(NORTHERN[month], 10);
      }
    }
    expect(kWh).toMatchObject({ id: "hut", place: "hut", source: "own table", elevationM: null, air: null });
    const hours = [40, 70, 120, 180, 230, 220, 220, 200, 150, 100, 50, 30];
    const sunny = parseClimateTable(table(hours, { before: "sunshine_", after: "_h" })).stations[0];
    expect(sunny.light.kind).toBe("sunshine");
  });

  test("takes semicolons, stray blanks, another order of columns and columns of one's own", () => {
    const csv = table(NORTHERN, { more: "my remark=lovely" }).replaceAll(",", " ; ");
    expect(parseClimateTable(csv).stations).toHaveLength(1);
  });

  test("names the month that is missing", () => {
    expect(problemsOf(table(NORTHERN.slice(0, 11)))).toEqual([
      "my.csv header global_12_kWh_m2_day missing: must be there: twelve months are needed, 01 to 12",
    ]);
    const holed: (number | string)[] = [...NORTHERN];
    holed[4] = "";
    expect(problemsOf(table(holed))[0]).toContain("my.csv row 2 global_05_kWh_m2_day");
    expect(problemsOf(table(holed))[0]).toContain("twelve months are needed");
  });

  test("catches MJ given as kWh by the light above the air", () => {
    const problems = problemsOf(table(NORTHERN.map((value) => value * 3.6)));
    expect(problems.length).toBeGreaterThan(4);
    expect(problems[0]).toContain("global_02_kWh_m2_day".replace("02", problems[0].slice(20, 22)));
    for (const line of problems) {
      expect(line).toContain("all that reaches the top of the air at this latitude");
      expect(line).toContain("these look like MJ/m2 a day");
    }
  });

  test("catches kWh given as MJ by a year darker than any", () => {
    expect(problemsOf(table(NORTHERN, { after: "_MJ_m2_day" }))[0]).toContain("no place is darker");
  });

  test("catches clearness above 1, and per cent", () => {
    const clearness = [0.4, 0.4, 0.45, 1.2, 0.5, 0.5, 0.5, 0.5, 0.5, 0.45, 0.4, 0.4];
    expect(problemsOf(table(clearness, { before: "clearness_", after: "" }))).toEqual([
      "my.csv row 2 clearness_04 1.2: must be a clearness index, 0 to 0.9: no more light than above the air",
    ]);
    const percent = clearness.map((value) => Math.min(70, 100 * value));
    expect(problemsOf(table(percent, { before: "clearness_", after: "" }))[0]).toContain("divide by 100");
  });

  test("catches hours a day given as hours a month, and more sunshine than day", () => {
    const perDay = [1.3, 2.5, 4, 6, 7.4, 7.3, 7, 6.5, 5, 3.2, 1.7, 1];
    expect(problemsOf(table(perDay, { before: "sunshine_", after: "_h" }))[0]).toContain(
      "multiply by the days of the month",
    );
    const tooMany = [40, 70, 120, 180, 230, 600, 220, 200, 150, 100, 50, 30];
    expect(problemsOf(table(tooMany, { before: "sunshine_", after: "_h" }))[0]).toContain(
      "the sun is not up longer in that month",
    );
  });

  test("catches southern data pasted for a northern site, and the other way round", () => {
    const southern = [...NORTHERN.slice(6), ...NORTHERN.slice(0, 6)];
    // At 34 degrees the swapped months stay below the light above the air: only their season gives them away.
    const dim = southern.map((value) => 0.4 * value + 1.5);
    expect(problemsOf(table(dim, { latitude: 34 }))[0]).toContain("the southern half of the Earth");
    expect(problemsOf(table(dim, { latitude: -34 }))).toEqual([]);
    expect(problemsOf(table(southern, { latitude: 54 })).length).toBeGreaterThan(0);
  });

  test("every problem of every row at once", () => {
    const csv = `${table(NORTHERN).trim()}\nfar,99,8,${NORTHERN.join(",")}\nwide,54,200,${NORTHERN.join(",")}\n`;
    expect(problemsOf(csv)).toEqual([
      'my.csv row 3 latitude_deg "99": must be -90 to 90 degrees',
      'my.csv row 4 longitude_deg "200": must be -180 to 180 degrees',
    ]);
  });

  test("says what the header lacks", () => {
    expect(problemsOf("a,b\n1,2\n").join("\n")).toMatch(
      /twelve columns global_01_kWh_m2_day[\s\S]*latitude_deg/,
    );
    expect(problemsOf(table(NORTHERN).split("\n")[0])[0]).toContain("at least one place below its header");
  });
});
