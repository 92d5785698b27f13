import { parseHTML } from "linkedom";
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import { sunCompass } from "../../lib/report/paper/sun-compass.ts";
import { ringRadiusMm, sunCompassDial } from "../../lib/report/paper/sun-compass-dial.ts";
import { sunColumns, sunVector } from "../../lib/sun/index.ts";
import { turnBetween } from "../../lib/units/angle.ts";

const PLACES = [
  {
    name: "North Sea",
    latitudeDeg: 53.56,
    longitudeDeg: 8.59,
    timeZone: "Europe/Berlin",
    from: "2027-03-15",
    to: "2027-11-15",
  },
  {
    name: "Tasmania",
    latitudeDeg: -43.2,
    longitudeDeg: 147.3,
    timeZone: "Australia/Hobart",
    from: "2027-09-01",
    to: "2028-04-30",
  },
  {
    name: "Near the line",
    latitudeDeg: 8,
    longitudeDeg: -75,
    timeZone: "America/Bogota",
    from: "2027-01-01",
    to: "2027-12-31",
  },
  {
    name: "Svalbard",
    latitudeDeg: 78.2,
    longitudeDeg: 15.6,
    timeZone: "Arctic/Longyearbyen",
    from: "2027-04-01",
    to: "2027-09-01",
  },
] as const;

const PIN = { x: 95, y: 122 };

const drawingOf = (
  place: (typeof PLACES)[number],
  wanted: readonly { name: string; bearingDeg: number }[],
) => {
  const { document } = parseHTML("<!doctype html><html><body></body></html>");
  const { days } = sunColumns(place, { from: place.from, to: place.to }, 60);
  return { svg: sunCompass(document, place, days, wanted), days };
};

/** Bearing on the page of a point, degrees clockwise from its top. */
const pageBearing = (x: number, y: number): number => (Math.atan2(x - PIN.x, PIN.y - y) * 180) / Math.PI;

const numbersOf = (d: string): readonly (readonly [number, number])[] =>
  [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);

/** Bearing of the shadow of an upright pin, from the sun itself. */
const shadowBearing = (place: (typeof PLACES)[number], date: string, clock: string): number => {
  const instant = Temporal.PlainDate.from(date).toZonedDateTime({
    timeZone: place.timeZone,
    plainTime: clock,
  });
  const sun = sunVector(instant.epochMilliseconds, place.latitudeDeg, place.longitudeDeg);
  return (Math.atan2(-sun.east, -sun.north) * 180) / Math.PI;
};

describe.each(PLACES)("sunCompass, $name", (place) => {
  const wanted = [
    { name: "1 long 125°", bearingDeg: 125 },
    { name: "2 long 245°", bearingDeg: 245 },
  ];
  const { svg, days } = drawingOf(place, wanted);

  test("has every drawn point where the pin's shadow falls at its date and clock time", () => {
    let checked = 0;
    for (const path of svg.querySelectorAll("path[data-clock]")) {
      const clock = path.getAttribute("data-clock") ?? "";
      for (const [x, y] of numbersOf(path.getAttribute("d") ?? "")) {
        const radius = Math.hypot(x - PIN.x, y - PIN.y);
        const day = Math.round(((radius - 26) / (74 - 26)) * (days.length - 1));
        expect(ringRadiusMm(day, days.length)).toBeCloseTo(radius, 2);
        // Paths are written to 0.001 mm, which is 0.002 degrees on the inner ring.
        const error = turnBetween(shadowBearing(place, days[day].date, clock), pageBearing(x, y));
        expect(Math.abs(error)).toBeLessThan(0.01);
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThan(300);
  });

  test("points along the wanted bearing once the shadow lies on now, on dates between the drawn ones too", () => {
    const { lines } = sunCompassDial(place, days);
    let checked = 0;
    for (const { minutes, points } of lines.filter((_, index) => index % 5 === 0)) {
      for (let i = 1; i < points.length; i += 4) {
        const [from, to] = [points[i - 1], points[i]];
        const date = new Date((Date.parse(from.date) + Date.parse(to.date)) / 2).toISOString().slice(0, 10);
        const share =
          (Date.parse(date) - Date.parse(from.date)) / (Date.parse(to.date) - Date.parse(from.date));
        const x = from.xMm + share * (to.xMm - from.xMm);
        const y = from.yMm + share * (to.yMm - from.yMm);
        const onPage = pageBearing(PIN.x + x, PIN.y + y);
        const clock = `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
        // The board is turned by what brings the drawn point onto the shadow; its arrow turns along.
        const turnedBy = turnBetween(onPage, shadowBearing(place, date, clock));
        expect(Math.abs(turnedBy), `${date} ${clock}`).toBeLessThan(0.3);
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThan(20);
  });

  test("draws an arrow along each wanted bearing and along true north", () => {
    const arrows = [...svg.querySelectorAll("path[data-bearing-deg]")];
    expect(arrows.map((arrow) => Number(arrow.getAttribute("data-bearing-deg")))).toEqual([0, 125, 245]);
    for (const arrow of arrows) {
      const [, tip] = numbersOf((arrow.getAttribute("d") ?? "").replace("L", " ").replace("M", ""));
      const error = turnBetween(Number(arrow.getAttribute("data-bearing-deg")), pageBearing(...tip));
      expect(Math.abs(error)).toBeLessThan(0.01);
    }
  });

  test("is at true size: millimetres for units, and a bar of 100 of them", () => {
    expect(svg.getAttribute("viewBox")).toBe("0 0 190 252");
    expect(svg.getAttribute("width")).toBe("190mm");
    expect(svg.querySelector(".check-bar")?.getAttribute("d")).toContain("h100");
  });
});

describe("the dial", () => {
  test("breaks its lines where the clocks change, an hour over", () => {
    const [place] = PLACES;
    const { days } = sunColumns(place, { from: place.from, to: place.to }, 60);
    const { lines, rings } = sunCompassDial(place, days);
    expect(rings.filter(({ opens }) => opens === "clock").map(({ date }) => date)).toEqual([
      "2027-03-28",
      "2027-10-31",
    ]);
    const noonLines = lines.filter(({ minutes }) => minutes === 720);
    expect(noonLines.map(({ points }) => [points[0].date, points.at(-1)?.date])).toEqual([
      ["2027-03-15", "2027-03-27"],
      ["2027-03-28", "2027-10-30"],
      ["2027-10-31", "2027-11-15"],
    ]);
    expect(noonLines.map(({ clockStarts, clockEnds }) => [clockStarts, clockEnds])).toEqual([
      [false, true],
      [true, true],
      [true, false],
    ]);
  });

  test("leaves out a sun that is too low or too near the zenith for a shadow", () => {
    const place = PLACES[2];
    const { days } = sunColumns(place, { from: "2027-04-11", to: "2027-04-11" }, 60);
    expect(sunCompassDial(place, days).lines).toEqual([]);
    const month = sunColumns(place, { from: "2027-04-01", to: "2027-04-30" }, 60).days;
    const clocks = sunCompassDial(place, month).lines.map(({ minutes }) => minutes);
    expect(clocks).toContain(9 * 60);
    expect(clocks).not.toContain(12 * 60);
    expect(clocks).not.toContain(5 * 60);
  });
});
