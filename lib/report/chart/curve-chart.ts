import * as Plot from "@observablehq/plot";
import type { CurveToShow } from "../words/curve-to-show.ts";
import { type ChartFrame, drawChart, isNarrow, valueAxis } from "./chart-base.ts";
import { colour } from "./theme.ts";

interface CurvePoint {
  readonly volts: number;
  readonly amps: number;
}

const STEPS = 160;

/**
 * A panel's current against its voltage, with its cable, at one or more warmths: where an MPPT controller works, where a
 * PWM one does, and the power each takes, as the area from the origin to its point.
 */
export const curveChart = (shown: readonly CurveToShow[], frame: ChartFrame): SVGSVGElement => {
  const narrow = isNarrow(frame);
  const topV = Math.max(...shown.map(({ curve }) => curve.openV));
  const topA = Math.max(...shown.map(({ curve }) => curve.ampsAt(0)));
  const lines = shown.flatMap(({ label, curve }, index) =>
    Array.from(
      { length: STEPS + 1 },
      (_, step): CurvePoint & { readonly label: string; readonly index: number } => {
        const volts = (curve.openV * step) / STEPS;
        return { volts, amps: curve.ampsAt(volts), label, index };
      },
    ),
  );
  const points = shown.flatMap(({ label, curve }) => [
    { ...curve.mppt, label, kind: "MPPT" },
    { ...curve.pwm, label, kind: "PWM" },
  ]);
  return drawChart(frame, {
    name: "Current against voltage, and where each controller works",
    description: `Operating points: ${points
      .map(
        ({ label, kind, volts, amps, watts }) =>
          `${label}, ${kind}: ${volts.toFixed(1)} V, ${amps.toFixed(2)} A, ${watts.toFixed(0)} W`,
      )
      .join("; ")}.`,
    height: frame.height ?? (narrow ? 300 : 360),
    marginTop: 34,
    marginLeft: 44,
    marginRight: narrow ? 18 : 40,
    marginBottom: 40,
    x: { domain: [0, topV * 1.05] },
    y: { domain: [0, topA * 1.12] },
    marks: [
      ...valueAxis("A", 5),
      Plot.axisX({ anchor: "bottom", label: null, tickSize: 0, color: colour("muted") }),
      Plot.text(["V"], { frameAnchor: "bottom-right", dy: 28, fill: colour("muted") }),
      ...points.map((point) =>
        Plot.rect([point], {
          x1: 0,
          x2: "volts",
          y1: 0,
          y2: "amps",
          fill: point.kind === "MPPT" ? colour("accent") : colour("muted"),
          fillOpacity: 0.07,
        }),
      ),
      Plot.line(lines, {
        x: "volts",
        y: "amps",
        z: "label",
        stroke: colour("ink"),
        strokeWidth: 2,
        strokeOpacity: ({ index }: { readonly index: number }) => 1 - 0.45 * index,
      }),
      Plot.dot(points, {
        x: "volts",
        y: "amps",
        r: 5,
        symbol: ({ kind }: { readonly kind: string }) => (kind === "MPPT" ? "circle" : "square"),
        fill: ({ kind }: { readonly kind: string }) =>
          kind === "MPPT" ? colour("accent") : colour("warning"),
      }),
      ...(["PWM", "MPPT"] as const).map((which) =>
        Plot.text(
          points.filter(({ kind }) => kind === which),
          {
            x: "volts",
            y: "amps",
            text: ({ label, watts }: { readonly label: string; readonly watts: number }) =>
              `${which} ${watts.toFixed(0)} W${shown.length > 1 && !narrow ? `, ${label}` : ""}`,
            textAnchor: "end",
            dx: -9,
            dy: which === "PWM" ? -13 : 14,
            fontWeight: 600,
            stroke: colour("paper"),
            fill: colour("ink"),
          },
        ),
      ),
    ],
  });
};
