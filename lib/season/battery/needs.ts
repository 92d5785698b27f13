import { branchFuseFor } from "../../circuit/branch-fuses.ts";
import { controllerInputs, shortCircuitA } from "../../circuit/build.ts";
import { coldOpenV } from "../../circuit/checks.ts";
import { restV } from "../../circuit/chemistry.ts";
import { thickerRuns } from "../../circuit/drop.ts";
import type { CircuitRemark, RemarkAbout } from "../../circuit/remark.ts";
import { wireSizeOf, wireText } from "../../circuit/wire.ts";
import { type Circuit, type Controller, controllerSchema } from "../../plan/circuit.ts";
import type { Worth } from "../../plan/worth.ts";
import { ratedPanels, remarksOf, type SetUp } from "./set-up.ts";

/** Something that a set-up needs beside what was asked for, so that it passes the checks, and what it costs. */
export interface Need {
  readonly what: string;
  readonly price: number;
}

/** A set-up with what it needs, and what still speaks against it: nothing where it is safe to build. */
export interface Bundle {
  readonly setUp: SetUp;
  readonly needs: readonly Need[];
  readonly unsafe: readonly CircuitRemark[];
}

interface Mended {
  readonly setUp: SetUp;
  readonly need: Need;
}

type Prices = Worth["prices"];

/** What controllers are sold for: charging current, A, and voltage from the panels, V (common practice, no source). */
const CONTROLLER_AMPS: readonly number[] = [5, 10, 15, 20, 30, 40, 50, 60, 80, 100];
const CONTROLLER_VOLTS: readonly number[] = [50, 75, 100, 150, 250];

const atLeast = (sizes: readonly number[], least: number): number | undefined =>
  sizes.find((size) => size >= least);

const withCircuit = (setUp: SetUp, change: Partial<Circuit>): SetUp => ({
  ...setUp,
  circuit: { ...setUp.circuit, ...change },
});

/** A tracking controller for the added panels alone, in place of the one that they would share. */
const ownController = (setUp: SetUp, added: string, { furtherController }: Prices): Mended | null => {
  const { circuit, battery } = setUp;
  const panels = ratedPanels(setUp).find(({ name }) => name === added);
  if (panels === undefined || panels.own !== undefined) return null;
  const { nameplate, howMany, inSeries = 1 } = panels;
  const maxInputV = atLeast(
    CONTROLLER_VOLTS,
    Math.max(75, inSeries * coldOpenV(nameplate, circuit.coldestC)),
  );
  const maxCurrentA = atLeast(
    CONTROLLER_AMPS,
    (howMany * nameplate.vmpV * nameplate.impA) / restV(battery, 0.5),
  );
  if (maxInputV === undefined || maxCurrentA === undefined) return null;
  const own = controllerSchema.parse({ kind: "mppt", maxInputV, maxCurrentA });
  return {
    setUp: {
      ...setUp,
      panels: setUp.panels.map((placed) =>
        placed.unit.name === added ? { ...placed, unit: { ...placed.unit, own } } : placed,
      ),
    },
    need: {
      what: `an MPPT controller of its own (${maxCurrentA} A, ${maxInputV} V)`,
      price: furtherController,
    },
  };
};

const higherController = (setUp: SetUp, { largerController }: Prices): Mended | null => {
  const { circuit } = setUp;
  const { controller, coldestC } = circuit;
  const highestV = Math.max(
    ...ratedPanels(setUp).map(({ nameplate, inSeries = 1, own }) =>
      own === undefined ? inSeries * coldOpenV(nameplate, coldestC) : 0,
    ),
  );
  const maxInputV = atLeast(CONTROLLER_VOLTS, highestV);
  if (maxInputV === undefined || maxInputV <= controller.maxInputV) return null;
  return {
    setUp: withCircuit(setUp, { controller: { ...controller, maxInputV } }),
    need: { what: `a controller for ${maxInputV} V`, price: largerController },
  };
};

const chargeLimitA = ({ battery }: SetUp): number => (battery.capacityAh * battery.maxChargePerHourPct) / 100;

/** In place of one that passes what the panels give, a controller that tracks and is told how much to charge with. */
const trackingInstead = (setUp: SetUp, { betterController }: Prices): Mended | null => {
  const inputs = controllerInputs(setUp.circuit, ratedPanels(setUp));
  const maxCurrentA = Math.floor(chargeLimitA(setUp) / inputs.reduce((sum, { alike }) => sum + alike, 0));
  if (maxCurrentA < 1) return null;
  return {
    setUp: withCircuit(setUp, { controller: controllerSchema.parse({ kind: "mppt", maxCurrentA }) }),
    need: { what: `an MPPT controller set to charge with ${maxCurrentA} A at most`, price: betterController },
  };
};

const largerController = (setUp: SetUp, prices: Prices): Mended | null => {
  const { circuit } = setUp;
  const { controller } = circuit;
  const shared = controllerInputs(circuit, ratedPanels(setUp)).filter((input) => input.shared);
  const strongA = Math.max(0, ...shared.map(shortCircuitA)) * circuit.strongLightFactor;
  // One that lets through more than the battery takes would only have to make way again.
  if (controller.kind === "pwm" && strongA > chargeLimitA(setUp)) return trackingInstead(setUp, prices);
  const amps = atLeast(CONTROLLER_AMPS, strongA);
  if (amps === undefined) return null;
  const larger =
    controller.kind === "pwm"
      ? { ...controller, maxCurrentA: Math.max(amps, controller.maxCurrentA) }
      : { ...controller, maxPanelIscA: amps };
  return {
    setUp: withCircuit(setUp, { controller: larger }),
    need: { what: `a ${amps} A controller`, price: prices.largerController },
  };
};

