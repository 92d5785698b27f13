import type { BatteryStand } from "../plan/battery.ts";

/**
 * Hours in which a battery covers 63 % of a step of the air round it: its heat capacity over what its surface loses. A
 * small battery in moving air: 12 kg x 1,000 J/(kg K) over 0.33 m2 x 5 to 10 W/(m2 K) makes 1 to 2 hours. A closed, unheated
 * locker damps the day to a sixth of its swing, next to the day's mean. Worked out here; common practice, no source.
 *
 * A living space follows nothing: it is kept at a temperature.
 */
export const FOLLOWS_AIR_H: Readonly<Record<BatteryStand, number>> = {
  "living space": 24,
  locker: 24,
  outside: 2,
};

/**
 * A battery's own temperature on every step: it follows the air as a first-order lag, solved exactly over each step. It
 * starts from the mean of the first day's air.
 *
 * @param airC air on every step, degC
 * @param perDay steps a day
 * @param followsAirH hours in which it covers 63 % of a step of the air
 * @param out the battery's temperature at the end of each step, degC
 * @example batteryTemperature(Float64Array.of(0, 0, 10, 10), 2, 24, new Float64Array(4))[3] // 6.32
 */
export const batteryTemperature = (
  airC: Float64Array,
  perDay: number,
  followsAirH: number,
  out: Float64Array,
): Float64Array => {
  const share = -Math.expm1(-24 / perDay / followsAirH);
  let batteryC = 0;
  for (let step = 0; step < perDay; step += 1) batteryC += airC[step] / perDay;
  for (let step = 0; step < out.length; step += 1) {
    batteryC += share * (airC[step] - batteryC);
    out[step] = batteryC;
  }
  return out;
};
