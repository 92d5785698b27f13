/** Cell temperature against the standard's definition, the textbook and Faiman's formula. */
import {
  faimanCellC,
  HEAT_LOSS,
  heatLossOfNoct,
  rossCellC,
  rossCoefficient,
} from "../../../lib/panel/index.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Comparison } from "./comparison.ts";
import { idOf, inputReader, numberOf } from "./fields.ts";

const rows = readReference("cell-temperature.csv");
const byId = (id: string): ReferenceRow => {
  const row = rows.find((each) => idOf(each) === id);
  if (row === undefined) throw new Error(`cell-temperature.csv: no row ${id}`);
  return row;
};

export const cellTemperature: readonly Comparison[] = [
  {
    quantity: "module temperature, Faiman",
    reference: "Faiman 2008, evaluated by an independent program",
    unit: "K",
    cause: "two printed decimals (0.05 at NOCT)",
    count: 5,
    cases: () =>
      rows
        .filter((row) => idOf(row).startsWith("FAI-"))
        .map((row) => {
          const input = inputReader(row);
          const cellC = faimanCellC(
            input("plane_irradiance_W_per_m2"),
            input("air_temperature_C"),
            input("wind_m_per_s"),
            { u0: input("U0"), u1: input("U1") },
          );
          return absolute(idOf(row), cellC, numberOf(row, "expected"), numberOf(row, "tolerance"));
        }),
  },
  {
    quantity: "cell temperature from NOCT",
    reference: "Masters 2004, Example 8.5",
    unit: "K",
    cause: "the example rounds to whole degrees",
    count: 1,
    cases: () => {
      const example = byId("MAS85-T");
      const input = inputReader(example);
      return [
        absolute(
          idOf(example),
          rossCellC(input("plane_irradiance_W_per_m2"), input("air_temperature_C"), input("noct_C")),
          numberOf(example, "expected"),
          numberOf(example, "tolerance"),
        ),
      ];
    },
  },
  {
    quantity: "cell temperature at the conditions of NOCT",
    reference: "IEC 61215",
    unit: "K",
    cause: "exact",
    identity: "the heat loss is made from that very definition",
    count: 3,
    cases: () => {
      const standard = inputReader(byId("NOCT-def"));
      const conditions = [
        standard("plane_irradiance_W_per_m2"),
        standard("air_temperature_C"),
        standard("wind_m_per_s"),
      ] as const;
      return [42, 45, 48].map((noctC) =>
        absolute(`NOCT-def ${noctC}`, faimanCellC(...conditions, heatLossOfNoct(noctC)), noctC, 1e-9),
      );
    },
  },
  {
    quantity: "kelvins for each W/m2 (Ross)",
    reference: "Ross 1976; Maturi et al. 2014",
    unit: "K m2/W",
    cause: "printed digits; the range of all mounts, 0.02 to 0.06, for both of ours in light wind",
    count: 3,
    cases: () => {
      const row = byId("NOCT-k");
      const [least, most] = (byId("ROSS-range").expected ?? "").split("-").map(Number);
      const middle = (least + most) / 2;
      return [
        absolute(
          idOf(row),
          rossCoefficient(inputReader(row)("noct_C")),
          numberOf(row, "expected"),
          numberOf(row, "tolerance"),
        ),
        ...(["open-rack", "flat-on-roof"] as const).map((mount) => {
          const perWm2 = (faimanCellC(800, 20, 1, HEAT_LOSS[mount]) - 20) / 800;
          return absolute(`ROSS-range ${mount}`, perWm2, middle, (most - least) / 2);
        }),
      ];
    },
  },
];