const branchFuses = (setUp: SetUp, { branchFuse }: Prices): Mended | null => {
  const { circuit } = setUp;
  const panels = ratedPanels(setUp);
  if (circuit.branchFuseA !== undefined) return null;
  const branchFuseA = branchFuseFor(circuit, Math.max(...panels.map(({ nameplate }) => nameplate.iscA)));
  if (branchFuseA === null) return null;
  const branches = panels.reduce((sum, { howMany, inSeries = 1 }) => sum + howMany / inSeries, 0);
  return {
    setUp: withCircuit(setUp, { branchFuseA }),
    need: {
      what: `a ${branchFuseA} A fuse in each of the ${branches} branches`,
      price: branches * branchFuse,
    },
  };
};

/**
 * Controllers that track power can be told how much to charge with: a setting, no purchase. Where there are none the one that
 * passes what the panels give makes way for one that tracks.
 */
const chargingLimit = (setUp: SetUp, prices: Prices): Mended | null => {
  const { circuit } = setUp;
  const inputs = controllerInputs(circuit, ratedPanels(setUp));
  const limitA = chargeLimitA(setUp);
  const tracking = inputs.filter(({ controller }) => controller.kind === "mppt");
  if (tracking.length === 0) return trackingInstead(setUp, prices);
  const passedA = inputs
    .filter(({ controller }) => controller.kind === "pwm")
    .reduce((sum, input) => sum + input.alike * shortCircuitA(input) * circuit.strongLightFactor, 0);
  const leftA = Math.floor((limitA - passedA) / tracking.reduce((sum, { alike }) => sum + alike, 0));
  if (leftA < 1) return null;
  const held = (controller: Controller): Controller =>
    controller.kind === "mppt"
      ? { ...controller, maxCurrentA: Math.min(leftA, controller.maxCurrentA) }
      : controller;
  const changed = withCircuit(setUp, { controller: held(circuit.controller) });
  const own = setUp.panels.some(({ unit }) => unit.own !== undefined);
  return {
    setUp: own
      ? {
          ...changed,
          panels: setUp.panels.map(({ unit, aims }) => ({
            aims,
            unit: unit.own === undefined ? unit : { ...unit, own: held(unit.own) },
          })),
        }
      : changed,
    need: { what: `the MPPT charging limit set to ${leftA} A`, price: 0 },
  };
};

/** Sizes tried when a cable is too thin. */
const ALL_SIZES = 12;

const thickerRun = (
  setUp: SetUp,
  about: "panel cable" | "battery cable",
  { thickerCable }: Prices,
): Mended | null => {
  const key = about === "panel cable" ? "panelCable" : "batteryCable";
  const [, ...thicker] = thickerRuns(setUp.circuit[key], ALL_SIZES);
  for (const run of thicker) {
    const changed = withCircuit(setUp, { [key]: run });
    if (remarksOf(changed).every((one) => one.kind !== "danger" || one.about !== about)) {
      return {
        setUp: changed,
        need: { what: `${about} of ${wireText(wireSizeOf(run.size))}`, price: thickerCable },
      };
    }
  }
  return null;
};

const mended = (setUp: SetUp, about: RemarkAbout, added: string | null, prices: Prices): Mended | null => {
  switch (about) {
    case "input voltage":
      return (added === null ? null : ownController(setUp, added, prices)) ?? higherController(setUp, prices);
    case "unlike volts":
      return added === null ? null : ownController(setUp, added, prices);
    case "input current":
      return largerController(setUp, prices);
    case "branch fuses":
      return branchFuses(setUp, prices);
    case "charging current":
      return chargingLimit(setUp, prices);
    case "panel cable":
    case "battery cable":
      return thickerRun(setUp, about, prices);
    default:
      return null;
  }
};

/**
 * What is mended before the rest, last first: added panels of another voltage get their own controller, and one that cannot
 * hold back its charge makes way, before the common one is made larger for nothing.
 */
const FIRST_MENDED: readonly RemarkAbout[] = ["charging current", "unlike volts"];

/** More mends than kinds of remark are none: the last ones undo each other. */
const MOST_MENDS = 12;

/** Whether a controller only has to be told its charging limit: said of today's build once, and no change of any remedy. */
const onlyASetting = (setUp: SetUp): boolean =>
  setUp.circuit.controller.kind === "mppt" &&
  remarksOf(setUp).some(({ about }) => about === "charging current");

/**
 * A set-up with all that it needs to pass the same checks as any build: a larger controller, one of its own for added panels
 * of another voltage, a fuse a branch, a thicker cable. What cannot be mended so stays against it.
 *
 * @param added Name of the panels that were added, where there are any.
 * @param today The build as it is: a limit that only has to be set there is told there.
 */
export const bundleOf = (setUp: SetUp, added: string | null, today: SetUp, prices: Prices): Bundle => {
  const needs: Need[] = [];
  let now = setUp;
  const told = onlyASetting(today);
  const unsafeNow = () =>
    remarksOf(now).filter(
      ({ kind, about }) =>
        (kind === "danger" &&
          !(told && about === "charging current" && now.circuit.controller.kind === "mppt")) ||
        (added !== null && about === "unlike volts"),
    );
  for (let mend = 0; mend < MOST_MENDS; mend += 1) {
    const found = [...unsafeNow()]
      .sort((a, b) => FIRST_MENDED.indexOf(b.about) - FIRST_MENDED.indexOf(a.about))
      .map(({ about }) => mended(now, about, added, prices))
      .find((one) => one !== null);
    if (found === undefined || found === null) break;
    now = found.setUp;
    needs.push(found.need);
  }
  return { setUp: now, needs, unsafe: unsafeNow() };
};
