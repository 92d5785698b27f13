import * as Plot from "@observablehq/plot";
import { max } from "d3";
import type { SkyToPlane } from "../../../lib/plan/sky.ts";
import { type ChartFrame, drawChart, isNarrow } from "../../../lib/report/chart/chart-base.ts";
import { colour, settingColour } from "../../../lib/report/chart/theme.ts";
import { compassPoint } from "../../../lib/report/words/words.ts";
import type { MeasuredStation } from "./outcomes.ts";

const ROW_PX = 34;
const MARGIN = { top: 52, bottom: 34, right: 24 };

/** How each model is drawn: a shape of its own beside its colour. */
const MODELS: Readonly<
  Record<SkyToPlane, { readonly name: string; readonly ink: string; readonly symbol: string }>
> = {
  perez: { name: "Perez", ink: colour("accent"), symbol: "circle" },
  "hay-davies": { name: "Hay-Davies", ink: settingColour(3), symbol: "square" },
  isotropic: { name: "even sky", ink: settingColour(1), symbol: "triangle" },
};

/** Error of the daily sums on each plane of a station, by the default model and the two kept for comparison. */
export const modelErrorsChart = ({ station, planes }: MeasuredStation, frame: ChartFrame): SVGSVGElement => {
  const narrow = isNarrow(frame);
  const dots = planes.flatMap(({ bearingDeg, errors }) =>
    errors.map(({ model, rmsePct, biasPct }) => ({
      plane: compassPoint(bearingDeg),
      ...MODELS[model],
      rmsePct,
      tip: `${compassPoint(bearingDeg)}, ${MODELS[model].name}\nerror ${rmsePct.toFixed(1)} %, bias ${biasPct.toFixed(1)} %`,
    })),
  );
  const top = 1.08 * (max(dots, ({ rmsePct }) => rmsePct) ?? 1);
  const keys = Object.values(MODELS).map((model, index) => ({ ...model, at: index }));
  return drawChart(frame, {
    name: `Error of daily sums by sky-to-plane model: ${station}`,
    description: `${planes.length} planes, three models; root-mean-square, per cent of the mean measured day.`,
    height: frame.height ?? MARGIN.top + MARGIN.bottom + ROW_PX * planes.length,
    marginTop: MARGIN.top,
    marginBottom: MARGIN.bottom,
    marginLeft: narrow ? 72 : 84,
    marginRight: MARGIN.right,
    x: { domain: [0, top] },
    y: { domain: planes.map(({ bearingDeg }) => compassPoint(bearingDeg)), label: null },
    marks: [
      Plot.gridX({ stroke: colour("hairline"), strokeOpacity: 1, ticks: 5 }),
      Plot.axisY({ tickSize: 0, label: null, color: colour("ink") }),
      Plot.axisX({
        ticks: 5,
        tickSize: 0,
        label: null,
        color: colour("muted"),
        tickFormat: (percent: number) => `${percent} %`,
      }),
      ...keys.flatMap(({ name, ink, symbol, at }) => [
        Plot.dot([name], {
          frameAnchor: "top-left",
          dx: 6 + at * 100,
          dy: -34,
          symbol: symbol as Plot.SymbolType,
          fill: ink,
          r: 5,
        }),
        Plot.text([name], {
          frameAnchor: "top-left",
          dx: 16 + at * 100,
          dy: -34,
          textAnchor: "start",
          fill: colour("ink"),
        }),
      ]),
      Plot.text(["root-mean-square of daily sums"], {
        frameAnchor: "top-left",
        dy: -14,
        textAnchor: "start",
        fill: colour("muted"),
      }),
      ...keys.map(({ name, ink, symbol }) =>
        Plot.dot(
          dots.filter((dot) => dot.name === name),
          {
            x: "rmsePct",
            y: "plane",
            symbol: symbol as Plot.SymbolType,
            fill: ink,
            r: 5.5,
          },
        ),
      ),
      Plot.tip(
        dots,
        Plot.pointer({
          x: "rmsePct",
          y: "plane",
          title: "tip",
          fill: colour("raised"),
          stroke: colour("hairline"),
        }),
      ),
    ],
  });
};
