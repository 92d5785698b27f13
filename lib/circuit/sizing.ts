/**
 * Rules of thumb for storage, as handbooks print them: a yardstick beside the season's own answer, which knows the place's
 * weather from day to day.
 */

/** What a storage worksheet asks. */
export interface StorageNeed {
  /** Load of a day, Wh from the battery. */
  readonly loadWhPerDay: number;
  /** Days to be lived through with no light. */
  readonly days: number;
  /** Share of the capacity that may be taken out, 0 to 1. */
  readonly usableShare: number;
  /** Share of its capacity that the battery has in the cold, 0 to 1. */
  readonly capacityShare: number;
}

/**
 * Capacity to buy, Wh: load x days / usable share / share left in the cold.
 *
 * The simplified worksheet method (its temperature multiplier is 1 / `capacityShare`).
 *
 * @throws RangeError when a share is not above 0
 * @example storageWh({ loadWhPerDay: 1000, days: 2.5, usableShare: 0.5, capacityShare: 1 / 1.3 }) // 6500
 */
export const storageWh = ({ loadWhPerDay, days, usableShare, capacityShare }: StorageNeed): number => {
  if (!(usableShare > 0 && capacityShare > 0)) {
    throw new RangeError(
      `storageWh: expected shares above 0, received usable ${usableShare} and capacity ${capacityShare}`,
    );
  }
  return (loadWhPerDay * days) / usableShare / capacityShare;
};

/**
 * Ampere-hours a day that a load takes from a battery through an inverter: Wh / efficiency / volts.
 *
 * Masters 2004, section 9.5.
 *
 * @example dailyAh(3000, 0.85, 24) // 147.06
 */
export const dailyAh = (loadWhPerDay: number, inverterShare: number, systemV: number): number =>
  loadWhPerDay / inverterShare / systemV;

/**
 * Days of usable storage for a supply that holds 95 % of the time: 9.43 - 1.9 p + 0.11 p^2.
 *
 * Masters 2004, equation 9.20: a fit to the curves of the Sandia handbook (1995), for 1 to 8 peak sun hours.
 *
 * @param peakSunHours Sun hours of the design month on the panel's plane, kWh/m2 a day.
 * @example storageDays95(3.1) // 4.597
 */
export const storageDays95 = (peakSunHours: number): number =>
  9.43 - 1.9 * peakSunHours + 0.11 * peakSunHours ** 2;
