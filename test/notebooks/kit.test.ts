import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkPlan } from "../../lib/plan/index.ts";
import { notebookFiles } from "../../notebooks/kit/build/notebook-files.ts";
import { NOTEBOOK_ORDER } from "../../notebooks/kit/notebook-order.ts";
import { DEMOS, FIRST_DEMO } from "../../notebooks/kit/plan/demos.ts";
import type { Field } from "../../notebooks/kit/plan/field.ts";
import { fragmentOf, planOfFragment } from "../../notebooks/kit/plan/link.ts";
import {
  otherZone,
  withMappedZone,
  withPlaceMoved,
  withZoneOfPlace,
} from "../../notebooks/kit/plan/moved-place.ts";
import { type Path, valueAt, withValue } from "../../notebooks/kit/plan/path.ts";
import { asNumber, numbersIn, withoutUnit } from "../../notebooks/kit/plan/reading.ts";
import { SECTIONS } from "../../notebooks/kit/plan/section-list.ts";
import { celsius, fahrenheit, lengthText, typedLengthMm } from "../../notebooks/kit/units.ts";

describe("paths", () => {
  const plan = { site: { name: "a" }, stand: { legs: [{ name: "x" }, { name: "y" }] } };

  test("read, change, add and take out, and leave what they were given as it was", () => {
    expect(valueAt(plan, ["stand", "legs", 1, "name"])).toBe("y");
    expect(valueAt(plan, ["loads", 0, "name"])).toBeUndefined();
    expect(withValue(plan, ["stand", "legs", 1, "name"], "z")).toEqual({
      site: { name: "a" },
      stand: { legs: [{ name: "x" }, { name: "z" }] },
    });
    expect(withValue(plan, ["stand", "legs", 0], undefined)).toEqual({
      site: { name: "a" },
      stand: { legs: [{ name: "y" }] },
    });
    expect(withValue(plan, ["site", "name"], undefined)).toEqual({ site: {}, stand: plan.stand });
    expect(withValue({}, ["stand", "legs", 0, "name"], "new")).toEqual({
      stand: { legs: [{ name: "new" }] },
    });
    expect(plan.stand.legs).toHaveLength(2);
  });

  test("what is put at a path is found there", () => {
    const key = fc.constantFrom<string | number>("a", "b", 0);
    fc.assert(
      fc.property(fc.array(key, { minLength: 1, maxLength: 4 }), fc.integer(), (path, value) => {
        expect(valueAt(withValue({}, path, value), path)).toBe(value);
      }),
    );
  });
});

