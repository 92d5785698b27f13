import fc from "fast-check";
import { ANALOGY_KINDS } from "../../lib/index.ts";

/** Plans that could be meant: every field in range, sections left out at will. Text and numbers of all sizes. */
const number = (least: number, most: number): fc.Arbitrary<number> =>
  fc.double({ min: least, max: most, noNaN: true });
const whole = (least: number, most: number): fc.Arbitrary<number> => fc.integer({ min: least, max: most });
const name = fc
  .string({ minLength: 1, maxLength: 20 })
  .map((text) => text.replace(/\p{Cc}/gu, " ").trim() || "x");
const optional: { requiredKeys: [] } = { requiredKeys: [] };

const date = whole(0, 365 * 100).map((day) =>
  new Date(Date.UTC(1960, 0, 1 + day)).toISOString().slice(0, 10),
);
const season = fc.tuple(date, whole(0, 6), fc.constantFrom(30, 60)).map(([from, days, stepMinutes]) => ({
  from,
  to: new Date(Date.parse(from) + days * 86_400_000).toISOString().slice(0, 10),
  stepMinutes,
}));

/** Where zones are: a zone of another part of the world is no plan that can be meant. */
const ZONES: Readonly<Record<string, number>> = {
  "Europe/Berlin": 13,
  "Pacific/Apia": -172,
  "Pacific/Kiritimati": -157,
  "America/St_Johns": -53,
};

const anySite = fc.record(
  {
    name,
    latitudeDeg: fc.oneof(number(-90, 90), fc.constantFrom(-90, 90, 0, 66.56, -66.56)),
    longitudeDeg: fc.oneof(number(-180, 180), fc.constantFrom(-180, 180, 0)),
    elevationM: number(-430, 6000),
    timeZone: fc.constantFrom(
      "Europe/Berlin",
      "Pacific/Apia",
      "Pacific/Kiritimati",
      "America/St_Johns",
      "Etc/UTC",
    ),
    ground: fc.oneof(fc.constantFrom("grass", "fresh snow", "water"), number(0, 1)),
    horizon: fc.array(fc.record({ bearingDeg: number(0, 360), altitudeDeg: number(0, 60) }), {
      maxLength: 5,
    }),
  },
  { requiredKeys: ["latitudeDeg", "longitudeDeg"] },
);

const site = anySite.map((given) => {
  const longitudeDeg = ZONES[given.timeZone ?? ""];
  return longitudeDeg === undefined ? given : { ...given, longitudeDeg };
});

const air = fc.record(
  {
    turbidity: fc.oneof(
      fc.constantFrom("clean", "standard", "clear", "turbid", "very turbid"),
      fc.record({ aod380: number(0, 2), aod500: number(0, 2) }),
    ),
    waterCm: number(0, 10),
    ozoneCm: number(0, 0.6),
    temperatureC: fc.oneof(number(-60, 55), fc.array(number(-60, 55), { minLength: 12, maxLength: 12 })),
    windMs: number(0, 40),
  },
  optional,
);

const mount = fc.oneof(
  fc.constant({ kind: "stand" }),
  fc.record({
    kind: fc.constant("fixed"),
    tiltDeg: number(0, 90),
    bearingDeg: number(0, 360),
    back: fc.constantFrom("open", "roof"),
  }),
);

const panel = fc.record(
  {
    name,
    howMany: whole(1, 4),
    module: fc.record(
      { powerW: number(1, 1000), powerPctPerK: number(-0.6, -0.2) },
      { requiredKeys: ["powerW"] },
    ),
    mount,
    lengthMm: number(700, 2500),
    dustPct: number(0, 50),
  },
  { requiredKeys: ["name", "module"] },
);

const leg = fc.oneof(
  fc.record({ name, lengthMm: number(1, 3000) }),
  fc.record({ name, tiltDeg: number(0, 90), readFrom: fc.constantFrom("ground", "post") }),
);

const stand = fc.record(
  {
    facingDeg: number(0, 360),
    legStyle: fc.constantFrom("square", "plumb", "strap"),
    pivotMm: number(100, 700),
    strapMm: number(50, 3000),
    groundSlopeDeg: number(-30, 30),
    legs: fc.array(leg, { maxLength: 4 }),
  },
  optional,
);

