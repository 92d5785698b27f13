import { awgAreaMm2 } from "./awg.ts";
import type { Metal } from "./metal.ts";
import type { WireSize } from "./wire.ts";
import { areaMm2Of } from "./wire.ts";

/**
 * Published currents that cables may carry, A, at 30 degC round them. From memory, to be confirmed by the local code.
 * The American table is NEC (NFPA 70) table 310.16, up to three conductors in a raceway, by insulation temperature; its
 * two thinnest rows are flexible cord, table 400.5(A)(1) column B. The metric one is IEC 60364-5-52 table B.52.2,
 * method B1, two loaded conductors, PVC 70 degC and XLPE 90 degC; its rows below 1.5 mm2 are flexible cord (HD 516).
 */
const TABLE_AIR_C = 30;

interface GaugeRow {
  readonly gauge: number;
  readonly copper: readonly [at60: number, at75: number, at90: number];
  readonly aluminium: readonly [at60: number, at75: number, at90: number] | null;
}

const gaugeRow = (
  gauge: number,
  copper: GaugeRow["copper"],
  aluminium: GaugeRow["aluminium"] = null,
): GaugeRow => ({ gauge, copper, aluminium });

const GAUGES: readonly GaugeRow[] = [
  gaugeRow(18, [10, 10, 10]),
  gaugeRow(16, [13, 13, 13]),
  gaugeRow(14, [15, 20, 25]),
  gaugeRow(12, [20, 25, 30], [15, 20, 25]),
  gaugeRow(10, [30, 35, 40], [25, 30, 35]),
  gaugeRow(8, [40, 50, 55], [35, 40, 45]),
  gaugeRow(6, [55, 65, 75], [40, 50, 55]),
  gaugeRow(4, [70, 85, 95], [55, 65, 75]),
  gaugeRow(3, [85, 100, 115], [65, 75, 85]),
  gaugeRow(2, [95, 115, 130], [75, 90, 100]),
  gaugeRow(1, [110, 130, 145], [85, 100, 115]),
  gaugeRow(0, [125, 150, 170], [100, 120, 135]),
  gaugeRow(-1, [145, 175, 195], [115, 135, 150]),
  gaugeRow(-2, [165, 200, 225], [130, 155, 175]),
  gaugeRow(-3, [195, 230, 260], [150, 180, 205]),
];

interface MetricRow {
  readonly areaMm2: number;
  readonly copper: readonly [at70: number, at90: number];
  readonly aluminium: readonly [at70: number, at90: number] | null;
}

const metricRow = (
  areaMm2: number,
  copper: MetricRow["copper"],
  aluminium: MetricRow["aluminium"] = null,
): MetricRow => ({ areaMm2, copper, aluminium });

const METRIC: readonly MetricRow[] = [
  metricRow(0.5, [3, 3]),
  metricRow(0.75, [6, 6]),
  metricRow(1, [10, 10]),
  metricRow(1.5, [17.5, 23]),
  metricRow(2.5, [24, 31]),
  metricRow(4, [32, 42]),
  metricRow(6, [41, 54]),
  metricRow(10, [57, 75]),
  metricRow(16, [76, 100], [60, 79]),
  metricRow(25, [101, 133], [79, 105]),
  metricRow(35, [125, 164], [97, 130]),
  metricRow(50, [151, 198], [118, 157]),
  metricRow(70, [192, 253], [150, 200]),
  metricRow(95, [232, 306], [181, 242]),
  metricRow(120, [269, 354], [210, 281]),
];

/**
 * The largest fuse that the American code lets stand before a small conductor, A, whatever its insulation: NEC 240.4(D), from
 * memory. Metric wires that are no thicker are held to the same.
 */
const SMALL_CONDUCTORS: readonly {
  readonly gauge: number;
  readonly copperA: number;
  readonly aluminiumA: number | null;
}[] = [
  { gauge: 18, copperA: 7, aluminiumA: null },
  { gauge: 16, copperA: 10, aluminiumA: null },
  { gauge: 14, copperA: 15, aluminiumA: null },
  { gauge: 12, copperA: 20, aluminiumA: 15 },
  { gauge: 10, copperA: 30, aluminiumA: 25 },
];

