import * as Plot from "@observablehq/plot";
import { greatest } from "d3";
import { clockOfMinutes } from "../../plan/clock.ts";
import { type HorizonPoint, skylineOf } from "../../plane/horizon.ts";
import type { DayRoutine } from "../../season/aiming/reaim.ts";
import type { Period } from "../../season/light/periods.ts";
import { sunVector } from "../../sun/position.ts";
import { turnBetween, wrapBearing } from "../../units/angle.ts";
import { dateWords } from "../../units/dates.ts";
import type { CardPlace } from "../words/aim-card.ts";
import { compassPoint } from "../words/words.ts";
import { type ChartFrame, drawChart, isNarrow, valueAxis } from "./chart-base.ts";
import { framingDays, PATH_MINUTES, type PathPoint, pathOf } from "./sun-path.ts";
import { colour, settingColour } from "./theme.ts";

const MARGIN = { top: 34, right: 20, bottom: 34, left: 44 };
/** Below this an hour's label would lie on the axis. */
const LOWEST_LABEL_DEG = 6;
/** A date's label stays this far from either side. */
const LABEL_ROOM_DEG = 24;
/** An hour's label stands inside the curve: right of its rising part, under its top, left of its falling part. */
const HOUR_SIDES = [
  { holds: (side: number) => side < -0.2, dx: 9, dy: 5, textAnchor: "start" },
  { holds: (side: number) => Math.abs(side) <= 0.2, dx: 0, dy: 15, textAnchor: "middle" },
  { holds: (side: number) => side > 0.2, dx: -9, dy: 5, textAnchor: "end" },
] as const;
/** Room above the highest sun and to either side of its widest rising and setting, degrees. */
const ROOM_DEG = 8;

/** An aim of the routine: where on the sky the panel looks, and the part of the sun's path it is for. */
interface DrawnAim {
  readonly label: string;
  readonly turnDeg: number;
  readonly altitudeDeg: number;
  readonly flat: boolean;
  readonly colour: string;
  readonly points: readonly PathPoint[];
}

const drawnAims = (
  { parts }: DayRoutine,
  path: readonly PathPoint[],
  middleDeg: number,
): readonly DrawnAim[] =>
  parts.map(({ setting, fromMinutes, toMinutes }, index) => ({
    label: `${index + 1} ${setting.name}`,
    turnDeg: turnBetween(middleDeg, setting.bearingDeg),
    altitudeDeg: 90 - setting.tiltDeg,
    flat: setting.legMm === null,
    colour: settingColour(index + 1),
    points: path.filter(({ afterNoon }) => afterNoon >= fromMinutes - PATH_MINUTES && afterNoon <= toMinutes),
  }));

/** How far the chart reaches to either side of its middle bearing, and upwards, degrees. */
interface Reach {
  readonly widest: number;
  readonly top: number;
}

type Spot = Pick<PathPoint, "turnDeg" | "altitudeDeg">;

const reachOf = (spots: readonly Spot[]): Reach => ({
  widest: Math.min(180, Math.max(90, ...spots.map(({ turnDeg }) => Math.abs(turnDeg))) + ROOM_DEG),
  top: Math.min(90, Math.max(20, ...spots.map(({ altitudeDeg }) => altitudeDeg)) + ROOM_DEG),
});

/** Bearings along the foot, by name where there is room. */
const bearingAxis = (middleDeg: number, { widest }: Reach, narrow: boolean): Plot.Markish =>
  Plot.axisX(
    [-180, -135, -90, -45, 0, 45, 90, 135, 180].filter((turn) => Math.abs(turn) <= widest - ROOM_DEG),
    {
      label: null,
      tickSize: 0,
      tickFormat: (turnDeg: number): string => {
        const bearing = wrapBearing(middleDeg + turnDeg);
        return bearing % 45 === 0 && !narrow ? `${compassPoint(bearing)} ${bearing}°` : `${bearing}°`;
      },
      color: colour("muted"),
    },
  );

/** The season's lowest and highest paths, with their dates. */
const framePaths = (
  frames: readonly (readonly PathPoint[])[],
  { widest }: Reach,
): readonly Plot.Markish[] => {
  const labelFits = ({ turnDeg }: PathPoint): boolean => Math.abs(turnDeg) < widest - LABEL_ROOM_DEG;
  return [
    Plot.line(frames.flat(), {
      x: "turnDeg",
      y: "altitudeDeg",
      z: "stretch",
      stroke: colour("muted"),
      strokeWidth: 1,
      strokeDasharray: "2 3",
    }),
    Plot.text(
      frames.flatMap((points) => greatest(points.filter(labelFits), ({ altitudeDeg }) => altitudeDeg) ?? []),
      {
        x: "turnDeg",
        y: "altitudeDeg",
        text: ({ date }: PathPoint) => dateWords(date),
        dy: -8,
        fill: colour("muted"),
      },
    ),
  ];
};

/** The path of the day, each part in the colour of its aim. */
const aimedPath = (aims: readonly DrawnAim[]): readonly Plot.Markish[] =>
  aims.map(({ points, colour: ink }) =>
    Plot.line(points, {
      x: "turnDeg",
      y: "altitudeDeg",
      z: "stretch",
      stroke: ink,
      strokeWidth: 4,
      strokeLinecap: "round",
    }),
  );

