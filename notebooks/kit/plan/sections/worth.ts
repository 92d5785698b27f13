import type { Field, Section } from "../field.ts";

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
    price("biggerBattery", "Bigger battery"),
    { kind: "number", path: ["worth", "biggerBatteryPct"], label: "Bigger battery", unit: "% of today's" },
    { kind: "number", path: ["worth", "keptLoadPct"], label: "Fewer loads: kept", unit: "%" },
    { kind: "number", path: ["worth", "instead", "hookUpNight"], label: "A night with a hook-up", unit: "" },
    { kind: "number", path: ["worth", "instead", "drivingHour"], label: "An hour of driving", unit: "" },
    { kind: "number", path: ["worth", "instead", "generatorHour"], label: "An hour of generator", unit: "" },
  ],
};
