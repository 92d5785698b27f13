import type { Circuit, Controller } from "../plan/circuit.ts";
import type { CompleteNameplate } from "../plan/nameplate.ts";

/** Panels of one kind, as far as a circuit asks. */
export interface RatedPanels {
  readonly name: string;
  readonly howMany: number;
  readonly nameplate: CompleteNameplate;
  /** Panels one behind another in each string, 1 where nothing is said; the strings stand side by side. */
  readonly inSeries?: number | undefined;
  /** The largest fuse that the label allows in series with a panel, A. */
  readonly maxSeriesFuseA?: number | undefined;
  /** A controller that these panels have to themselves; left out, they are on the circuit's. */
  readonly own?: Controller | undefined;
}

/** Some strings of a kind. */
export interface Strings {
  readonly of: RatedPanels;
  readonly count: number;
  readonly inSeries: number;
}

/** What one controller sees, and how many alike ones there are. */
export interface ControllerInput {
  readonly controller: Controller;
  readonly strings: readonly Strings[];
  readonly alike: number;
  /** Whether it charges through the circuit's own battery cable, or through one like it that it has to itself. */
  readonly shared: boolean;
}

/** Strings of a kind of panel. */
export const stringsOf = ({ howMany, inSeries = 1 }: Pick<RatedPanels, "howMany" | "inSeries">): number =>
  howMany / inSeries;

const strung = (of: RatedPanels, count: number): Strings => ({ of, count, inSeries: of.inSeries ?? 1 });

/** Every controller of a circuit with the strings on it. */
export const controllerInputs = (
  circuit: Circuit,
  panels: readonly RatedPanels[],
): readonly ControllerInput[] => {
  const onCircuit = panels.filter(({ own }) => own === undefined);
  const { controller } = circuit;
  const common: readonly ControllerInput[] =
    circuit.wiring === "own-controllers"
      ? onCircuit.map((of) => ({ controller, strings: [strung(of, 1)], alike: stringsOf(of), shared: true }))
      : onCircuit.length === 0
        ? []
        : [
            {
              controller,
              strings: onCircuit.map((of) => strung(of, stringsOf(of))),
              alike: 1,
              shared: true,
            },
          ];
  return [
    ...common,
    ...panels.flatMap((of): readonly ControllerInput[] =>
      of.own === undefined
        ? []
        : [{ controller: of.own, strings: [strung(of, stringsOf(of))], alike: 1, shared: false }],
    ),
  ];
};

/** Short-circuit current of the strings on one controller, A, by their labels. */
export const shortCircuitA = ({ strings }: ControllerInput): number =>
  strings.reduce((sum, { of, count }) => sum + count * of.nameplate.iscA, 0);

/**
 * The most that a battery cable may have to carry, A: all controllers that share the circuit's, or the one of a controller
 * beside them, whichever is more.
 */
export const mostIntoBatteryA = (inputs: readonly ControllerInput[]): number => {
  const shared = inputs.filter((input) => input.shared);
  const sharedA = shared.reduce((sum, { controller, alike }) => sum + alike * controller.maxCurrentA, 0);
  return Math.max(sharedA, ...inputs.map(({ controller }) => controller.maxCurrentA));
};
