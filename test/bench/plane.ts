import { curveAt, diodePanel, faimanCellC, maxPowerPoint, panelPower } from "../../lib/panel/index.ts";
import {
  domeColumns,
  emptyPlaneColumns,
  lightOnPlane,
  martinRuizGlass,
  planeColumns,
} from "../../lib/plane/index.ts";
import { seasonClearSky, seasonSun } from "../../lib/season/light/season-skies.ts";
import type { Aim } from "../../lib/units/angle.ts";
import { demoYear } from "./demo-year.ts";
import { measure, measuredLine, ratioLine } from "./measure.ts";

const AIMS: readonly Aim[] = [20, 40, 60].map((tiltDeg) => ({ tiltDeg, bearingDeg: 170 }));

/** The plane loop and the panel loop against their plain forms. */
export const benchPlane = (): readonly string[] => {
  const plan = demoYear();
  const sun = seasonSun(plan);
  const sky = seasonClearSky(plan, sun);
  const dome = domeColumns(sun, sky);
  const glass = martinRuizGlass();
  const light = emptyPlaneColumns(sun.length);
  const watts = new Float64Array(sun.length);
  const panel = diodePanel({ powerW: 100, vmpV: 18, impA: 5.56, vocV: 22, iscA: 5.9 });
  const { u0, u1 } = panel.heatLoss;
  const rowOf = (row: number) => ({
    towards: { east: sun.east[row], north: sun.north[row], up: sun.up[row] },
    moment: {
      beamNormal: sky.beamNormal[row],
      diffuse: sky.diffuse[row],
      global: sky.global[row],
      extraterrestrial: sky.extraterrestrial[row],
      airMass: sky.airMass[row],
      albedo: sky.albedo[row],
    },
  });
  const runs = measure([
    {
      name: "plane, plain form, 3 aims",
      run: () => {
        let sum = 0;
        for (const aim of AIMS) {
          for (let row = 0; row < sun.length; row += 1) {
            const { towards, moment } = rowOf(row);
            sum += lightOnPlane(towards, moment, aim, glass).absorbed;
          }
        }
        return sum;
      },
    },
    {
      name: "plane, columns, 3 aims",
      run: () => AIMS.reduce((sum, aim) => sum + planeColumns(sun, dome, aim, glass, light).absorbed[99], 0),
    },
    {
      name: "panel, full curve solved, 1 aim",
      run: () => {
        let sum = 0;
        for (let row = 0; row < sun.length; row += 1) {
          const cellC = faimanCellC(light.plane[row], sky.airC[row], sky.windMs[row], { u0, u1 });
          sum += maxPowerPoint(curveAt(panel.fit.reference, light.absorbed[row], cellC)).watts;
        }
        return sum;
      },
    },
    { name: "panel, tabled, 1 aim", run: () => panelPower(panel, light, sky, watts)[99] },
  ]);
  const [plain, fast, solved, tabled] = runs.map(({ leastMs }) => leastMs);
  const nsPerRow = (ms: number, aims: number): string => ((ms * 1e6) / (aims * sun.length)).toFixed(1);
  return [
    `Plane and panel, a year at 10 minutes, ${sun.length} daylight rows:`,
    ...runs.map(measuredLine),
    ratioLine("plane: plain form / columns", plain / fast, 25, "at least"),
    ratioLine("panel: full solution / tabled", solved / tabled, 10, "at least"),
    `  plane ${nsPerRow(fast, 3)} ns, panel ${nsPerRow(tabled, 1)} ns a step and aim`,
  ];
};