export const plausiblePlan: fc.Arbitrary<object> = fc.record(
  {
    name,
    site,
    season,
    air,
    sky: fc.record({
      source: fc.constant("clear"),
      toPlane: fc.constantFrom("perez", "hay-davies", "isotropic"),
    }),
    panels: fc.array(panel, { minLength: 1, maxLength: 3 }),
    stand,
  },
  { requiredKeys: ["site", "season", "panels"] },
);

const twelve = (least: number, most: number): fc.Arbitrary<readonly number[]> =>
  fc.array(number(least, most), { minLength: 12, maxLength: 12 });

/** Low and high of twelve months, the high above the low. */
const airRange = fc.tuple(twelve(-40, 25), twelve(0, 25)).map(([airLowC, span]) => ({
  airLowC,
  airHighC: airLowC.map((low, month) => low + span[month]),
}));

const months = fc
  .tuple(
    fc.oneof(
      twelve(0.22, 0.88).map((clearness) => ({ clearness })),
      twelve(0, 300).map((sunshineHours) => ({ sunshineHours })),
      twelve(0, 8).map((globalKWhM2) => ({ globalKWhM2 })),
    ),
    fc.option(airRange, { nil: {} }),
    fc.option(fc.record({ windMs: twelve(0, 15), windHeightM: number(0.2, 300) }), { nil: {} }),
    fc.option(fc.record({ dayMemory: number(-0.2, 0.8), dayMemoryYears: number(0.2, 150) }), { nil: {} }),
  )
  .map((parts) => Object.assign({ kind: "months" }, ...parts));

const climate = fc.record({
  source: fc.constant("climate"),
  from: fc.oneof(
    fc.constant({ kind: "nearest" }),
    fc
      .constantFrom("Denver, CO", "Punta Arenas", "Barrow", "Guam", "wmo-89564", "Nowhere at all")
      .map((place) => ({ kind: "place", name: place })),
    fc.constantFrom(...ANALOGY_KINDS).map((like) => ({ kind: "analogy", like })),
    months,
  ),
  sunshine: fc.constantFrom("fitted", "fao56"),
  seasons: whole(10, 40),
  seed: whole(0, 1000),
});

/** Plausible plans under a climate: anywhere, from a place, a kind, or twelve numbers that may or may not be true. */
export const climatePlan: fc.Arbitrary<object> = fc
  .tuple(plausiblePlan, climate)
  .map(([plan, sky]) => ({ ...plan, sky }));

/** A slip: what a hand, a merge or another program does to a plan. */
interface Slip {
  readonly at: number;
  readonly kind: "drop" | "rename" | "replace" | "scale";
  readonly instead: fc.JsonValue;
}

const slip: fc.Arbitrary<Slip> = fc.record({
  at: fc.nat(),
  kind: fc.constantFrom("drop" as const, "rename" as const, "replace" as const, "scale" as const),
  instead: fc.jsonValue({ maxDepth: 2 }),
});

type Container = Record<string, unknown> | unknown[];

const containersOf = (value: unknown): readonly Container[] =>
  typeof value === "object" && value !== null
    ? [value as Container, ...Object.values(value).flatMap(containersOf)]
    : [];

const withSlip = (plan: object, { at, kind, instead }: Slip): object => {
  const copy: object = structuredClone(plan);
  const places = containersOf(copy).flatMap((container) =>
    Object.keys(container).map((key) => [container, key] as const),
  );
  const place = places[at % places.length];
  if (place === undefined) return copy;
  const [container, key] = place;
  const fields = container as Record<string, unknown>;
  const value = fields[key];
  if (kind === "drop") delete fields[key];
  else if (kind === "rename") {
    delete fields[key];
    fields[`${key}x`] = value;
  } else if (kind === "scale" && typeof value === "number") fields[key] = value * 1000 - 7;
  else fields[key] = instead;
  return copy;
};

/** A plausible plan with one to four slips in it; some are still fit for use. */
export const slippedPlan: fc.Arbitrary<object> = fc
  .tuple(plausiblePlan, fc.array(slip, { minLength: 1, maxLength: 4 }))
  .map(([plan, slips]) => slips.reduce(withSlip, plan));
