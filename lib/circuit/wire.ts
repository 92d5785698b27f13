import type { CableRun } from "../plan/circuit.ts";
import { gaugeOf, gaugeText, THICKEST_GAUGE } from "../plan/wire-size.ts";
import { awgAreaMm2, awgOhmPerKm } from "./awg.ts";
import { IEC_AREAS_MM2, iecOhmPerKm } from "./iec-sizes.ts";
import type { Metal } from "./metal.ts";

/** A wire size: of the metric series or of the American gauge. */
export type WireSize =
  | { readonly series: "metric"; readonly areaMm2: number }
  | { readonly series: "awg"; readonly gauge: number };

/** How the wire is made up. */
export type Strands = "flexible" | "stranded" | "solid";

/**
 * A wire size from a plan: a number is mm2, text is a gauge.
 *
 * @throws RangeError when the text is no gauge or the number not above 0
 * @example wireSizeOf("12 AWG") // { series: "awg", gauge: 12 }
 */
export const wireSizeOf = (size: number | string): WireSize => {
  const gauge = typeof size === "string" ? gaugeOf(size) : null;
  if (typeof size === "number" && size > 0) return { series: "metric", areaMm2: size };
  if (gauge !== null) return { series: "awg", gauge };
  throw new RangeError(`wireSizeOf: expected mm2 above 0 or a gauge such as "12 AWG", received ${size}`);
};

/** Cross-section of a size, mm2. @example areaMm2Of({ series: "awg", gauge: 12 }) // 3.3088 */
export const areaMm2Of = (size: WireSize): number =>
  size.series === "metric" ? size.areaMm2 : awgAreaMm2(size.gauge);

/** A size as people write it. @example wireText({ series: "metric", areaMm2: 4 }) // "4 mm²" */
export const wireText = (size: WireSize): string =>
  size.series === "metric" ? `${size.areaMm2} mm²` : gaugeText(size.gauge);

/** Gauges that shops sell, thin to thick: every second one, then every one from 2 on. */
const SOLD_GAUGES: readonly number[] = [18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, THICKEST_GAUGE];

/** The next thicker sizes of the same series, thinnest first; fewer than asked at the end of the series. */
export const thickerSizes = (size: WireSize, howMany: number): readonly WireSize[] =>
  size.series === "metric"
    ? IEC_AREAS_MM2.filter((areaMm2) => areaMm2 > size.areaMm2)
        .slice(0, howMany)
        .map((areaMm2) => ({ series: "metric", areaMm2 }))
    : SOLD_GAUGES.filter((gauge) => gauge < size.gauge)
        .slice(0, howMany)
        .map((gauge) => ({ series: "awg", gauge }));

/** Resistance of one wire, ohm/km at a conductor temperature. Gauges have no flexible class: stranded is taken. */
export const ohmPerKm = (size: WireSize, strands: Strands, metal: Metal, conductorC: number): number =>
  size.series === "metric"
    ? iecOhmPerKm(size.areaMm2, strands === "flexible" ? "5" : "1-2", metal, conductorC)
    : awgOhmPerKm(size.gauge, strands === "solid" ? "solid" : "stranded", metal, conductorC);

/**
 * Resistance of a cable run, ohm: out and back, and its contacts.
 *
 * @example
 * runOhm({ size: 2.5, lengthM: 10, material: "copper", strands: "flexible", conductorC: 20,
 *          insulationC: 70, contactMilliohm: 0 }) // 0.1596
 */
export const runOhm = (run: CableRun): number =>
  (2 * run.lengthM * ohmPerKm(wireSizeOf(run.size), run.strands, run.material, run.conductorC)) / 1000 +
  run.contactMilliohm / 1000;
