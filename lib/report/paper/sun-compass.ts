import { line, type Selection, select } from "d3";
import { clockOfMinutes } from "../../plan/clock.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import type { SunPlace } from "../../sun/solar-day.ts";
import { toRadians } from "../../units/angle.ts";
import { dateWords, dayMonthShort } from "../../units/dates.ts";
import {
  type ClockLine,
  DIAL_INNER_MM,
  DIAL_OUTER_MM,
  type DialPoint,
  HIGHEST_SUN_DEG,
  type SunCompassDial,
  sunCompassDial,
} from "./sun-compass-dial.ts";
import { checkBar, paperDrawing } from "./true-size.ts";

/** A bearing that an arrow of the compass points along, and what it is for. */
export interface WantedBearing {
  readonly name: string;
  /** Degrees from true north. */
  readonly bearingDeg: number;
}

const WIDTH_MM = 190;
const HEIGHT_MM = 252;
const PIN = { x: WIDTH_MM / 2, y: 122 };
const HOUR_MINUTES = 60;
const CLOCK_LABEL_ASIDE_DEG = 25;
/** Rough width of a letter of a label, so that no label leaves the page. */
const LETTER_MM = 2.1;

const HOW_TO: readonly string[] = [
  "Print at true size, glue to a flat board, and stand a straight pin or nail upright at the cross.",
  "Lay it level in the sun. Find today's ring and the line of the clock time now.",
  "Turn the board until the middle of the pin's shadow, made longer by eye if need be, runs over their crossing.",
  "Now each arrow points along its bearing: turn the panel's face that way. No compass is needed.",
  "Never look into the sun: read the shadow, with your back to the light.",
];

const at = (bearingDeg: number, radiusMm: number): { readonly x: number; readonly y: number } => ({
  x: PIN.x + radiusMm * Math.sin(toRadians(bearingDeg)),
  y: PIN.y - radiusMm * Math.cos(toRadians(bearingDeg)),
});

type Drawing = Selection<SVGSVGElement, unknown, null, undefined>;

/** Words on the paper, centred at a place. */
const label = (drawing: Drawing, x: number, y: number, sizeMm: number, words: string) =>
  drawing
    .append("text")
    .attr("x", x)
    .attr("y", y)
    .attr("font-size", sizeMm)
    .attr("text-anchor", "middle")
    .text(words);

/** What it is for, what its rings are, and how it is used. */
const drawWords = (
  drawing: Drawing,
  place: SunPlace & { readonly name: string },
  days: readonly SeasonDay[],
  { rings }: SunCompassDial,
): void => {
  const [first, last] = [days[0].date, days[days.length - 1].date];
  label(drawing, PIN.x, 9, 5, `Sun compass: ${place.name}`).attr("font-weight", 700);
  label(
    drawing,
    PIN.x,
    15,
    3.2,
    `${dateWords(first)} (inner ring) to ${dateWords(last)} (outer ring), clock of ${place.timeZone}`,
  );
  if (rings.some(({ opens }) => opens === "clock")) {
    label(
      drawing,
      PIN.x,
      19.6,
      3.2,
      "On the dashed ring the clocks change: from there outwards the lines bear the new hours.",
    );
  }
  if (days.some(({ noonAltitudeDeg }) => noonAltitudeDeg > HIGHEST_SUN_DEG)) {
    label(
      drawing,
      PIN.x,
      24.2,
      3.2,
      "Where no line is drawn around midday the sun stands too high for a shadow to be read.",
    );
  }
  HOW_TO.forEach((words, index) => {
    label(drawing, PIN.x, HEIGHT_MM - 39 + index * 4.6, 3.2, `${index + 1}. ${words}`);
  });
};

const drawRings = (drawing: Drawing, { rings }: SunCompassDial): void => {
  for (const { date, radiusMm, opens } of rings) {
    drawing
      .append("circle")
      .attr("cx", PIN.x)
      .attr("cy", PIN.y)
      .attr("r", radiusMm)
      .attr("fill", "none")
      .attr("stroke", "black")
      .attr("stroke-width", opens === null ? 0.1 : 0.25)
      .attr("stroke-dasharray", opens === "clock" ? "2 1" : null)
      .attr("data-date", date);
  }
};

/** An hour's number stands beyond the ends of its line; where both ends are clock changes, on its middle. */
const drawHour = (drawing: Drawing, { minutes, points, clockStarts, clockEnds }: ClockLine): void => {
  const ends = [
    ...(clockStarts ? [] : [{ point: points[0], away: -3 }]),
    ...(clockEnds ? [] : [{ point: points[points.length - 1], away: 3 }]),
  ];
  const named = ends.length > 0 ? ends : [{ point: points[points.length >> 1], away: 0 }];
  for (const { point, away } of named) {
    const radius = Math.hypot(point.xMm, point.yMm);
    const scale = (radius + away) / radius;
    label(
      drawing,
      PIN.x + point.xMm * scale,
      PIN.y + point.yMm * scale + 1.1,
      3,
      String(minutes / HOUR_MINUTES),
    ).attr("font-weight", 600);
  }
};

