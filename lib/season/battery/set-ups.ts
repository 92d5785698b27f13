import { sum } from "d3";
import { thickerRuns } from "../../circuit/drop.ts";
import type { CircuitRemark } from "../../circuit/remark.ts";
import { areaMm2Of, wireSizeOf, wireText } from "../../circuit/wire.ts";
import { keptAtC } from "../../plan/battery.ts";
import { type CableRun, controllerSchema } from "../../plan/circuit.ts";
import type { Plan } from "../../plan/plan.ts";
import { turnedAfterSun } from "../aiming/aims-of-plan.ts";
import { heldAim } from "../light/aim-plan.ts";
import type { SeasonSkies } from "../light/skies.ts";
import { bundleOf, type Need } from "./needs.ts";
import { secondUnit } from "./second-panel.ts";
import type { SetUp } from "./set-up.ts";
import { todayOf } from "./today.ts";

/** A set-up that could be had, what it changes, and what it costs. */
export interface Remedy {
  readonly setUp: SetUp;
  /** What differs from today, in a few words, with all that it needs. */
  readonly says: string;
  /** What it costs with all that it needs. */
  readonly price: number;
  /** What it is good against and nothing else. */
  readonly against?: "cold";
  /** What it needs beside what was asked for, to pass the checks of a build, each with its part of the price. */
  readonly needs: readonly Need[];
  /** What still speaks against building it; empty where it is safe. */
  readonly unsafe: readonly CircuitRemark[];
}

const LIST = new Intl.ListFormat("en-GB", { type: "conjunction" });

/** What is compared: today's set-up and what could be done about it. */
export interface Choices {
  readonly asIs: SetUp;
  readonly remedies: readonly Remedy[];
  /** A second panel of some rated watts, so that the smallest that is enough can be sought. */
  readonly withSecondPanel: (where: "roof" | "legs", watts: number) => Remedy | null;
}

const areaOf = ({ size }: CableRun): number => areaMm2Of(wireSizeOf(size));

/** Sizes by which the cable grows when the plan names none. */
const SIZES_UP = 2;

/**
 * The set-ups that a plan's questions are about: as is; legs used; re-aimed; a second panel on the roof or on legs;
 * thicker cable; better controller; bigger battery; fewer loads. What makes no sense for the plan is left out (no legs, no
 * panel on the stand, a cable that is no thicker, a controller that is good already).
 *
 * @param skies of the season, by which legs and aims are chosen
 * @throws PlanError for a nameplate that can't be true or a leg that can't stand
 */
