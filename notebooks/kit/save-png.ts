import { svgFile } from "../../lib/report/chart/svg-file.ts";
import { saveBlob } from "./save.ts";

/** Sharp on paper and on dense screens. */
const PIXELS_PER_PX = 2;

/** Saves a chart as a picture of dots: in the light colours, since a picture can't follow its reader's setting. */
export const savePng = async (fileName: string, chart: SVGSVGElement): Promise<void> => {
  const width = chart.width.baseVal.value;
  const height = chart.height.baseVal.value;
  const image = new Image(width, height);
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgFile(chart, "light"))}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = width * PIXELS_PER_PX;
  canvas.height = height * PIXELS_PER_PX;
  const context = canvas.getContext("2d");
  if (context === null) throw new Error("savePng: this browser gives no canvas to draw on");
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  canvas.toBlob((blob) => {
    if (blob !== null) saveBlob(fileName, blob);
  }, "image/png");
};
