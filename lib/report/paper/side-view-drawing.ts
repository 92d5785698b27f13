import { select } from "d3";
import type { StandGeometry } from "../../stand/geometry.ts";
import { type FrameSide, type SidePoint, sideView } from "../../stand/side-view.ts";
import { otherReading, toRadians } from "../../units/angle.ts";
import { inchesText, millimetresText } from "../../units/length.ts";
import type { ChartFrame } from "../chart/chart-base.ts";
import { CHART_FONT, colour } from "../chart/theme.ts";

/** What is drawn: one setting of a stand. */
export interface DrawnSetting {
  readonly name: string;
  /** Pivot-hole centre to foot; `null` when the panel lies flat. */
  readonly legMm: number | null;
  readonly tiltDeg: number;
  /** The panel's colour: its setting's own, so that drawing and charts agree. */
  readonly colour: string;
}

const MARGIN = { left: 14, right: 14, top: 66, bottom: 44 };
/** Room left of the heel for a reading that stands beside the post. */
const READING_PX = 26;
/** Radius of the angle marks, as a share of the frame's length. */
const ANGLE_SHARE = 0.26;
/** Height of the post drawn at the heel. */
const GUIDE_SHARE = 0.34;
/** A drawing on a wide page grows no further than this. */
const LARGEST_PX_PER_MM = 0.4;

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Where things stand on the drawing. The scale fits every tilt of this frame, so that drawings of one width can be
 * compared; a height that is asked for holds the panel even upright.
 */
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
  const upright = frame.lengthMm + frame.depthMm;
  const top = Math.max(...points.map(({ upMm }) => upMm), GUIDE_SHARE * frame.lengthMm);
  const fall = right * Math.abs(Math.tan(toRadians(stand.groundSlopeDeg)));
  const across = (width - MARGIN.left - MARGIN.right - READING_PX) / (left + right);
  const high =
    heightAsked === undefined ? across : (heightAsked - MARGIN.top - MARGIN.bottom) / (upright + fall);
  const pxPerMm = Math.min(across, high, LARGEST_PX_PER_MM);
  const height = heightAsked ?? MARGIN.top + MARGIN.bottom + (top + fall) * pxPerMm;
  const heelX = (width + READING_PX - (left + right) * pxPerMm) / 2 + left * pxPerMm;
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
  const guide = GUIDE_SHARE * frame.lengthMm * pxPerMm;
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

  const towards = (deg: number, far: number): Point => ({
    x: heel.x + far * Math.cos(toRadians(deg)),
    y: heel.y - far * Math.sin(toRadians(deg)) + 4,
  });
  // Outside its arc; low down a reading has no room there and stands a little up.
  const byGround = towards(Math.max(9, tiltDeg / 2), radius + 7);
  if (tiltDeg > 0) label(byGround.x, byGround.y, "start", `${ground}°`).attr("fill", colour("accent"));
  // Between a steep panel and the post there is no room: it then stands on the post's other side.
  const steep = tiltDeg > 55;
  const byPost = steep
    ? { x: heel.x - 7, y: heel.y - radius }
    : towards((tiltDeg + 90) / 2, radius * 0.82 + 14);
  if (tiltDeg < 90) {
    label(byPost.x, byPost.y, steep ? "end" : "middle", `${post}°`).attr("fill", colour("muted"));
  }

  const bold = 600;
  label(MARGIN.left, 18, "start", name)
    .attr("font-size", 14)
    .attr("font-weight", bold)
    .attr("fill", setting.colour);
  const reading = label(MARGIN.left, 36, "start", "");
  reading
    .append("tspan")
    .attr("fill", colour("accent"))
    .attr("font-weight", bold)
    .text(`${ground}° from the ground`);
  reading.append("tspan").attr("fill", colour("muted")).text(`, ${post}° from a post`);
  label(MARGIN.left, 53, "start", legMm === null ? legWords : `leg ${legWords}`);
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