export const choicesOf = (plan: Plan, skies: SeasonSkies): Choices => {
  const { circuit, battery, loads, worth } = plan;
  const { prices } = worth;
  const { asIs, onStand, hasLegs, legAims, place } = todayOf(plan, skies);
  const remedies: Remedy[] = [];
  const offer = (
    name: string,
    says: string,
    price: number,
    change: Partial<SetUp>,
    added: string | null = null,
  ): Remedy => {
    const { setUp, needs, unsafe } = bundleOf({ ...asIs, ...change, name }, added, asIs, prices);
    return {
      setUp,
      says: needs.length === 0 ? says : `${says}, with ${LIST.format(needs.map(({ what }) => what))}`,
      price: price + sum(needs, (need) => need.price),
      needs,
      unsafe,
    };
  };

  const toCut = plan.stand.legs.some((leg) => !("lengthMm" in leg && leg.owned));
  const legsPrice = toCut ? prices.legs : 0;
  if (hasLegs && onStand.length > 0) {
    if (worth.now === "flat") {
      remedies.push(
        offer("legs used", "the stand's legs, changed by the calendar", legsPrice, {
          panels: place(legAims()),
        }),
      );
    } else if (worth.now === "one-leg" && plan.stand.legs.length > 1) {
      remedies.push(
        offer("legs changed", "the stand's legs, changed by the calendar", 0, { panels: place(legAims()) }),
      );
    }
    const aims = turnedAfterSun(plan, skies, onStand, worth.aimsADay);
    remedies.push(
      offer(
        "re-aimed",
        `legs, and turned after the sun: ${worth.aimsADay} aims a day, each a walk out`,
        worth.now === "flat" ? legsPrice : 0,
        { panels: place(aims) },
      ),
    );
  }

  const roofAims = heldAim({ tiltDeg: 0, bearingDeg: 0 });
  const withSecondPanel = (where: "roof" | "legs", watts?: number): Remedy | null => {
    if (where === "legs" && !hasLegs) return null;
    const unit = secondUnit(plan, where, watts);
    const { howMany } = unit;
    const each = unit.model.nameplate.powerW;
    const rated = howMany * each;
    const size = howMany === 1 ? `${Math.round(rated)} W` : `${howMany} x ${Math.round(each)} W in series`;
    return offer(
      where === "roof" ? "second panel on the roof" : "second panel on legs",
      `${size} more, ${where === "roof" ? "flat on the roof" : "on legs of its own"}`,
      prices.panelPerW * rated + (where === "roof" ? prices.roofMount : prices.secondStand),
      { panels: [...asIs.panels, { unit, aims: where === "roof" ? roofAims : legAims() }] },
      unit.name,
    );
  };
  for (const where of ["roof", "legs"] as const) {
    const remedy = withSecondPanel(where);
    if (remedy !== null) remedies.push(remedy);
  }

  const thicker =
    worth.thickerCable === undefined
      ? thickerRuns(circuit.panelCable, SIZES_UP).at(-1)
      : { ...circuit.panelCable, size: worth.thickerCable };
  if (thicker !== undefined && areaOf(thicker) > areaOf(circuit.panelCable)) {
    remedies.push(
      offer("thicker cable", `panel cable ${wireText(wireSizeOf(thicker.size))}`, prices.thickerCable, {
        circuit: { ...circuit, panelCable: thicker },
      }),
    );
  }
  const better =
    worth.betterController ??
    (circuit.controller.kind === "pwm"
      ? controllerSchema.parse({ kind: "mppt", maxCurrentA: circuit.controller.maxCurrentA })
      : null);
  if (better !== null) {
    remedies.push(
      offer(
        "better controller",
        `${better.kind.toUpperCase()}, ${better.maxCurrentA} A`,
        prices.betterController,
        {
          circuit: { ...circuit, controller: better },
        },
      ),
    );
  }
  if (battery.heaterW === 0 && keptAtC(battery) === null) {
    const { warmBatteryW: heaterW } = worth;
    remedies.push({
      ...offer(
        "battery kept warm",
        `insulated, with a ${heaterW} W heating mat that runs on spare light while it is too cold to charge`,
        prices.warmBattery,
        { battery: { ...battery, heaterW } },
      ),
      against: "cold",
    });
  }
  const capacityAh = (battery.capacityAh * worth.biggerBatteryPct) / 100;
  remedies.push(
    offer("bigger battery", `${Math.round(capacityAh)} Ah ${battery.chemistry}`, prices.biggerBattery, {
      battery: { ...battery, capacityAh },
    }),
  );
  if (loads.inverterOn === "all-day" && loads.inverterOwnW > 0) {
    remedies.push(
      offer("inverter off between uses", `saves its ${loads.inverterOwnW} W while nothing runs on it`, 0, {
        loads: { ...loads, inverterOn: "with-its-loads" },
      }),
    );
  }
  if (loads.appliances.length > 0) {
    const kept = worth.keptLoadPct / 100;
    const appliances = loads.appliances.map((one) => ({ ...one, watts: one.watts * kept }));
    remedies.push(
      offer("fewer loads", `${worth.keptLoadPct} % of every load`, prices.fewerLoads, {
        loads: { ...loads, appliances },
      }),
    );
  }
  return { asIs, remedies, withSecondPanel };
};
