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
];
