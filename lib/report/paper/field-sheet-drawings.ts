import { max, scaleLinear, select } from "d3";
import type { FieldSheet } from "../../season/sheet/field-sheet.ts";
import type { MonthExpectation } from "../../season/sheet/month-expectations.ts";
import { toRadians } from "../../units/angle.ts";
import { isoDate, monthShort } from "../../units/dates.ts";
import { DAY_MS } from "../../units/time.ts";

const SVG = "http://www.w3.org/2000/svg";
const COLUMN_PX = 350;
const PAGE_PX = 740;

const drawing = (document: Document, width: number, height: number, label: string) =>
  select(document.createElementNS(SVG, "svg") as SVGSVGElement)
    .attr("viewBox", `0 0 ${width} ${height}`)
    .attr("role", "img")
    .attr("aria-label", label)
    .attr("font-size", 11);

type Drawing = ReturnType<typeof drawing>;

/** A panel seen from its side at its real tilt, its heel at a point. */
const drawTilt = (svg: Drawing, x: number, y: number, tiltDeg: number, length: number): void => {
  const tilt = toRadians(tiltDeg);
  svg
    .append("path")
    .attr("d", `M${x - 2},${y}h${length + 4}`)
    .attr("stroke", "#000")
    .attr("stroke-width", 0.8);
  svg
    .append("path")
    .attr("d", `M${x},${y}l${length * Math.cos(tilt)},${-length * Math.sin(tilt)}`)
    .attr("stroke", "#000")
    .attr("stroke-width", 3.2)
    .attr("stroke-linecap", "round");
};

/** The swap calendar as a band through the season: each stretch with its leg's letter and its tilt. */
export const calendarBand = (document: Document, { swaps, days, cutting }: FieldSheet): SVGSVGElement => {
  const svg = drawing(document, PAGE_PX, 66, "Which leg when, as a band through the season");
  const start = Date.parse(swaps[0].date);
  const end = Date.parse(days[days.length - 1].date) + DAY_MS;
  const x = scaleLinear([start, end], [1, PAGE_PX - 1]);
  swaps.forEach(({ date, to }, index) => {
    const from = x(Date.parse(date));
    const until = x(index + 1 < swaps.length ? Date.parse(swaps[index + 1].date) : end);
    svg
      .append("rect")
      .attr("x", from)
      .attr("y", 4)
      .attr("width", until - from)
      .attr("height", 42)
      .attr("fill", index % 2 === 0 ? "#fff" : "#e4e4e4")
      .attr("stroke", "#000");
    const mark = cutting.legs.find(({ name }) => name === to.name)?.mark;
    if (until - from > 44) drawTilt(svg, from + 7, 39, to.tiltDeg, 22);
    svg
      .append("text")
      .attr("x", until - from > 44 ? from + 36 : (from + until) / 2)
      .attr("text-anchor", until - from > 44 ? "start" : "middle")
      .attr("y", 31)
      .attr("font-size", 17)
      .attr("font-weight", 700)
      .text(mark ?? "flat");
  });
  for (let month = new Date(start); month.getTime() < end; month.setUTCMonth(month.getUTCMonth() + 1, 1)) {
    const at = x(month.getTime());
    svg.append("path").attr("d", `M${at},46v4`).attr("stroke", "#000");
    // The first month may be too short to be written out.
    if (month.getTime() > start || month.getUTCDate() < 16)
      svg
        .append("text")
        .attr("x", at + 2)
        .attr("y", 60)
        .text(monthShort(isoDate(month.getTime())));
  }
  return svg.node() as SVGSVGElement;
};

/** A leg's tilt for its line in the list: a small side view. */
export const tiltPicture = (document: Document, tiltDeg: number): SVGSVGElement => {
  const svg = drawing(document, 34, 30, `tilt ${Math.round(tiltDeg)} degrees`);
  drawTilt(svg, 5, 26, tiltDeg, 22);
  return svg.node() as SVGSVGElement;
};

const MONTH_BAR = { height: 62, foot: 14, top: 12 };

/** What each month brings: a bar for the mean, a whisker from p10 to p90 where cloud is known. */
export const monthBars = (document: Document, months: readonly MonthExpectation[]): SVGSVGElement => {
  const { height, foot, top } = MONTH_BAR;
  const svg = drawing(
    document,
    COLUMN_PX,
    height + foot,
    "Watt-hours a day into the battery by month, with the spread of single days",
  );
  const most = max(months, ({ batteryWh, p90Wh }) => Math.max(batteryWh, p90Wh ?? 0)) ?? 1;
  const y = scaleLinear([0, most], [height, top]);
  const step = COLUMN_PX / months.length;
  months.forEach(({ month, batteryWh, p10Wh, p90Wh }, index) => {
    const middle = (index + 0.5) * step;
    svg
      .append("rect")
      .attr("x", index * step + step * 0.18)
      .attr("width", step * 0.64)
      .attr("y", y(batteryWh))
      .attr("height", height - y(batteryWh))
      .attr("fill", "#d9d9d9")
      .attr("stroke", "#000")
      .attr("stroke-width", 0.7);
    if (p10Wh !== null && p90Wh !== null)
      svg
        .append("path")
        .attr("d", `M${middle},${y(p90Wh)}V${y(p10Wh)}m-4,0h8M${middle - 4},${y(p90Wh)}h8`)
        .attr("fill", "none")
        .attr("stroke", "#000")
        .attr("stroke-width", 1.3);
    svg
      .append("text")
      .attr("x", middle)
      .attr("y", height + 11)
      .attr("text-anchor", "middle")
      .text(monthShort(month));
  });
  return svg.node() as SVGSVGElement;
};
