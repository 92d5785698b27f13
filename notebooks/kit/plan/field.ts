import type { Plan } from "../../../lib/plan/plan.ts";
import type { Path } from "./path.ts";

/** The ends of a slider and its step, in the plan's own unit. Typed values may go beyond: the library judges them. */
export interface Slider {
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

interface FieldBase {
  /** Where its value stands in the plan; inside a list, relative to the item. */
  readonly path: Path;
  readonly label: string;
  /** One line of help, shown under the field. */
  readonly says?: string;
  /** Whether the field applies, by the section or list item it belongs to [always]. */
  readonly when?: (item: unknown) => boolean;
}

/** One of several shapes a part of a plan can have, such as a leg stated by its length or by its tilt. */
export interface Variant {
  readonly label: string;
  readonly is: (item: unknown) => boolean;
  /** The part in this shape, made from what it was. */
  readonly make: (item: unknown, plan: Plan) => unknown;
}

/** One thing a person can state. What is allowed is never said here: the library says it when it is not. */
export type Field = FieldBase &
  (
    | {
        readonly kind: "number";
        readonly unit: string;
        readonly slider?: Slider;
        /** What stands in for a value that was left out, where that depends on the rest of the plan. */
        readonly otherwise?: (plan: Plan) => number;
        /** What changes along with it: the whole plan as it is to be, from the plan with the new number and the one before. */
        readonly along?: (given: unknown, before: unknown) => unknown;
      }
    | {
        /** Twelve numbers, January first, which can be pasted all at once. */
        readonly kind: "months";
        readonly unit: string;
        /** Whether they are temperatures, which follow the units in use [false]. */
        readonly temperature?: boolean;
      }
    | { readonly kind: "length"; readonly slider?: Slider }
    | {
        /** Latitude and longitude of the part of the plan at its path, written together. */
        readonly kind: "coordinates";
        /** What changes along with the place: the whole plan as it is to be, from the plan with the new place and the one before. */
        readonly along: (given: unknown, before: unknown) => unknown;
      }
    | { readonly kind: "temperature" }
    | { readonly kind: "text" }
    | { readonly kind: "date" }
    | {
        readonly kind: "choice";
        readonly choices: readonly { readonly value: string | number; readonly label: string }[];
      }
    | { readonly kind: "variant"; readonly variants: readonly Variant[] }
    | {
        /** Something to be told, and what can be done about it: `act` makes the part of the plan anew. */
        readonly kind: "notice";
        readonly text: string | ((item: unknown) => string);
        readonly act: (item: unknown) => unknown;
      }
    | {
        readonly kind: "file";
        readonly accept: string;
        readonly largestBytes: number;
        /** Takes the file's text in; what it returns becomes the plan's value. */
        readonly take: (name: string, text: string) => unknown;
      }
    | {
        readonly kind: "list";
        readonly item: string;
        readonly most: number;
        readonly blank: (count: number) => unknown;
        readonly fields: readonly Field[];
      }
  );

/** A part of the plan that is shown together. */
export interface Section {
  readonly id: string;
  readonly title: string;
  readonly fields: readonly Field[];
}
