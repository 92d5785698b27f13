import type { Field, Variant } from "../field.ts";
import { valueAt, withValue } from "../path.ts";

/** The forms in which a climate's light can be stated, with how it is asked for; the units are those the library takes. */
const LIGHT = [
  {
    form: "globalKWhM2",
    label: "mean light of a day, kWh/m²",
    asked: "Global radiation on the level, mean of a day",
    unit: "kWh/m² a day",
  },
  {
    form: "globalMJM2",
    label: "mean light of a day, MJ/m²",
    asked: "Global radiation on the level, mean of a day",
    unit: "MJ/m² a day",
  },
  { form: "clearness", label: "clearness index", asked: "Clearness index", unit: "0 to 1" },
  {
    form: "sunshineHours",
    label: "hours of bright sunshine",
    asked: "Bright sunshine in the whole month",
    unit: "hours",
  },
] as const;

type Form = (typeof LIGHT)[number]["form"];

/** A megajoule is 1/3.6 kWh, by definition. */
const MJ_PER_KWH = 3.6;

const FROM = ["sky", "from"] as const;

/** Twelve months that are still to be typed in. */
export const NO_MONTHS_YET = { kind: "months", globalKWhM2: [] } as const;

const stated = (item: unknown, key: string): unknown => valueAt(item, [...FROM, key]);

const has =
  (key: string) =>
  (item: unknown): boolean =>
    stated(item, key) !== undefined;

/** Scaled numbers, rounded to what was stated; what is no number stays as it is. */
const scaled = (values: unknown, factor: number): readonly unknown[] =>
  Array.isArray(values)
    ? values.map((value: unknown) =>
        typeof value === "number" ? Number((value * factor).toPrecision(4)) : value,
      )
    : [];

/** The same light in another unit where that can be told, else months to be typed in anew. */
const inForm = (item: unknown, form: Form): readonly unknown[] => {
  if (form === "globalMJM2" && has("globalKWhM2")(item))
    return scaled(stated(item, "globalKWhM2"), MJ_PER_KWH);
  if (form === "globalKWhM2" && has("globalMJM2")(item))
    return scaled(stated(item, "globalMJM2"), 1 / MJ_PER_KWH);
  return [];
};

const asForm = (item: unknown, form: Form): unknown => {
  if (has(form)(item)) return item;
  const bare = LIGHT.reduce((given, other) => withValue(given, [...FROM, other.form], undefined), item);
  return withValue(bare, [...FROM, form], inForm(item, form));
};

const hasAir = (item: unknown): boolean => has("airLowC")(item) || has("airHighC")(item);

const withAir = (item: unknown, values: readonly unknown[] | undefined): unknown =>
  withValue(withValue(item, [...FROM, "airLowC"], values), [...FROM, "airHighC"], values);

/** A climate of twelve typed numbers for the light, and twelve lows and highs for the air where they are known. */
export const monthsFields: readonly Field[] = [
  {
    kind: "variant",
    path: [],
    label: "The twelve numbers are",
    variants: LIGHT.map(
      ({ form, label }): Variant => ({ label, is: has(form), make: (item) => asForm(item, form) }),
    ),
  },
  ...LIGHT.map(
    ({ form, asked, unit }): Field => ({
      kind: "months",
      path: [...FROM, form],
      label: asked,
      unit,
      when: has(form),
      says: "Twelve numbers copied from a table can be pasted into January all at once.",
    }),
  ),
  {
    kind: "variant",
    path: [],
    label: "Warmth of the air",
    variants: [
      {
        label: "not known: the same all year",
        is: (item) => !hasAir(item),
        make: (item) => withAir(item, undefined),
      },
      {
        label: "lows and highs of each month",
        is: hasAir,
        make: (item) => (hasAir(item) ? item : withAir(item, [])),
      },
    ],
    says: "The warmer the cells, the less they bring.",
  },
  {
    kind: "months",
    path: [...FROM, "airLowC"],
    label: "Lowest of a day, mean of the month",
    unit: "°C",
    temperature: true,
    when: hasAir,
    says: "Twelve numbers copied from a table can be pasted into January all at once.",
  },
  {
    kind: "months",
    path: [...FROM, "airHighC"],
    label: "Highest of a day, mean of the month",
    unit: "°C",
    temperature: true,
    when: hasAir,
    says: "Twelve numbers copied from a table can be pasted into January all at once.",
  },
  {
    kind: "temperature",
    path: ["air", "temperatureC"],
    label: "Air by day, all year",
    when: (item) => !hasAir(item) && !Array.isArray(valueAt(item, ["air", "temperatureC"])),
  },
];
