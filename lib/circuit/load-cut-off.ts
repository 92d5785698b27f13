import type { Circuit } from "../plan/circuit.ts";
import type { BatteryModel } from "./battery.ts";

/**
 * A load cut-off that waits: loads go off where nothing more is taken out of the battery, and come back only once it has
 * recovered. Without one they are served again from the first light.
 */
export interface LoadCutOff {
  /** Stored at which loads come back, Wh above the floor; infinite where a voltage decides. */
  readonly backAtWh: number;
  /** Voltage at the battery's terminals at which they come back, V; infinite where the charge decides. */
  readonly backAtV: number;
}

/**
 * A plan's load cut-off; `null` where it states none. The floor at which loads go off is the battery's own.
 *
 * @example
 * const plan = readPlan({
 *   site: { latitudeDeg: 50, longitudeDeg: 8 },
 *   season: { from: "2027-06-01", to: "2027-06-30" },
 *   panels: [{ name: "prop", module: { powerW: 100 } }],
 *   battery: { chemistry: "AGM", capacityAh: 100 },
 *   circuit: { loadCutOff: { reconnectPct: 75 } },
 * });
 * loadCutOffOf(plan.circuit, batteryModel(plan.battery))?.backAtWh // 300
 */
export const loadCutOffOf = (
  { loadCutOff }: Pick<Circuit, "loadCutOff">,
  { capacityWh, usableWh }: BatteryModel,
): LoadCutOff | null => {
  if (loadCutOff === undefined) return null;
  const { reconnectPct, reconnectV } = loadCutOff;
  return {
    backAtWh:
      reconnectPct === undefined
        ? Number.POSITIVE_INFINITY
        : Math.max(0, (capacityWh * reconnectPct) / 100 - (capacityWh - usableWh)),
    backAtV: reconnectV ?? Number.POSITIVE_INFINITY,
  };
};

/** Rest voltage with that much stored, V: straight between the battery's nodes. */
const restVWith = ({ restVAt, usableWh }: BatteryModel, storedWh: number): number => {
  const at = (storedWh / usableWh) * (restVAt.length - 1);
  const node = Math.max(0, Math.min(restVAt.length - 2, Math.floor(at)));
  return restVAt[node] + (at - node) * (restVAt[node + 1] - restVAt[node]);
};

/**
 * Whether loads that are off come back, asked at the end of a step. A controller sees the voltage at the terminals, which
 * stands above that at rest by the charging current of the step: rest voltage + current x resistance to charge.
 *
 * @param storedWh Stored at the end of the step, Wh above the floor.
 * @param gainedWh What the step stored, Wh.
 * @param hours Length of the step.
 */
export const loadsComeBack = (
  { backAtWh, backAtV }: LoadCutOff,
  battery: BatteryModel,
  storedWh: number,
  gainedWh: number,
  hours: number,
): boolean => {
  if (storedWh >= backAtWh) return true;
  if (backAtV === Number.POSITIVE_INFINITY) return false;
  const chargingA = Math.max(0, gainedWh) / (battery.chargeShare * battery.chargingV * hours);
  return restVWith(battery, storedWh) + battery.chargeOhm * chargingA >= backAtV;
};
