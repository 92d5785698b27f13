import { emptyPlaneColumns, martinRuizGlass, planeColumns } from "../../lib/plane/index.ts";
import { seasonClearSky, seasonSun } from "../../lib/season/season-skies.ts";
import { readySkies } from "../../lib/season/skies.ts";
import { demoYear } from "./demo-year.ts";
import { measure, measuredLine, ratioLine } from "./measure.ts";

/**
 * The plane loop against the least that any loop over the same columns can cost: the same eight columns read, the same two
 * written, the same sixteen multiplications and additions, and nothing else.
 */
export const benchFloor = (): readonly string[] => {
  const plan = demoYear();
  const sun = seasonSun(plan);
  const { dome } = readySkies(sun, seasonClearSky(plan, sun), []).clear;
  const glass = martinRuizGlass();
  const out = emptyPlaneColumns(sun.length);
  // Short enough to fit between two interruptions of a busy machine.
  const repeats = 4;

  const floor = (a: number, b: number, c: number, d: number): void => {
    const { east, north, up, length } = sun;
    const { beam, circumsolar, dome: evenly, horizon, ground } = dome;
    const { plane, absorbed } = out;
    for (let row = 0; row < length; row += 1) {
      const cosine = east[row] * a + north[row] * b + up[row] * c;
      const fromSun = beam[row] * cosine + circumsolar[row] * cosine;
      const spread = evenly[row] * d + horizon[row] * a;
      const fromGround = ground[row] * b;
      plane[row] = fromSun + spread + fromGround;
      absorbed[row] = fromSun * c + spread * d + fromGround * a;
    }
  };
  const runs = measure(
    [
      {
        name: `plane loop, ${repeats} aims`,
        run: () => {
          for (let aim = 0; aim < repeats; aim += 1) {
            planeColumns(sun, dome, { tiltDeg: 20 + 10 * aim, bearingDeg: 180 }, glass, out);
          }
          return out.absorbed[100];
        },
      },
      {
        name: `floor, ${repeats} times`,
        run: () => {
          for (let aim = 0; aim < repeats; aim += 1) floor(0.1, -0.6 - aim / 1000, 0.8, 0.9);
          return out.absorbed[100];
        },
      },
    ],
    200,
    20,
  );
  const [loop, least] = runs.map(({ leastMs }) => leastMs);
  const perRow = (ms: number): string => ((ms * 1e6) / (repeats * sun.length)).toFixed(2);
  return [
    `The plane loop and its floor, ${sun.length} rows:`,
    ...runs.map(measuredLine),
    ratioLine("plane loop / floor", loop / least, 3, "at most"),
    `  ${perRow(loop)} ns a row and aim; floor ${perRow(least)} ns`,
  ];
};
