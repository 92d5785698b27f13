/// <reference types="vite/client" />

/** A text file carried by the page, packed: its gzip as base64 (see `build/packed.ts`). */
declare module "*?packed" {
  const packed: string;
  export default packed;
}

/** A worker's bundled code, as gzip in base64: see build/worker-code.ts. */
declare module "*?worker-code" {
  const packed: string;
  export default packed;
}

/** Libraries that ship no types: what our notebooks use of them. */
declare module "observable:runtime/stdlib/md.js" {
  export const md: (strings: TemplateStringsArray, ...values: readonly unknown[]) => Element;
}

declare module "@observablehq/inputs" {
  interface Labelled {
    readonly label?: string | Node;
    readonly disabled?: boolean;
  }
  type Input<T> = HTMLElement & { value: T };

  export function range(
    extent: readonly [number, number],
    options?: Labelled & {
      readonly value?: number;
      readonly step?: number;
      readonly format?: (x: number) => string;
    },
  ): Input<number>;
  export function select<T>(
    choices: Iterable<T>,
    options?: Labelled & { readonly value?: T; readonly format?: (choice: T) => string },
  ): Input<T>;
  export function radio<T>(
    choices: Iterable<T>,
    options?: Labelled & { readonly value?: T; readonly format?: (choice: T) => string },
  ): Input<T>;
  export function toggle(options?: Labelled & { readonly value?: boolean }): Input<boolean>;
  export function date(
    options?: Labelled & {
      readonly value?: Date | string;
      readonly min?: Date | string;
      readonly max?: Date | string;
    },
  ): Input<Date | null>;
}
