import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cellTemperature,
  currentAt,
  curveAt,
  diodePanel,
  faimanCellC,
  HEAT_LOSS,
  linearPanel,
  linearPowerW,
  maxPowerPoint,
  panelCurrentA,
  panelMaxPower,
  panelPower,
} from "../../lib/panel/index.ts";
import { emptyPlaneColumns } from "../../lib/plane/index.ts";
import { emptySkyColumns } from "../../lib/sky/columns.ts";

const anyRow = fc.record({
  plane: fc.double({ min: 0, max: 1400, noNaN: true }),
  passes: fc.double({ min: 0.5, max: 1, noNaN: true }),
  airC: fc.double({ min: -30, max: 45, noNaN: true }),
  windMs: fc.double({ min: 0, max: 15, noNaN: true }),
});

interface Row {
  readonly plane: number;
  readonly passes: number;
  readonly airC: number;
  readonly windMs: number;
}

const columnsOf = (rows: readonly Row[]) => {
  const plane = emptyPlaneColumns(rows.length);
  const sky = emptySkyColumns(rows.length);
  rows.forEach((row, i) => {
    plane.plane[i] = row.plane;
    plane.absorbed[i] = row.plane * row.passes;
    sky.airC[i] = row.airC;
    sky.windMs[i] = row.windMs;
  });
  return { plane, sky };
};

const losses = { dust: 0.03, other: 0.01 };
const plate = { powerW: 60, vmpV: 17.1, impA: 3.5, vocV: 21.1, iscA: 3.8 };
/** Both kinds of panel, made afresh inside each test. */
const bothKinds = () => ({
  linear: linearPanel(60, -0.004, { losses }),
  diode: diodePanel(plate, { losses }),
});
const left = 0.97 * 0.99;

describe("panelPower", () => {
  test("agrees with the plain forms, row by row, for both kinds of panel", () => {
    const { linear, diode } = bothKinds();
    fc.assert(
      fc.property(fc.array(anyRow, { maxLength: 20 }), (rows) => {
        const { plane, sky } = columnsOf(rows);
        const byLine = panelPower(linear, plane, sky);
        const byCurve = panelPower(diode, plane, sky);
        rows.forEach((row, i) => {
          const light = row.plane * row.passes;
          const cellC = faimanCellC(row.plane, row.airC, row.windMs);
          expect(byLine[i]).toBeCloseTo(left * linearPowerW(linear, light, cellC), 9);
          const full = maxPowerPoint(curveAt(diode.fit.reference, light, cellC)).watts;
          expect(Math.abs(byCurve[i] - left * full)).toBeLessThanOrEqual(0.002 * full + 1e-4 * 60);
        });
      }),
    );
  });

  test("is never negative, nor more than the light on it", () => {
    const { linear, diode } = bothKinds();
    fc.assert(
      fc.property(fc.array(anyRow, { maxLength: 20 }), (rows) => {
        const { plane, sky } = columnsOf(rows);
        for (const model of [linear, diode]) {
          panelPower(model, plane, sky).forEach((watts, i) => {
            expect(watts).toBeGreaterThanOrEqual(0);
            expect(watts).toBeLessThanOrEqual((60 * 1.3 * plane.absorbed[i]) / 1000);
          });
        }
      }),
    );
  });

  test("is the rated power at standard test conditions without losses", () => {
    const { plane, sky } = columnsOf([{ plane: 1000, passes: 1, airC: 25, windMs: 1e12 }]);
    expect(panelPower(linearPanel(60), plane, sky)[0]).toBeCloseTo(60, 6);
    const bare = diodePanel(plate);
    expect(panelPower(bare, plane, sky)[0] / 59.85).toBeCloseTo(1, 4);
  });

  test("gives less on a roof than on a rack in the sun, and alike in the dark", () => {
    const { plane, sky } = columnsOf([
      { plane: 900, passes: 1, airC: 25, windMs: 1 },
      { plane: 0, passes: 1, airC: 25, windMs: 1 },
    ]);
    const rack = panelPower(linearPanel(60), plane, sky);
    const roof = panelPower(linearPanel(60, -0.004, { mount: "flat-on-roof" }), plane, sky);
    expect(roof[0]).toBeLessThan(rack[0]);
    expect(roof[1]).toBe(0);
    expect(rack[1]).toBe(0);
  });

  test("shows what weak light costs: the curve reads below the line", () => {
    const { plane, sky } = columnsOf([{ plane: 50, passes: 1, airC: 25, windMs: 1e12 }]);
    const [line] = panelPower(linearPanel(59.85), plane, sky);
    const [curve] = panelPower(diodePanel(plate), plane, sky);
    expect(curve / line).toBeGreaterThan(0.88);
    expect(curve / line).toBeLessThan(0.97);
  });

  test("keeps NaN in its row", () => {
    const { linear, diode } = bothKinds();
    const { plane, sky } = columnsOf([
      { plane: Number.NaN, passes: 1, airC: 20, windMs: 1 },
      { plane: 500, passes: 1, airC: 20, windMs: 1 },
    ]);
    for (const model of [linear, diode]) {
      const watts = panelPower(model, plane, sky);
      expect(watts[0]).toBeNaN();
      expect(watts[1]).toBeGreaterThan(0);
    }
  });

  test("writes into the column it is given, and refuses other lengths", () => {
    const { linear } = bothKinds();
    const { plane, sky } = columnsOf([]);
    const out = new Float64Array(0);
    expect(panelPower(linear, plane, sky, out)).toBe(out);
    expect(() => panelPower(linear, plane, sky, new Float64Array(2))).toThrow(
      new RangeError("panelPower: expected sky and output of 0 rows, received 0 and 2"),
    );
    expect(() => panelPower(linear, plane, emptySkyColumns(1))).toThrow("received 1 and 0");
  });
});

