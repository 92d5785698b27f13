/**
 * Fields over the whole Earth, twelve months each, at evenly spaced places.
 */

import type { Spot } from "../spot.ts";
import type { Twelve } from "../station.ts";
import type { WorldField } from "../world.ts";

/** Columns that stand before those of the longitudes: quantity, month, latitude. */
const BEFORE = 3;

/**
 * Reads one quantity out of the lines of a world grid: a header, and rows `quantity,month,latitude_deg` with a cell for each
 * longitude from west to east, all of a quantity's rows in the order of months and then of latitudes from the south.
 *
 * @param scale what a whole number of the file stands for, in the unit wanted
 * @throws RangeError when the quantity's rows do not make twelve layers
 */
export const worldField = (
  [header = [], ...lines]: readonly (readonly string[])[],
  quantity: string,
  scale: number,
): WorldField => {
  const own = lines.filter(([name]) => name === quantity);
  const columns = header.length - BEFORE;
  const rows = own.length / 12;
  if (!(Number.isInteger(rows) && rows > 0 && columns > 0)) {
    throw new RangeError(`worldField: expected twelve layers of ${quantity}, received ${own.length} rows`);
  }
  const values = new Float64Array(own.length * columns);
  let at = 0;
  for (const line of own) {
    for (let column = BEFORE; column < line.length; column++) values[at++] = scale * Number(line[column]);
  }
  return { stepDeg: 360 / columns, rows, columns, values };
};

/**
 * Twelve months of a field at a place: bilinear between the four places round it, round the date line, and held beyond the
 * outermost rows.
 */
export const fieldAt = (
  { stepDeg, rows, columns, values }: WorldField,
  { latitudeDeg, longitudeDeg }: Spot,
): Twelve => {
  const down = Math.min(rows - 1, Math.max(0, (latitudeDeg + 90) / stepDeg - 0.5));
  const along = (longitudeDeg + 180) / stepDeg - 0.5 + columns;
  const south = Math.min(rows - 2, Math.floor(down));
  const north = down - south;
  const west = Math.floor(along);
  const east = along - west;
  const [first, second] = [west % columns, (west + 1) % columns];
  return Array.from({ length: 12 }, (_, month) => {
    const row = (month * rows + south) * columns;
    const low = (1 - east) * values[row + first] + east * values[row + second];
    const high = (1 - east) * values[row + columns + first] + east * values[row + columns + second];
    return (1 - north) * low + north * high;
  });
};
