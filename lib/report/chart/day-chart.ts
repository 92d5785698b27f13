import * as Plot from "@observablehq/plot";
import { max, maxIndex } from "d3";
import type { DayCurves } from "../../season/light/day-curves.ts";
import { dateWords } from "../../units/dates.ts";
import { clockHours, clockText } from "../words/day-clock.ts";
import { type ChartFrame, drawChart, isNarrow, valueAxis } from "./chart-base.ts";
import { endLabels } from "./setting-marks.ts";
import { settingStyles } from "./setting-styles.ts";
import { colour } from "./theme.ts";

/** What a day chart shows: the panels' power, or the light that falls on the plane. */
export type DayQuantity = "watts" | "plane irradiance";

const MARGIN = { top: 34, left: 44, bottom: 34 };

/**
 * One day for each setting, through the hours of the site's clock: the panels' watts, or the plane irradiance.
 *
 * @param timeZone the site's IANA zone
 */
export const dayChart = (
  curves: DayCurves,
  quantity: DayQuantity,
  timeZone: string,
  frame: ChartFrame,
): SVGSVGElement => {
  const styles = settingStyles(curves.curves);
  const hours = clockHours(curves, timeZone);
  const unit = quantity === "watts" ? "W" : "W/m²";
  const valuesOf = ({ watts, planeWm2 }: DayCurves["curves"][number]) =>
    quantity === "watts" ? watts : planeWm2;
  const points = curves.curves.flatMap((curve, index) =>
    Array.from(hours, (hour, row) => ({
      hour,
      name: styles[index].name,
      colour: styles[index].colour,
      value: valuesOf(curve)[row],
    })),
  );
  const top = Math.max(1, (max(points, ({ value }) => value) ?? 1) * 1.08);
  const narrow = isNarrow(frame);
  const room = narrow ? 96 : 118;
  const height = frame.height ?? (narrow ? 250 : 280);
  const pxPerUnit = (height - MARGIN.top - MARGIN.bottom) / top;
  const tipText = (hour: number, row: number): string =>
    [
      clockText(hour),
      ...curves.curves.map(
        (curve, index) => `${styles[index].name}: ${Math.round(valuesOf(curve)[row])} ${unit}`,
      ),
    ].join("\n");

  return drawChart(frame, {
    name:
      quantity === "watts"
        ? "Power through the day for each setting"
        : "Light on the panel through the day for each setting",
    description: `${dateWords(curves.day.date)}, ${unit} through the hours of the site's clock. The table below holds the same numbers.`,
    height,
    marginTop: MARGIN.top,
    marginLeft: MARGIN.left,
    marginBottom: MARGIN.bottom,
    marginRight: room,
    x: {
      domain: hours.length === 0 ? [0, 24] : [hours[0] - 0.25, hours[hours.length - 1] + 0.25],
      nice: false,
    },
    y: { domain: [0, top] },
    marks: [
      ...valueAxis(quantity === "watts" ? "W" : "W/m² on the plane", 4),
      Plot.axisX({
        anchor: "bottom",
        label: null,
        tickSize: 0,
        ticks: narrow ? 4 : 6,
        interval: narrow ? 4 : 3,
        tickFormat: (hour: number) => clockText(hour),
        color: colour("muted"),
      }),
      Plot.ruleY([0], { stroke: colour("muted") }),
      ...(hours.length === 0
        ? [
            Plot.text(["The sun stays down all day."], {
              frameAnchor: "middle",
              fontSize: 14,
              fill: colour("muted"),
            }),
          ]
        : []),
      Plot.line(points, { x: "hour", y: "value", z: "name", stroke: "colour", strokeWidth: 2 }),
      ...endLabels(
        styles.map((style, index) => {
          const values = valuesOf(curves.curves[index]);
          return { ...style, endsAt: values[maxIndex(values)] ?? 0 };
        }),
        { pxPerUnit, top, room },
      ),
      Plot.ruleX(
        hours,
        Plot.pointerX({ x: (hour: number) => hour, stroke: colour("ink"), strokeOpacity: 0.5 }),
      ),
      Plot.tip(
        hours,
        Plot.pointerX({
          x: (hour: number) => hour,
          y: (_: number, row: number) => max(curves.curves, (curve) => valuesOf(curve)[row]) ?? 0,
          title: (hour: number, row: number) => tipText(hour, row),
          fill: colour("paper"),
          stroke: colour("muted"),
          lineHeight: 1.35,
        }),
      ),
    ],
  });
};