describe("panelCurrentA and panelMaxPower", () => {
  test("are the curve's, after constant losses", () => {
    const { diode } = bothKinds();
    const curve = curveAt(diode.fit.reference, 600, 40);
    expect(panelCurrentA(diode, 13, 600, 40)).toBeCloseTo(left * currentAt(curve, 13), 4);
    expect(panelMaxPower(diode, 600, 40).watts).toBeCloseTo(left * maxPowerPoint(curve).watts, 2);
    expect(panelMaxPower(diode, 600, 40).volts).toBeCloseTo(maxPowerPoint(curve).volts, 2);
    expect(panelCurrentA(diode, 13, 0, 40)).toBe(0);
  });
});

describe("cellTemperature", () => {
  test("is Faiman's in every row, by the panel's own mount", () => {
    fc.assert(
      fc.property(fc.array(anyRow, { maxLength: 20 }), (rows) => {
        const { plane, sky } = columnsOf(rows);
        const onRoof = linearPanel(60, -0.004, { mount: "flat-on-roof" });
        cellTemperature(onRoof, plane, sky).forEach((cellC, i) => {
          const { plane: light, airC, windMs } = rows[i]!;
          expect(cellC).toBeCloseTo(faimanCellC(light, airC, windMs, HEAT_LOSS["flat-on-roof"]), 10);
        });
      }),
    );
  });
});

describe("linearPanel", () => {
  test("refuses what is no panel", () => {
    expect(() => linearPanel(0)).toThrow(
      new RangeError("linearPanel: expected rated power above 0 W, received 0"),
    );
    expect(() => linearPanel(Number.POSITIVE_INFINITY)).toThrow("received Infinity");
    expect(() => linearPanel(60, 0.004)).toThrow(
      new RangeError("linearPanel: expected a temperature coefficient of -0.02 to 0 per K, received 0.004"),
    );
    expect(() => linearPanel(60, -0.4)).toThrow("received -0.4");
    expect(() => linearPanel(60, Number.NaN)).toThrow("received NaN");
    expect(linearPanel(60, 0).powerPerK).toBe(0);
    expect(linearPanel(60, -0.02).powerPerK).toBe(-0.02);
    expect(linearPanel(60).powerPerK).toBe(-0.004);
  });

  test("takes its heat loss from its NOCT on a rack, and from the roof on a roof", () => {
    expect(linearPanel(60, -0.004, { noctC: 48 }).heatLoss.u0).toBeCloseTo(800 / 28 - 6.84, 10);
    expect(linearPanel(60, -0.004, { noctC: 48, mount: "flat-on-roof" }).heatLoss).toBe(
      HEAT_LOSS["flat-on-roof"],
    );
  });

  test("gives no negative power, however hot", () => {
    expect(linearPowerW({ ratedW: 60, powerPerK: -0.02 }, 1000, 200)).toBe(0);
    expect(linearPowerW({ ratedW: 60, powerPerK: -0.004 }, 1000, 45)).toBeCloseTo(55.2, 12);
  });
});
