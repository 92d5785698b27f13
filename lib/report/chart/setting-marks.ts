import * as Plot from "@observablehq/plot";
import { tiltShort } from "../words/words.ts";
import type { SettingStyle } from "./setting-styles.ts";
import { spreadLabels } from "./spread-labels.ts";
import { colour } from "./theme.ts";

/** A setting's label at the end of its line. */
interface EndLabel extends SettingStyle {
  /** Where its line ends, in the chart's units. */
  readonly endsAt: number;
}

const LABEL_SPACING_PX = 17;
const GLYPH_PX = 17;

/** A panel seen from its side, drawn at its real tilt, from a heel `dx` px right of the frame. */
const tiltGlyphs = (
  labels: readonly (EndLabel & { readonly at: number })[],
  dx: number,
): readonly Plot.Markish[] => {
  const shared = {
    y: "at",
    frameAnchor: "right",
    dx,
    dy: 5,
    length: GLYPH_PX,
    anchor: "start",
    shape: LINE,
  } as const;
  return [
    Plot.vector(labels, { ...shared, rotate: 90, stroke: colour("muted"), strokeWidth: 1 }),
    Plot.vector(labels, {
      ...shared,
      rotate: ({ tiltDeg }: EndLabel) => 90 - tiltDeg,
      stroke: "colour",
      strokeWidth: 3,
      strokeLinecap: "round",
    }),
  ];
};

/** A bare stroke, where Plot would draw an arrow. */
export const LINE: Plot.VectorShapeImplementation = {
  draw: (context, length) => {
    context.moveTo(0, 0);
    context.lineTo(0, -length);
  },
};

/**
 * Names each line where it ends, beside a panel drawn at its tilt, so that no legend is needed and colour is
 * never the only mark. Labels that would lie on each other move apart.
 *
 * @param pxPerUnit height of one unit of the chart, px
 * @param top the chart's upper limit, in its units
 * @param room px right of the frame
 */
export const endLabels = (
  labels: readonly EndLabel[],
  { pxPerUnit, top, room }: { readonly pxPerUnit: number; readonly top: number; readonly room: number },
): readonly Plot.Markish[] => {
  const places = spreadLabels(
    labels.map(({ endsAt }) => endsAt * pxPerUnit),
    LABEL_SPACING_PX,
    [0, top * pxPerUnit],
  );
  const placed = labels.map((label, index) => ({ ...label, at: places[index] / pxPerUnit }));
  return [
    ...tiltGlyphs(placed, 8),
    Plot.text(placed, {
      y: "at",
      frameAnchor: "right",
      textAnchor: "start",
      dx: 8 + GLYPH_PX + 6,
      text: ({ name, tiltDeg }: EndLabel) => `${name} ${tiltShort(tiltDeg)}`,
      fill: "colour",
      fontWeight: 600,
      lineWidth: Math.max(3, (room - GLYPH_PX - 18) / 12),
      textOverflow: "ellipsis",
      title: ({ name, tiltDeg }: EndLabel) => `${name}, tilt ${tiltShort(tiltDeg)}`,
    }),
  ];
};
