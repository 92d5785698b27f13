import type { CircuitRemark } from "../../circuit/remark.ts";
import type { Chemistry } from "../../plan/battery.ts";
import type { Plan } from "../../plan/plan.ts";

/** Cautions that stand beside a result about wiring, a battery or a further panel: what hurts people first. */

const ALWAYS: readonly string[] = [
  "Local electrical code and licensed practice come before anything said here; where the code asks for a licensed hand, use one.",
  "Connect the battery to the controller first, the panel after it; take them off the other way round: panel first.",
  "Cover the panel or turn it face down before touching its wires: in daylight it is live and cannot be switched off.",
  "Check polarity with a meter before every first connection. Never let bare ends touch, and take off rings and watches: a short circuit across a battery burns.",
  "Fit the fuse close to the battery's positive terminal, sized for the cable behind it.",
  "Panel connectors are not made to be mated daily, nor under load: put a switch or a rated plug where you part the circuit every day.",
];

const BATTERY_CAUTIONS: Readonly<Record<Chemistry, readonly string[]>> = {
  LiFePO4: [
    "Lithium: never charge below the maker's limit (usually 0 °C), never above its current or voltage; use a battery with its own protection.",
  ],
  AGM: [
    "Lead-acid gives off hydrogen when charged hard: ventilate the box, no flame or spark near it. Keep to the maker's charging voltage.",
  ],
  gel: [
    "Lead-acid gives off hydrogen when charged hard: ventilate the box, no flame or spark near it. Gel wants its own, lower charging voltage.",
  ],
  flooded: [
    "Flooded lead-acid gives off hydrogen and holds acid: ventilate outdoors, no flame or spark, goggles and gloves, water at hand. Keep it upright.",
  ],
};

const ON_A_ROOF: readonly string[] = [
  "A roof panel means ladder and roof work: secured ladder, dry still day, a second person, fall protection as the local rules ask; no hole that lets water in.",
];

/** What can break or burn something in a build: to stand before anything else that is said of it. */
export const dangerWords = (remarks: readonly CircuitRemark[]): readonly string[] =>
  remarks.flatMap(({ kind, words }) => (kind === "danger" ? [`Danger: ${words}`] : []));

/** The cautions for a set-up's wires and battery, for standing next to the numbers. */
export const circuitCautions = ({ battery }: Pick<Plan, "battery">): readonly string[] => [
  ...ALWAYS,
  ...BATTERY_CAUTIONS[battery.chemistry],
];

/** The cautions for buying a further panel: those of the circuit, and of the roof. */
export const secondPanelCautions = (plan: Pick<Plan, "battery">): readonly string[] => [
  ...ON_A_ROOF,
  ...circuitCautions(plan),
];