describe("links", () => {
  test("carry any plan there and back, in letters an address may hold", async () => {
    await fc.assert(
      fc.asyncProperty(fc.dictionary(fc.string(), fc.jsonValue()), async (given) => {
        const fragment = await fragmentOf(given);
        expect(fragment).toMatch(/^#plan=[\w-]+$/);
        expect(JSON.stringify(await planOfFragment(fragment))).toBe(JSON.stringify(given));
      }),
      { numRuns: 50 },
    );
  });

  test("without a plan are none, and one that was cut short says so", async () => {
    expect(await planOfFragment("")).toBeNull();
    expect(await planOfFragment("#limits")).toBeNull();
    const whole = await fragmentOf(FIRST_DEMO.given);
    await expect(planOfFragment(whole.slice(0, whole.length / 2))).rejects.toThrow(/cut short/);
  });
});

describe("units", () => {
  test("a number with its field's own unit is read; with another it is kept, to be refused", () => {
    expect(asNumber(withoutUnit("100 W", "W"))).toBe(100);
    expect(asNumber(withoutUnit("57.5°", "°"))).toBe(57.5);
    expect(asNumber(withoutUnit("2,5 ah", "Ah"))).toBe(2.5);
    expect(asNumber(withoutUnit("100 kW", "W"))).toBe("100 kW");
    expect(typedLengthMm("34 cm", "metric")).toBe(340);
    expect(typedLengthMm("13 1/2 in", "metric")).toBeCloseTo(342.9, 9);
  });

  test("a length is read as typed, in the units in use or its own", () => {
    expect(typedLengthMm("300", "metric")).toBe(300);
    expect(typedLengthMm("12", "inch")).toBeCloseTo(304.8, 9);
    expect(typedLengthMm("12 1/2", "inch")).toBeCloseTo(317.5, 9);
    expect(typedLengthMm("12.5 in", "metric")).toBeCloseTo(317.5, 9);
    expect(typedLengthMm("540 mm", "inch")).toBe(540);
    expect(typedLengthMm("long", "metric")).toBeNull();
    expect(lengthText(317.5, "inch")).toBe("12 1/2 in");
  });

  test("degrees Fahrenheit: water freezes at 32 and boils at 212, by definition", () => {
    expect(fahrenheit(0)).toBe(32);
    expect(fahrenheit(100)).toBe(212);
    expect(celsius(fahrenheit(21.5))).toBeCloseTo(21.5, 12);
  });
});

describe("numbers pasted from a table", () => {
  test.each([
    ["0.6\t1.2\t2.5", [0.6, 1.2, 2.5]],
    ["0,6\t1,2\t2,5", [0.6, 1.2, 2.5]],
    ["0.6\n1.2\n2.5\n", [0.6, 1.2, 2.5]],
    ["0.6, 1.2, 2.5", [0.6, 1.2, 2.5]],
    ["0,6; 1,2; 2,5", [0.6, 1.2, 2.5]],
    ["1,2,3", [1, 2, 3]],
    ["Mean | -3.5 | \u22121 | .5", [-3.5, -1, 0.5]],
    ["none at all", []],
    ["", []],
  ])("%j", (text, numbers) => {
    expect(numbersIn(text)).toEqual(numbers);
  });

  test("are read back whatever parts them, as long as it can't be a decimal point", () => {
    const number = fc.double({ min: -99, max: 999, noNaN: true }).map((value) => Number(value.toFixed(2)));
    fc.assert(
      fc.property(
        fc.array(number, { minLength: 2, maxLength: 12 }),
        fc.constantFrom("\t", " ", "\n", "; ", " | "),
        fc.boolean(),
        (values, mark, comma) => {
          const text = values
            .map((value) => (comma ? String(value).replace(".", ",") : String(value)))
            .join(mark);
          expect(numbersIn(text)).toEqual(values.map((value) => value + 0));
        },
      ),
    );
  });
});

describe("the time zone of a place", () => {
  const at = (latitudeDeg: unknown, longitudeDeg: unknown, timeZone?: string) => ({
    site: { latitudeDeg, longitudeDeg, ...(timeZone === undefined ? {} : { timeZone }) },
    season: { from: "2027-03-15", to: "2027-10-15" },
  });
  const zoneOf = (given: unknown): unknown => valueAt(given, ["site", "timeZone"]);
  const hut = at(53.56, 8.59, "Europe/Berlin");

  // Zones by the IANA database's own zone table: Turku goes by Europe/Helsinki, Hobart by Australia/Hobart.
  test("follows the place as long as it was that of the place before", () => {
    expect(zoneOf(withZoneOfPlace(at(60.1, 22.3, "Europe/Berlin"), hut))).toBe("Europe/Helsinki");
    expect(zoneOf(withZoneOfPlace(at(-42.9, 147.3, "Europe/Berlin"), hut))).toBe("Australia/Hobart");
    expect(zoneOf(withZoneOfPlace(at(60.1, 22.3), at(53.56, 8.59)))).toBe("Europe/Helsinki");
  });

  test("keeps its name where the new place has the same clocks", () => {
    expect(zoneOf(withZoneOfPlace(at(48.2, 16.4, "Europe/Berlin"), hut))).toBe("Europe/Berlin");
    expect(otherZone(at(48.2, 16.4, "Europe/Berlin"))).toBeNull();
  });

  test("still follows after a coordinate was half typed", () => {
    const half = withZoneOfPlace(at("", 8.59, "Europe/Berlin"), hut);
    expect(zoneOf(half)).toBe("Europe/Berlin");
    expect(zoneOf(withZoneOfPlace(at(60.1, 22.3, "Europe/Berlin"), half))).toBe("Europe/Helsinki");
  });

  test("stays where it was chosen against the map, which is then told, with the way out", () => {
    const own = at(53.56, 8.59, "Asia/Tokyo");
    const moved = withZoneOfPlace(at(60.1, 22.3, "Asia/Tokyo"), own);
    expect(zoneOf(moved)).toBe("Asia/Tokyo");
    expect(otherZone(moved)).toBe("Europe/Helsinki");
    expect(zoneOf(withMappedZone(moved))).toBe("Europe/Helsinki");
    expect(otherZone(withMappedZone(moved))).toBeNull();
  });

  test("of a plan that states none is whole hours by the sun, and told where clocks differ from it", () => {
    expect(otherZone(at(53.56, 8.59))).toBe("Europe/Berlin");
    expect(otherZone(at(0, -140))).toBeNull();
  });
});

describe("a place that moves", () => {
  const demo = FIRST_DEMO.given;
  const moved = (before: unknown, latitudeDeg: number, longitudeDeg: number): unknown =>
    withPlaceMoved(
      withValue(
        withValue(before, ["site", "latitudeDeg"], latitudeDeg),
        ["site", "longitudeDeg"],
        longitudeDeg,
      ),
      before,
    );

  test("leaves the weather and the height of the old place behind", () => {
    const there = moved(demo, 39.5, -8.4);
    expect(valueAt(there, ["sky"])).toEqual({ source: "climate" });
    expect(valueAt(there, ["site", "elevationM"])).toBeUndefined();
    expect(valueAt(there, ["site", "timeZone"])).toBe("Europe/Lisbon");
  });

  test("keeps them where it moves a few miles only", () => {
    const near = moved(demo, 53.6, 8.7);
    expect(valueAt(near, ["sky"])).toEqual(valueAt(demo, ["sky"]));
    expect(valueAt(near, ["site", "elevationM"])).toBe(valueAt(demo, ["site", "elevationM"]));
  });

  test("keeps weather that was chosen for it from elsewhere", () => {
    const chosen = withValue(moved(demo, 39.5, -8.4), ["sky"], valueAt(demo, ["sky"]));
    expect(valueAt(moved(chosen, 39.6, -8.4), ["sky"])).toEqual(valueAt(demo, ["sky"]));
  });
});

describe("the plan panel", () => {
  test("every demo plan can be read", () => {
    expect(DEMOS.length).toBeGreaterThanOrEqual(3);
    for (const { id, given } of DEMOS) {
      const reading = checkPlan(given);
      expect(reading.ok ? [] : reading.problems, id).toEqual([]);
    }
  });

  interface PlacedField {
    readonly field: Field;
    /** Where its section or list item stands. */
    readonly base: Path;
  }

  const placed = (fields: readonly Field[], base: Path): readonly PlacedField[] =>
    fields.flatMap((field) =>
      field.kind === "list" ? placed(field.fields, [...base, ...field.path, 0]) : [{ field, base }],
    );

  const all = SECTIONS.flatMap(({ fields }) => placed(fields, []));
  const demo = checkPlan(FIRST_DEMO.given);
  if (!demo.ok) throw new Error("the demo plan can't be read");

  /** What a plan becomes by each choice that a field offers; long lists (time zones, weather files) are left out. */
  const chosen = (given: unknown, { field, base }: PlacedField): readonly unknown[] => {
    if (!(field.when?.(valueAt(given, base)) ?? true)) return [];
    if (field.kind === "variant") {
      return field.variants.map(({ make }) => withValue(given, base, make(valueAt(given, base), demo.plan)));
    }
    if (field.kind !== "choice" || field.choices.length > 12) return [];
    return field.choices.map(({ value }) => withValue(given, [...base, ...field.path], value));
  };

  /** The demo plan, and what it becomes by one choice and by one within that. */
  const first = all.flatMap((one) => chosen(FIRST_DEMO.given, one));
  const second = first.flatMap((given) =>
    all.filter(({ field }) => field.kind === "variant").flatMap((one) => chosen(given, one)),
  );
  /** Twelve typed months stand two choices deep and have choices of their own. */
  const third = second
    .filter((given) => valueAt(given, ["sky", "from", "kind"]) === "months")
    .slice(0, 1)
    .flatMap((given) => all.flatMap((one) => chosen(given, one)));
  const plans = [FIRST_DEMO.given, ...first, ...second, ...third];

  test("every field stands for something that the library knows", () => {
    const stated = all.filter(({ field }) => field.path.length > 0);
    expect(stated.length).toBeGreaterThan(25);
    for (const { field, base } of stated) {
      const path = [...base, ...field.path];
      const where = path.join(".");
      const plan = plans.find((one) => field.when?.(valueAt(one, base)) ?? true);
      expect(plan, `${where} applies to some plan`).toBeDefined();
      const reading = checkPlan(withValue(plan, path, []));
      expect(reading.ok, where).toBe(false);
      const words = reading.ok ? "" : reading.problems.map(({ allowed }) => allowed).join(" ");
      expect(words, where).not.toMatch(/is not a key of a plan here/);
      expect(words, where).not.toBe("");
    }
  });
});

test("every notebook but the front page is on the way through them, and the other way round", () => {
  const files = notebookFiles().filter((file) => file !== "index.html");
  expect([...files].sort()).toEqual(NOTEBOOK_ORDER.map(({ file }) => file).sort());
});
