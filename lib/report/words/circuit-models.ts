import { FOLLOWS_AIR_H } from "../../circuit/battery-temperature.ts";
import { keptAtC } from "../../plan/battery.ts";
import type { Plan } from "../../plan/plan.ts";

/** The models behind what a circuit and a battery make of the light, each with its source, beside those of the light. */
export const circuitModelWords = ({
  circuit,
  battery,
}: Pick<Plan, "circuit" | "battery">): readonly string[] => [
  "circuit: each panel's cable in series with its curve, panels in parallel at one voltage (Jain & Kapoor 2004)",
  "cable: IEC 60228 for metric sizes, ASTM B258 and IEC 60028 copper for gauges",
  circuit.controller.kind === "mppt"
    ? "controller: MPPT at the common point of most power, efficiency by its curve"
    : "controller: PWM, the panel held at the battery's voltage",
  `battery: ${battery.chemistry}, energy balance step by step; charge near full at most what is missing over its taper (Woodbridge 1935)`,
  "air by the hour: the day's curve of Erbs, Klein & Beckman 1983; from day to day the spread of Sommer & Kaplan 2017 and the memory and tie to the light of Richardson 1981; a weather file brings its own",
  keptAtC(battery) === null
    ? `battery temperature: follows the air, ${FOLLOWS_AIR_H[battery.stands]} hours behind (worked out here, no source)`
    : `battery temperature: kept at ${keptAtC(battery)} °C`,
];