const drawClockLines = (drawing: Drawing, { lines }: SunCompassDial): void => {
  const path = line<DialPoint>(
    ({ xMm }) => PIN.x + xMm,
    ({ yMm }) => PIN.y + yMm,
  );
  for (const clock of lines) {
    const isHour = clock.minutes % HOUR_MINUTES === 0;
    drawing
      .append("path")
      .attr("d", path(clock.points))
      .attr("fill", "none")
      .attr("stroke", "black")
      .attr("stroke-width", isHour ? 0.4 : 0.15)
      .attr("data-clock", clockOfMinutes(clock.minutes));
    if (isHour) drawHour(drawing, clock);
  }
};

/** Dates stand along the ray on which no shadow falls at midday: towards the noon sun. */
const drawDates = (drawing: Drawing, { latitudeDeg }: SunPlace, { rings }: SunCompassDial): void => {
  for (const { date, radiusMm, opens } of rings) {
    if (opens === null) continue;
    // A clock change stands aside, so that it does not lie on the first of a month.
    const spot = at((latitudeDeg < 0 ? 0 : 180) + (opens === "clock" ? CLOCK_LABEL_ASIDE_DEG : 0), radiusMm);
    drawing
      .append("text")
      .attr("x", spot.x)
      .attr("y", spot.y + 0.9)
      .attr("font-size", 2.6)
      .attr("text-anchor", "middle")
      .attr("stroke", "white")
      .attr("stroke-width", 0.9)
      .attr("paint-order", "stroke")
      .text(dayMonthShort(date));
  }
};

const drawPin = (drawing: Drawing): void => {
  drawing
    .append("path")
    .attr("d", `M${PIN.x - 4},${PIN.y}h8M${PIN.x},${PIN.y - 4}v8`)
    .attr("stroke", "black")
    .attr("stroke-width", 0.3);
};

const drawArrow = (drawing: Drawing, bearingDeg: number, widthMm: number): void => {
  const [tail, neck, tip] = [
    at(bearingDeg, 6),
    at(bearingDeg, DIAL_OUTER_MM + 8),
    at(bearingDeg, DIAL_OUTER_MM + 13),
  ];
  const across = at(bearingDeg + 90, 1.8);
  const [dx, dy] = [across.x - PIN.x, across.y - PIN.y];
  drawing
    .append("path")
    .attr("d", `M${tail.x},${tail.y}L${neck.x},${neck.y}`)
    .attr("stroke", "black")
    .attr("stroke-width", widthMm)
    .attr("stroke-dasharray", `${DIAL_INNER_MM - 8} ${DIAL_OUTER_MM - DIAL_INNER_MM + 2} 20`)
    .attr("data-bearing-deg", bearingDeg);
  drawing
    .append("path")
    .attr("d", `M${neck.x + dx},${neck.y + dy}L${tip.x},${tip.y}L${neck.x - dx},${neck.y - dy}Z`)
    .attr("fill", "black");
};

/** True north, and an arrow with its name for each bearing wanted. */
const drawArrows = (drawing: Drawing, wanted: readonly WantedBearing[]): void => {
  drawArrow(drawing, 0, 0.3);
  const north = at(0, DIAL_OUTER_MM + 16);
  label(drawing, north.x, north.y + 1, 3.4, "true north").attr("font-weight", 700);
  for (const { name, bearingDeg } of wanted) {
    drawArrow(drawing, bearingDeg, 0.8);
    const tip = at(bearingDeg, DIAL_OUTER_MM + 13);
    const halfWidth = (name.length * LETTER_MM) / 2;
    const x = Math.min(WIDTH_MM - halfWidth - 2, Math.max(halfWidth + 2, tip.x));
    label(drawing, x, tip.y + (tip.y > PIN.y ? 5 : -2), 3.4, name).attr("font-weight", 700);
  }
};

/**
 * A sun compass to print at true size: with the pin's shadow on today's ring and the clock time now, its arrows point
 * along the bearings wanted, with no magnet and no declination.
 *
 * @param days the season's days, as the sun columns have them
 * @param wanted bearings to mark, each with a short name
 * @returns an SVG 190 mm wide and 252 mm high, with a bar of 100 mm to check the print by
 */
export const sunCompass = (
  document: Document,
  place: SunPlace & { readonly name: string },
  days: readonly SeasonDay[],
  wanted: readonly WantedBearing[],
): SVGSVGElement => {
  const dial = sunCompassDial(place, days);
  const arrows = wanted.map(({ name }) => name).join(", ");
  const svg = paperDrawing(document, WIDTH_MM, HEIGHT_MM, {
    name: `Sun compass for ${place.name}`,
    description: `A dial of date rings and clock lines for the shadow of a pin, ${days[0].date} to ${days[days.length - 1].date}, to be printed at true size. Arrows: ${arrows || "true north only"}.`,
  });
  const drawing = select(svg);
  drawWords(drawing, place, days, dial);
  drawRings(drawing, dial);
  drawClockLines(drawing, dial);
  drawDates(drawing, place, dial);
  drawPin(drawing);
  drawArrows(drawing, wanted);
  checkBar(svg, (WIDTH_MM - 100) / 2, HEIGHT_MM - 14);
  return svg;
};