/** What stands round the site, a point a degree. */
const ridgeArea = (skyline: readonly HorizonPoint[], middleDeg: number, { widest }: Reach): Plot.Markish => {
  const altitudeAt = skylineOf(skyline);
  const ridge = Array.from({ length: 2 * Math.ceil(widest) + 1 }, (_, step): Spot => {
    const turnDeg = step - Math.ceil(widest);
    return { turnDeg, altitudeDeg: altitudeAt(middleDeg + turnDeg) };
  });
  return Plot.areaY(ridge, {
    x: "turnDeg",
    y: "altitudeDeg",
    fill: colour("muted"),
    fillOpacity: 0.6,
  });
};

/** The full hours of the clock along the path. */
const hourMarks = (
  path: readonly PathPoint[],
  { widest }: Reach,
  narrow: boolean,
): readonly Plot.Markish[] => {
  const hours = path.filter(({ clock }) => clock % 60 === 0);
  return [
    Plot.dot(hours, {
      x: "turnDeg",
      y: "altitudeDeg",
      r: 2.5,
      fill: colour("paper"),
      stroke: colour("ink"),
    }),
    ...HOUR_SIDES.map(({ holds, dx, dy, textAnchor }) =>
      Plot.text(
        hours.filter(
          ({ altitudeDeg, turnDeg }, index) =>
            altitudeDeg > LOWEST_LABEL_DEG && (!narrow || index % 3 === 0) && holds(turnDeg / widest),
        ),
        {
          x: "turnDeg",
          y: "altitudeDeg",
          text: ({ clock }: PathPoint) => clockOfMinutes(clock),
          dx,
          dy,
          textAnchor,
          fill: colour("ink"),
          stroke: colour("paper"),
          strokeWidth: 4,
        },
      ),
    ),
  ];
};

/** The spot that each aim looks at, tied to the middle of its part of the path. A flat panel looks at no spot. */
const aimSpots = (aims: readonly DrawnAim[]): readonly Plot.Markish[] => {
  const looking = aims.filter(({ flat }) => !flat);
  const ties = looking.flatMap(({ points, ...aim }) => {
    const at = points[points.length >> 1];
    return at === undefined ? [] : [{ ...aim, sunTurn: at.turnDeg, sunAltitude: at.altitudeDeg }];
  });
  return [
    Plot.link(ties, {
      x1: "sunTurn",
      y1: "sunAltitude",
      x2: "turnDeg",
      y2: "altitudeDeg",
      stroke: "colour",
      strokeDasharray: "1 4",
      strokeLinecap: "round",
      strokeWidth: 2,
    }),
    Plot.dot(looking, {
      x: "turnDeg",
      y: "altitudeDeg",
      r: 7,
      stroke: "colour",
      strokeWidth: 2.5,
      symbol: "circle",
      fill: colour("paper"),
    }),
    Plot.text(looking, {
      x: "turnDeg",
      y: "altitudeDeg",
      text: "label",
      dy: -16,
      fill: "colour",
      fontWeight: 600,
      stroke: colour("paper"),
      strokeWidth: 4,
    }),
  ];
};

const SUN_STAYS_DOWN: Plot.Markish = Plot.text(["The sun stays down all day."], {
  frameAnchor: "middle",
  fontSize: 14,
  fill: colour("muted"),
});

/**
 * The sun's path across the sky on a period's middle day, over the skyline, with the aims of a routine: which part of the
 * path each aim is for, and the spot of sky the panel then looks at.
 *
 * @param skyline what stands round the site; none is a level horizon
 */
export const sunPathChart = (
  place: CardPlace,
  period: Period,
  routine: DayRoutine,
  skyline: readonly HorizonPoint[],
  frame: ChartFrame,
): SVGSVGElement => {
  const { site, days } = place;
  const day = Math.floor((period.first + period.end - 1) / 2);
  const noon = sunVector(days[day].noonMs, site.latitudeDeg, site.longitudeDeg);
  const middleDeg = noon.north > 0 ? 0 : 180;
  const path = pathOf(place, day, middleDeg);
  const frames = framingDays(place).map((frameDay) => pathOf(place, frameDay, middleDeg));
  const aims = drawnAims(routine, path, middleDeg);
  const reach = reachOf([...path, ...frames.flat(), ...aims]);
  const narrow = isNarrow(frame);
  return drawChart(frame, {
    name: "Path of the sun with the day's aims",
    description: `${dateWords(days[day].date)}: altitude of the sun over its bearing, the skyline, and ${aims.length} ${aims.length === 1 ? "aim" : "aims"}: ${aims.map(({ label, turnDeg }) => `${label} at ${wrapBearing(middleDeg + turnDeg)} degrees`).join(", ")}.`,
    height: frame.height ?? (narrow ? 300 : 400),
    marginTop: MARGIN.top,
    marginRight: MARGIN.right,
    marginBottom: MARGIN.bottom,
    marginLeft: MARGIN.left,
    x: { domain: [-reach.widest, reach.widest] },
    y: { domain: [0, reach.top] },
    marks: [
      ...valueAxis("° above level", narrow ? 4 : 6),
      bearingAxis(middleDeg, reach, narrow),
      ...framePaths(frames, reach),
      ...aimedPath(aims),
      ridgeArea(skyline, middleDeg, reach),
      ...hourMarks(path, reach, narrow),
      ...aimSpots(aims),
      ...(path.length === 0 ? [SUN_STAYS_DOWN] : []),
      Plot.ruleY([0], { stroke: colour("muted") }),
    ],
  });
};
