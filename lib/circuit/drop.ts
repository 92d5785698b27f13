import type { CableRun } from "../plan/circuit.ts";
import { runOhm, thickerSizes, wireSizeOf, wireText } from "./wire.ts";

/** The customary most that a small low-voltage run may drop, % of its voltage (common practice, no source). */
export const CUSTOMARY_DROP_PCT = 3;

/** What a cable run takes from a current. */
export interface CableDrop {
  readonly size: string;
  readonly ohm: number;
  readonly dropV: number;
  readonly dropPct: number;
  readonly lossW: number;
  /** Whether it keeps within {@link CUSTOMARY_DROP_PCT}. */
  readonly withinCustom: boolean;
}

/**
 * Voltage drop and watts lost in a run at one current: I x R and I^2 x R, R out and back with its contacts.
 *
 * @param amps Current, A.
 * @param volts Voltage that the drop is set against, V, above 0.
 * @throws RangeError when the voltage is not above 0
 */
export const cableDrop = (run: CableRun, amps: number, volts: number): CableDrop => {
  if (!(volts > 0)) throw new RangeError(`cableDrop: expected a voltage above 0 V, received ${volts}`);
  const ohm = runOhm(run);
  const dropV = amps * ohm;
  const dropPct = (100 * dropV) / volts;
  return {
    size: wireText(wireSizeOf(run.size)),
    ohm,
    dropV,
    dropPct,
    lossW: amps * dropV,
    withinCustom: dropPct <= CUSTOMARY_DROP_PCT,
  };
};

/** The run as it is, and the same run in the next thicker sizes. */
export const thickerRuns = (run: CableRun, howMany: number): readonly CableRun[] => [
  run,
  ...thickerSizes(wireSizeOf(run.size), howMany).map((size) => ({
    ...run,
    size: size.series === "metric" ? size.areaMm2 : wireText(size),
  })),
];
