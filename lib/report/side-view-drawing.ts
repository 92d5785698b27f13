import { select } from "d3";
import { otherReading, toRadians } from "../plan/angle.ts";
import { inchesText, millimetresText } from "../plan/length.ts";
import type { StandGeometry } from "../stand/geometry.ts";
import { type FrameSide, type SidePoint, sideView } from "../stand/side-view.ts";
import type { ChartFrame } from "./chart-base.ts";
import { CHART_FONT, colour } from "./theme.ts";

/** What is drawn: one setting of a stand. */
export interface DrawnSetting {
  readonly name: string;
  /** Pivot-hole centre to foot; `null` when the panel lies flat. */
  readonly legMm: number | null;
  readonly tiltDeg: number;
  /** The panel's colour: its setting's own, so that drawing and charts agree. */
  readonly colour: string;
}

const MARGIN = { left: 14, right: 14, top: 40, bottom: 44 };
/** Radius of the angle marks, as a share of the frame. */
const ANGLE_SHARE = 0.3;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where things stand on the drawing: the box that every tilt of this frame fits in, so that drawings can be compared. */
const placing = (
  stand: StandGeometry,
  frame: FrameSide,
  view: ReturnType<typeof sideView>,
  width: number,
  heightAsked: number | undefined,
): { readonly at: (point: SidePoint) => Point; readonly pxPerMm: number; readonly height: number } => {
  const left = frame.depthMm + Math.max(0, stand.heelSpacerMm);
  const points = [...view.frame, view.foot, view.pivot];
  const right = Math.max(frame.lengthMm, ...points.map(({ backMm }) => backMm)) * 1.02;
  const top = frame.lengthMm + frame.depthMm;
  const fall = right * Math.abs(Math.tan(toRadians(stand.groundSlopeDeg)));
  const across = (width - MARGIN.left - MARGIN.right) / (left + right);
  const upright =
    heightAsked === undefined ? across : (heightAsked - MARGIN.top - MARGIN.bottom) / (top + fall);
  const pxPerMm = Math.min(across, upright, 0.34);
  const height = heightAsked ?? MARGIN.top + MARGIN.bottom + (top + fall) * pxPerMm;
  const heelX = (width - (left + right) * pxPerMm) / 2 + left * pxPerMm;
  const heelY = height - MARGIN.bottom - (stand.groundSlopeDeg < 0 ? fall * pxPerMm : 0);
  return {
    at: ({ backMm, upMm }) => ({ x: heelX + backMm * pxPerMm, y: heelY - upMm * pxPerMm }),
    pxPerMm,
    height,
  };
};

const path = (points: readonly Point[], closed = false): string =>
  `M${points.map(({ x, y }) => `${x.toFixed(2)},${y.toFixed(2)}`).join("L")}${closed ? "Z" : ""}`;

/** An arc round a point between two directions, degrees up from level towards the back. */
const arc = (centre: Point, radius: number, fromDeg: number, toDeg: number): string => {
  const end = (deg: number): string =>
    `${(centre.x + radius * Math.cos(toRadians(deg))).toFixed(2)},${(centre.y - radius * Math.sin(toRadians(deg))).toFixed(2)}`;
  return `M${end(fromDeg)}A${radius.toFixed(2)},${radius.toFixed(2)} 0 0 0 ${end(toDeg)}`;
};

/**
 * A stand in side view, to scale: panel, leg, strap and ground, its tilt marked from the ground and from a post, the
 * leg's length beside it, and a bar to measure by. The panel's face looks to the left.
 */