/**
 * The largest fuse before a small conductor, A: 15 for 14 AWG copper, 20 for 12 AWG, 30 for 10 AWG, by NEC 240.4(D) (from
 * memory). A metric size has the cap of the thinnest gauge that is at least as thick; infinite above 10 AWG.
 *
 * @example smallConductorFuseA({ series: "awg", gauge: 12 }, "copper") // 20
 * @example smallConductorFuseA({ series: "metric", areaMm2: 2.5 }, "copper") // 20
 */
export const smallConductorFuseA = (size: WireSize, metal: Metal): number => {
  const row = SMALL_CONDUCTORS.find(({ gauge }) =>
    size.series === "awg" ? size.gauge >= gauge : size.areaMm2 <= awgAreaMm2(gauge),
  );
  if (row === undefined) return Number.POSITIVE_INFINITY;
  return (metal === "copper" ? row.copperA : row.aluminiumA) ?? 0;
};

/** Insulation temperatures that a plan may state. */
export type InsulationC = 60 | 70 | 75 | 90;

/** What a table lets a wire carry, and which table said so. */
export interface Ampacity {
  readonly ampsAt30C: number;
  /** The same with warmer or cooler air round it. */
  readonly amps: number;
  readonly source: string;
}

/**
 * Share of the listed current left when the air round a cable is not at the table's 30 degC:
 * sqrt((insulation - air) / (insulation - 30)); 0 when the air is as hot as the insulation may be.
 *
 * The form of NEC 310.15(B)(2) and of IEC 60364-5-52 table B.52.14 (0.87 at 40 degC, 0.71 at 50 degC for PVC).
 *
 * @example airFactor(70, 40) // 0.866
 */
export const airFactor = (insulationC: number, airC: number): number =>
  Math.sqrt(Math.max(0, insulationC - airC) / (insulationC - TABLE_AIR_C));

/** The table's row for a gauge that shops skip, or an odd metric size: the next thinner one listed. */
const rowFor = <Row>(rows: readonly Row[], thinEnough: (row: Row) => boolean): Row | null =>
  rows.filter(thinEnough).at(-1) ?? null;

/**
 * The current that a wire may carry by a published table, at the air temperature stated.
 *
 * An odd size is given the next thinner listed one's current, an odd insulation the next cooler column's.
 *
 * @returns `null` where no table lists the size: thinner than 18 AWG or 0.5 mm2, or thin aluminium
 * @example ampacityOf({ series: "awg", gauge: 12 }, "copper", 75, 30)?.amps // 25
 */
export const ampacityOf = (
  size: WireSize,
  metal: Metal,
  insulationC: InsulationC,
  airC: number,
): Ampacity | null => {
  const [listed, source] =
    size.series === "awg"
      ? [
          rowFor(GAUGES, ({ gauge }) => gauge >= size.gauge)?.[metal]?.[
            insulationC >= 90 ? 2 : insulationC >= 75 ? 1 : 0
          ],
          size.gauge >= 15 ? "NEC table 400.5(A)(1), flexible cord" : "NEC table 310.16, in a raceway",
        ]
      : [
          insulationC < 70
            ? undefined
            : rowFor(METRIC, ({ areaMm2 }) => areaMm2 <= areaMm2Of(size) + 1e-9)?.[metal]?.[
                insulationC >= 90 ? 1 : 0
              ],
          size.areaMm2 < 1.5 ? "HD 516, flexible cord" : "IEC 60364-5-52 table B.52.2, method B1",
        ];
  if (listed === undefined) return null;
  const columnC =
    size.series === "awg" ? (insulationC === 70 ? 60 : insulationC) : insulationC >= 90 ? 90 : 70;
  return { ampsAt30C: listed, amps: listed * airFactor(columnC, airC), source };
};
