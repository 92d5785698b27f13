import { TOP_UP_WAYS, type TopUpWay } from "../../../../lib/plan/worth.ts";
import type { Field, Section } from "../field.ts";
import { valueAt } from "../path.ts";

const WAYS: Readonly<Record<TopUpWay, string>> = {
  "hook-up": "take a night at a hook-up",
  driving: "drive",
  generator: "run a generator",
};

const wayIn = (item: unknown): unknown => valueAt(item, ["worth", "instead", "inUse"]);

/** The plan with a way to top up in use, or none stated. */
const withWay = (item: unknown, inUse?: TopUpWay): unknown => {
  const plan = item as { readonly worth?: { readonly instead?: object } };
  return { ...plan, worth: { ...plan.worth, instead: { ...plan.worth?.instead, inUse } } };
};

const price = (key: string, label: string): Field => ({
  kind: "number",
  path: ["worth", "prices", key],
  label,
  unit: "",
});

export const worthSection: Section = {
  id: "worth",
  title: "Prices and wishes",
  fields: [
    {
      kind: "number",
      path: ["worth", "wantedShortDays"],
      label: "Short days you accept",
      unit: "a season",
      slider: { least: 0, most: 60, step: 1 },
    },
    {
      kind: "choice",
      path: ["worth", "now"],
      label: "Today the stand's panel",
      choices: [
        { value: "legs", label: "stands on its legs, changed by the calendar" },
        { value: "one-leg", label: "stays on its best leg" },
        { value: "flat", label: "lies flat" },
      ],
    },
    { kind: "text", path: ["worth", "currency"], label: "Currency" },
    { kind: "number", path: ["worth", "years"], label: "Years of use", unit: "seasons" },
    price("panelPerW", "Second panel, each watt"),
    price("roofMount", "Roof mount"),
    price("secondStand", "Second stand"),
    price("legs", "Set of legs"),
    price("thickerCable", "Thicker cable"),
    price("betterController", "Better controller"),
    price("largerController", "Controller of more amperes"),
    price("furtherController", "Further controller"),
    price("branchFuse", "Branch fuse"),
    price("biggerBattery", "Bigger battery"),
    price("warmBattery", "Heating mat for the battery"),
    { kind: "number", path: ["worth", "biggerBatteryPct"], label: "Bigger battery", unit: "% of today's" },
    { kind: "number", path: ["worth", "warmBatteryW"], label: "Heating mat for the battery", unit: "W" },
    { kind: "number", path: ["worth", "keptLoadPct"], label: "Fewer loads: kept", unit: "%" },
    {
      kind: "variant",
      path: [],
      label: "When it is flat you",
      variants: [
        {
          label: "have not said: all are counted",
          is: (item) => wayIn(item) === undefined,
          make: (item) => withWay(item),
        },
        ...TOP_UP_WAYS.map((way) => ({
          label: WAYS[way],
          is: (item: unknown) => wayIn(item) === way,
          make: (item: unknown) => withWay(item, way),
        })),
      ],
      says: "Done each time the charge reaches its floor, and priced. Left open, the answer rests on the cheapest.",
    },
    { kind: "number", path: ["worth", "instead", "hookUpNight"], label: "A night with a hook-up", unit: "" },
    { kind: "number", path: ["worth", "instead", "hookUpHours"], label: "Such a night lasts", unit: "h" },
    { kind: "number", path: ["worth", "instead", "drivingHour"], label: "An hour of driving", unit: "" },
    { kind: "number", path: ["worth", "instead", "drivingMinutes"], label: "A drive lasts", unit: "min" },
    { kind: "number", path: ["worth", "instead", "generatorHour"], label: "An hour of generator", unit: "" },
  ],
};