export const sideViewDrawing = (
  stand: StandGeometry,
  frame: FrameSide,
  setting: DrawnSetting,
  { document, width, height: heightAsked }: ChartFrame,
): SVGSVGElement => {
  const { tiltDeg, legMm, name } = setting;
  const view = sideView(stand, frame, tiltDeg);
  const { at, pxPerMm, height } = placing(stand, frame, view, width, heightAsked);
  const [heel, pivot, foot] = [view.heel, view.pivot, view.foot].map(at);
  const ground = tiltDeg.toFixed(0);
  const post = otherReading(Number(ground)).toFixed(0);
  const legWords = legMm === null ? "no leg" : `${millimetresText(legMm)} = ${inchesText(legMm)}`;

  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const root = select(svg)
    .attr("viewBox", `0 0 ${width} ${height.toFixed(0)}`)
    .attr("width", width)
    .attr("height", height.toFixed(0))
    .attr("role", "img")
    .attr("aria-label", `Side view of ${name}: ${ground}° from the ground, ${post}° from a post, ${legWords}`)
    .attr("font-family", CHART_FONT)
    .attr("font-size", 12)
    .attr("fill", colour("ink"));
  const drawn = (shape: string, stroke: string, strokeWidth: number) =>
    root
      .append("path")
      .attr("d", shape)
      .attr("fill", "none")
      .attr("stroke", stroke)
      .attr("stroke-width", strokeWidth)
      .attr("stroke-linecap", "round");
  const label = (x: number, y: number, anchor: "start" | "middle" | "end", words: string) =>
    root
      .append("text")
      .attr("x", x.toFixed(1))
      .attr("y", y.toFixed(1))
      .attr("text-anchor", anchor)
      .attr("paint-order", "stroke")
      .attr("stroke", colour("paper"))
      .attr("stroke-width", 4)
      .text(words);

  // The ground, sloping as it does, and what the tilt is read from: a level and a plumb line through the heel.
  const slope = Math.tan(toRadians(stand.groundSlopeDeg));
  const groundAt = (x: number): Point => ({ x, y: heel.y - (x - heel.x) * slope });
  drawn(path([groundAt(MARGIN.left / 2), groundAt(width - MARGIN.right / 2)]), colour("muted"), 1.5).attr(
    "class",
    "ground",
  );
  const radius = ANGLE_SHARE * frame.lengthMm * pxPerMm;
  const guide = radius * 1.35;
  drawn(path([heel, { x: heel.x, y: heel.y - guide }]), colour("muted"), 1).attr("stroke-dasharray", "2 4");
  if (stand.groundSlopeDeg !== 0) {
    drawn(path([heel, { x: heel.x + guide, y: heel.y }]), colour("muted"), 1).attr("stroke-dasharray", "2 4");
  }
  if (tiltDeg > 0) drawn(arc(heel, radius, 0, tiltDeg), colour("accent"), 1.5).attr("class", "from-ground");
  drawn(arc(heel, radius * 0.82, tiltDeg, 90), colour("muted"), 1.5).attr("class", "from-post");

  if (legMm !== null) {
    if (stand.hold.kind === "strap") {
      drawn(path([heel, foot]), colour("muted"), 3)
        .attr("stroke-dasharray", "6 4")
        .attr("class", "strap");
    }
    drawn(path([pivot, foot]), colour("ink"), 4).attr("class", "leg");
  }
  if (stand.heelSpacerMm > 0) {
    drawn(path([heel, at(view.frame[0])]), colour("ink"), 4).attr("class", "spacer");
  }
  drawn(path(view.frame.map(at), true), setting.colour, 1.5)
    .attr("class", "panel")
    .attr("fill", setting.colour)
    .attr("stroke-linejoin", "round");
  root
    .append("circle")
    .attr("class", "pivot")
    .attr("cx", pivot.x)
    .attr("cy", pivot.y)
    .attr("r", 3)
    .attr("fill", colour("paper"))
    .attr("stroke", colour("ink"))
    .attr("stroke-width", 1.5);

  label(MARGIN.left, 18, "start", name)
    .attr("font-size", 14)
    .attr("font-weight", 650)
    .attr("fill", setting.colour);
  const towards = (deg: number, far: number): Point => ({
    x: heel.x + far * Math.cos(toRadians(deg)),
    y: heel.y - far * Math.sin(toRadians(deg)),
  });
  // Each reading beside its own arc; a thin wedge has no room inside, so the words stand outside of it.
  const fromGround = towards(Math.max(7, tiltDeg / 2), radius + 6);
  label(fromGround.x, fromGround.y + 4, "start", `${ground}° from the ground`)
    .attr("fill", colour("accent"))
    .attr("font-weight", 600);
  label(heel.x - 2, heel.y - guide - 6, "start", `${post}° from a post`).attr("fill", colour("muted"));
  if (legMm !== null) {
    const middle = { x: (pivot.x + foot.x) / 2, y: (pivot.y + foot.y) / 2 };
    const room = width - middle.x > 150;
    label(middle.x + (room ? 9 : -9), middle.y + 4, room ? "start" : "end", legWords).attr(
      "font-weight",
      600,
    );
  }
  scaleBar(svg, { x: MARGIN.left, y: height - 14 }, pxPerMm, width);
  return svg;
};

/** A bar of a round length, so that the drawing can be measured. */
const scaleBar = (svg: SVGSVGElement, at: Point, pxPerMm: number, width: number): void => {
  const lengthMm = [1000, 500, 200, 100].find((length) => length * pxPerMm < width / 3) ?? 50;
  const px = lengthMm * pxPerMm;
  const root = select(svg);
  root
    .append("path")
    .attr("class", "scale-bar")
    .attr(
      "d",
      `M${at.x},${at.y - 4}v8M${at.x},${at.y}h${px.toFixed(2)}M${(at.x + px).toFixed(2)},${at.y - 4}v8`,
    )
    .attr("fill", "none")
    .attr("stroke", colour("muted"));
  root
    .append("text")
    .attr("x", at.x + px + 8)
    .attr("y", at.y + 4)
    .attr("fill", colour("muted"))
    .text(`${lengthMm} mm`);
};
