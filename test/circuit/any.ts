/** Arbitrary circuits, batteries, loads and skies for property tests. */
import fc from "fast-check";
import { type Battery, batterySchema } from "../../lib/plan/battery.ts";
import { type Controller, controllerSchema } from "../../lib/plan/circuit.ts";

const share = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });

/** A battery of any chemistry, size and wear. */
export const anyBattery: fc.Arbitrary<Battery> = fc
  .record({
    chemistry: fc.constantFrom("LiFePO4" as const, "AGM" as const, "gel" as const, "flooded" as const),
    capacityAh: share(2, 400),
    systemV: fc.constantFrom(12 as const, 24 as const, 48 as const),
    usablePct: share(5, 100),
    startPct: share(0, 100),
    chargeEfficiencyPct: share(40, 100),
    dischargeEfficiencyPct: share(40, 100),
    maxChargePerHourPct: share(2, 200),
    taperHours: share(0.01, 8),
    selfDischargePctPerMonth: share(0, 30),
    chargeAboveC: share(-20, 10),
    heaterW: fc.oneof(fc.constant(0), share(1, 60)),
  })
  .map((battery) => batterySchema.parse(battery));

/** One step of light, load and air. */
export interface AnyStep {
  readonly offeredW: number;
  readonly loadW: number;
  readonly airC: number;
}

const watts = fc.oneof(fc.constant(0), share(0, 600));

/** A stretch of steps: sunny, dark, warm and freezing by turns. */
export const anySteps: fc.Arbitrary<readonly AnyStep[]> = fc.array(
  fc.record({ offeredW: watts, loadW: watts, airC: share(-25, 40) }),
  { minLength: 1, maxLength: 60 },
);

/** A controller of either kind. */
export const anyController: fc.Arbitrary<Controller> = fc
  .oneof(
    fc.record({
      kind: fc.constant("mppt" as const),
      maxCurrentA: share(2, 60),
      startAboveBatteryV: share(0, 6),
      headroomV: share(0, 3),
      ownW: share(0, 3),
    }),
    fc.record({
      kind: fc.constant("pwm" as const),
      dropV: share(0, 1.5),
      maxCurrentA: share(2, 60),
      ownW: share(0, 3),
    }),
  )
  .map((controller) => controllerSchema.parse(controller));
