import type * as Plot from "@observablehq/plot";
import { contours, interpolateCividis, max, range } from "d3";
import type { TiltLadder } from "../../season/legs/tilt-ladder.ts";

/** Shades of the tilt-by-date map, from nothing to the day that brings most. */
export const SHADES = 14;

/** The colour of a share of the most (Cividis, alike for every kind of colour vision). */
export const shadeColour = interpolateCividis;

/** Rows that shades are drawn from: a day's energy bends so gently with the tilt that more would only cost time. */
const ROWS = 46;

const SVG = "http://www.w3.org/2000/svg";

/** What the best day at its best tilt brings, Wh; at least 1. */
export const mostWh = ({ dayWh }: TiltLadder): number =>
  Math.max(1, max(dayWh, (column) => max(column)) ?? 1);

/** Where in the chart the map is drawn, px. */
interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** One shade: everything that brings at least so much. */
interface Shade {
  readonly fill: string;
  readonly path: string;
}

const clamp = (share: number): number => Math.min(1, Math.max(0, share));

const shadesIn = (ladder: TiltLadder, { left, top, width, height }: Box): readonly Shade[] => {
  const days = ladder.days.length;
  const every = Math.max(1, Math.round((ladder.dayWh.length - 1) / (ROWS - 1)));
  const rows = ladder.dayWh.filter((_, rung) => rung % every === 0);
  const most = mostWh(ladder);
  // A row's value holds at its tilt, a column's at the middle of its day: half a cell in, as the contours have it.
  const point = ([x, y]: readonly number[]): string =>
    `${(left + clamp(x / days) * width).toFixed(1)},${(top + clamp(1 - (y - 0.5) / (rows.length - 1)) * height).toFixed(1)}`;
  return contours()
    .size([days, rows.length])
    .thresholds(range(0, most, most / SHADES))(rows.flatMap((column) => Array.from(column)))
    .map(({ value, coordinates }) => ({
      fill: shadeColour(value / most),
      path: coordinates.flatMap((rings) => rings.map((ring) => `M${ring.map(point).join("L")}Z`)).join(""),
    }));
};

/** Shades as they were last drawn from a ladder: a leg being moved changes none of them. */
const drawn = new WeakMap<TiltLadder, { readonly key: string; readonly shades: readonly Shade[] }>();

const shadesOf = (ladder: TiltLadder, box: Box): readonly Shade[] => {
  const key = JSON.stringify(box);
  const before = drawn.get(ladder);
  if (before?.key === key) return before.shades;
  const shades = shadesIn(ladder, box);
  drawn.set(ladder, { key, shades });
  return shades;
};

/**
 * A mark that fills a chart's frame with a ladder's energies: the ladder's days across, its tilts from 0 to 90 degrees
 * upwards.
 */
export const shadesMark =
  (ladder: TiltLadder): Plot.RenderFunction =>
  (_index, _scales, _values, dimensions, { document }) => {
    const { marginLeft: left, marginTop: top, marginRight, marginBottom } = dimensions;
    const box = {
      left,
      top,
      width: dimensions.width - left - marginRight,
      height: dimensions.height - top - marginBottom,
    };
    const group = document.createElementNS(SVG, "g");
    group.setAttribute("aria-label", "contour");
    for (const { fill, path } of shadesOf(ladder, box)) {
      const shape = document.createElementNS(SVG, "path");
      shape.setAttribute("fill", fill);
      shape.setAttribute("d", path);
      group.append(shape);
    }
    return group;
  };
