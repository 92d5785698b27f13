import { select } from "d3";
import { tiltWords } from "../../stand/reading.ts";
import { otherReading, toRadians } from "../../units/angle.ts";
import { checkBar, paperDrawing } from "./true-size.ts";

/** A leg to be marked on the gauge. */
export interface GaugeMark {
  readonly name: string;
  /** Degrees up from horizontal, 0 to 90. */
  readonly tiltDeg: number;
}

const WIDTH_MM = 190;
/** Height without the list of legs. */
const HEIGHT_MM = 156;
const LIST_LINE_MM = 5;
const LONGEST_NAME = 18;
const RADIUS_MM = 82;
/** Where the card is cut. */
const EDGE_MM = RADIUS_MM + 11.5;
/** The thread's hole, on the straight edge. */
const HOLE = { x: WIDTH_MM / 2, y: 34 };

/**
 * A point of the gauge: how far from the thread's hole, for a plumb line that hangs there while the straight edge lies
 * along a panel at that tilt. On the left half the panel rises to the right, and the other way round.
 */
export const gaugePoint = (
  tiltDeg: number,
  radiusMm: number,
  half: "left" | "right",
): { readonly x: number; readonly y: number } => {
  const across = radiusMm * Math.sin(toRadians(tiltDeg));
  return {
    x: HOLE.x + (half === "left" ? -across : across),
    y: HOLE.y + radiusMm * Math.cos(toRadians(tiltDeg)),
  };
};

const shortened = (name: string): string =>
  name.length <= LONGEST_NAME ? name : `${name.slice(0, LONGEST_NAME - 1)}\u2026`;

const tickLength = (degrees: number): number => (degrees % 10 === 0 ? 6 : degrees % 5 === 0 ? 4 : 2.2);

/**
 * A tilt gauge to print at true size: a half-round protractor for a thread with a weight. Its straight edge is laid
 * along the frame; outside the arc the thread reads the tilt from the ground, inside it the same from a post. The
 * plan's legs are marked.
 *
 * @returns an SVG 190 mm wide and 156 mm high (5 more for each leg), with a bar of 100 mm to check the print by
 */
export const tiltGauge = (document: Document, marks: readonly GaugeMark[]): SVGSVGElement => {
  const heightMm = HEIGHT_MM + LIST_LINE_MM * marks.length;
  const svg = paperDrawing(document, WIDTH_MM, heightMm, {
    name: "Tilt gauge",
    description: `A protractor for a plumb line, to be printed at true size. Marked: ${marks.map(({ name, tiltDeg }) => `${name} ${tiltDeg.toFixed(0)} degrees`).join(", ") || "no legs"}.`,
  });
  const root = select(svg);
  const line = (
    from: { readonly x: number; readonly y: number },
    to: { readonly x: number; readonly y: number },
    width: number,
  ) =>
    root
      .append("line")
      .attr("x1", from.x)
      .attr("y1", from.y)
      .attr("x2", to.x)
      .attr("y2", to.y)
      .attr("stroke", "black")
      .attr("stroke-width", width);
  const text = (x: number, y: number, sizeMm: number, words: string) =>
    root
      .append("text")
      .attr("x", x)
      .attr("y", y)
      .attr("font-size", sizeMm)
      .attr("text-anchor", "middle")
      .text(words);

  text(HOLE.x, 9, 5, "Tilt gauge").attr("font-weight", 700);
  text(
    HOLE.x,
    15.5,
    3.2,
    "Glue to card, cut along the outline, and hang a thread with a weight from the hole.",
  );
  text(HOLE.x, 20, 3.2, "Lay the straight edge along the side of the frame and let the thread hang free.");
  text(HOLE.x, 24.5, 3.2, "Outside the arc: tilt from the ground. Inside: the same tilt read from a post.");

  root
    .append("path")
    .attr(
      "d",
      `M${HOLE.x - EDGE_MM},${HOLE.y}H${HOLE.x + EDGE_MM}A${EDGE_MM},${EDGE_MM} 0 0 1 ${HOLE.x - EDGE_MM},${HOLE.y}Z`,
    )
    .attr("fill", "none")
    .attr("stroke", "black")
    .attr("stroke-width", 0.35);
  root
    .append("path")
    .attr(
      "d",
      `M${HOLE.x - RADIUS_MM},${HOLE.y}A${RADIUS_MM},${RADIUS_MM} 0 0 0 ${HOLE.x + RADIUS_MM},${HOLE.y}`,
    )
    .attr("fill", "none")
    .attr("stroke", "black")
    .attr("stroke-width", 0.25);
  root.append("circle").attr("cx", HOLE.x).attr("cy", HOLE.y).attr("r", 0.8).attr("fill", "black");

  for (const half of ["left", "right"] as const) {
    for (let degrees = 0; degrees <= 90; degrees += 1) {
      const length = tickLength(degrees);
      line(
        gaugePoint(degrees, RADIUS_MM - length, half),
        gaugePoint(degrees, RADIUS_MM + length, half),
        degrees % 10 === 0 ? 0.3 : 0.15,
      ).attr("data-ground-deg", degrees);
      if (degrees % 10 !== 0 || (degrees === 0 && half === "right") || degrees === 90) continue;
      const outer = gaugePoint(degrees, RADIUS_MM + 8.6, half);
      const inner = gaugePoint(degrees, RADIUS_MM - 9, half);
      text(outer.x, outer.y + 1.2, 3.4, String(degrees)).attr("font-weight", 700);
      text(inner.x, inner.y + 1.2, 3, String(otherReading(degrees)));
    }
    for (const { name, tiltDeg } of marks) {
      line(gaugePoint(tiltDeg, 22, half), gaugePoint(tiltDeg, RADIUS_MM - 13, half), 0.5)
        .attr("data-leg-deg", tiltDeg)
        .attr("stroke-dasharray", "3 1.2");
      // Along its own line, so that close marks stay readable, and turned so that it is not upside down.
      const at = gaugePoint(tiltDeg, 46, half);
      text(0, -1, 3.2, shortened(name))
        .attr(
          "transform",
          `translate(${at.x} ${at.y}) rotate(${half === "left" ? tiltDeg - 90 : 90 - tiltDeg})`,
        )
        .attr("font-weight", 600);
    }
  }
  marks.forEach(({ name, tiltDeg }, index) => {
    const y = HOLE.y + RADIUS_MM + 18 + index * LIST_LINE_MM;
    text(HOLE.x, y, 3.4, `${shortened(name)}: ${tiltWords(tiltDeg)}`);
  });
  checkBar(svg, (WIDTH_MM - 100) / 2, heightMm - 16);
  return svg;
};
