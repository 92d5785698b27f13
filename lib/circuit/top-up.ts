import type { TopUpWay, Worth } from "../plan/worth.ts";
import type { BatteryModel } from "./battery.ts";

/** A charger from outside that is plugged in when the charge reaches its floor. */
export interface TopUp {
  /** W at the battery's terminals, at most; loads are fed from it too. */
  readonly powerW: number;
  /** How long it stays, h. */
  readonly hours: number;
  /** Whether it stops as soon as the battery is full. */
  readonly untilFull: boolean;
}

/**
 * A way to top up, in watts and hours: a stay at a hook-up with a mains charger sized to the battery, a drive, or a
 * generator until the battery is full.
 *
 * @example
 * const plan = readPlan({
 *   site: { latitudeDeg: 50, longitudeDeg: 8 },
 *   season: { from: "2027-06-01", to: "2027-06-30" },
 *   panels: [{ name: "prop", module: { powerW: 100 } }],
 *   battery: { chemistry: "AGM", capacityAh: 100 },
 * });
 * topUpBy("hook-up", plan.worth, batteryModel(plan.battery)).powerW // 180
 */
export const topUpBy = (
  way: TopUpWay,
  { instead }: Pick<Worth, "instead">,
  { capacityWh }: BatteryModel,
): TopUp => {
  switch (way) {
    case "hook-up":
      return {
        powerW: (capacityWh * instead.hookUpChargePct) / 100,
        hours: instead.hookUpHours,
        untilFull: false,
      };
    case "driving":
      return { powerW: instead.drivingHourWh, hours: instead.drivingMinutes / 60, untilFull: false };
    case "generator":
      return { powerW: instead.generatorHourWh, hours: instead.generatorHours, untilFull: true };
  }
};
