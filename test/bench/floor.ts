import {
  type DomeColumns,
  emptyPlaneColumns,
  martinRuizGlass,
  type PlaneColumns,
  planeColumns,
} from "../../lib/plane/index.ts";
import { seasonClearSky, seasonSun } from "../../lib/season/light/season-skies.ts";
import { readySkies } from "../../lib/season/light/skies.ts";
import type { SunColumns } from "../../lib/sun/index.ts";
import { demoYear } from "./demo-year.ts";
import { measure, measuredLine, ratioLine } from "./measure.ts";

/**
 * The plane loop against the least that any loop over the same columns can cost: the same eight columns read, the same two
 * written, the same sixteen multiplications and additions, and nothing else.
 *
 * Twice: with the columns handed in, as any function of a library gets them, and with columns that are constants of this
 * file. V8 checks a column that was handed in again at every row (its kind, length and address, since the loop's stack
 * check may have changed anything); of a constant it knows all that when it compiles. Seen in the machine code by
 * `node --print-opt-code --print-opt-code-filter=<function>`. No function that takes its columns can come near the second.
 */
export const benchFloor = (): readonly string[] => {
  const plan = demoYear();
  const sun = seasonSun(plan);
  const { dome } = readySkies(sun, seasonClearSky(plan, sun), []).clear;
  const glass = martinRuizGlass();
  const out = emptyPlaneColumns(sun.length);
  // Short enough to fit between two interruptions of a busy machine.
  const repeats = 4;

  const handedIn = (
    { east, north, up, length }: SunColumns,
    { beam, circumsolar, dome: evenly, horizon, ground }: DomeColumns,
    { plane, absorbed }: PlaneColumns,
    a: number,
    b: number,
    c: number,
    d: number,
  ): void => {
    for (let row = 0; row < length; row += 1) {
      const cosine = east[row] * a + north[row] * b + up[row] * c;
      const fromSun = beam[row] * cosine + circumsolar[row] * cosine;
      const spread = evenly[row] * d + horizon[row] * a;
      const fromGround = ground[row] * b;
      plane[row] = fromSun + spread + fromGround;
      absorbed[row] = fromSun * c + spread * d + fromGround * a;
    }
  };
  const constants = (a: number, b: number, c: number, d: number): void => {
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
  // As the plane loop sees more than one set of columns in its life, so does the floor.
  const others = { sun: { ...sun }, dome: { ...dome }, out: emptyPlaneColumns(sun.length) };
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
        name: `floor, columns handed in, ${repeats} times`,
        run: () => {
          for (let aim = 0; aim < repeats; aim += 1) {
            const given = aim % 2 === 0 ? { sun, dome, out } : others;
            handedIn(given.sun, given.dome, given.out, 0.1, -0.6 - aim / 1000, 0.8, 0.9);
          }
          return out.absorbed[100];
        },
      },
      {
        name: `floor, columns constant, ${repeats} times`,
        run: () => {
          for (let aim = 0; aim < repeats; aim += 1) constants(0.1, -0.6 - aim / 1000, 0.8, 0.9);
          return out.absorbed[100];
        },
      },
    ],
    200,
    20,
  );
  const [loop, handed, constant] = runs.map(({ leastMs }) => leastMs);
  const perRow = (ms: number): string => ((ms * 1e6) / (repeats * sun.length)).toFixed(2);
  return [
    `The plane loop and its floor, ${sun.length} rows:`,
    ...runs.map(measuredLine),
    ratioLine("plane loop / floor, columns handed in", loop / handed, 3, "at most"),
    `  plane loop / floor, columns constant: ${(loop / constant).toFixed(1)} x (out of reach: see test/bench/floor.ts)`,
    `  ${perRow(loop)} ns a row and aim; floors ${perRow(handed)} and ${perRow(constant)} ns`,
  ];
};
