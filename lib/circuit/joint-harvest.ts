import type { BranchLight } from "./branches.ts";
import type { Harvest, Harvester } from "./harvest.ts";

/** A circuit among several on one battery, and which of all branches are its own. */
export interface JointPart {
  readonly harvester: Harvester;
  readonly at: readonly number[];
}

const addTo = (sum: Float64Array, values: Float64Array): void => {
  for (let at = 0; at < values.length; at += 1) sum[at] += values[at];
};

/**
 * Several circuits that charge one battery, each through a cable of its own: what they could put in, added up. Where one of
 * them follows the battery's voltage the whole does, with the watts of those that track power beside.
 *
 * @throws RangeError without a circuit
 */
export const jointHarvester = (parts: readonly JointPart[]): Harvester => {
  if (parts.length === 0)
    throw new RangeError("jointHarvester: expected at least one circuit, received none");
  const kinds = parts.map(({ harvester }) => harvester.room(0));
  const nodes = kinds.reduce((most, one) => (one.kind === "current" ? one.nodes : most), 0);
  const tracked = kinds.some(({ kind }) => kind === "power");
  const room = (rows: number): Harvest => {
    if (nodes === 0) return { kind: "power", watts: new Float64Array(rows) };
    const amps = new Float64Array(rows * nodes);
    return tracked
      ? { kind: "current", nodes, amps, besideW: new Float64Array(rows) }
      : { kind: "current", nodes, amps };
  };
  let own: { readonly rows: number; readonly rooms: readonly Harvest[] } | null = null;
  const roomsFor = (rows: number): readonly Harvest[] => {
    if (own?.rows !== rows) own = { rows, rooms: parts.map(({ harvester }) => harvester.room(rows)) };
    return own.rooms;
  };
  return {
    controllers: parts.reduce((sum, { harvester }) => sum + harvester.controllers, 0),
    ownW: parts.reduce((sum, { harvester }) => sum + harvester.ownW, 0),
    room,
    fill: (lights: readonly BranchLight[], rows, out) => {
      const watts = out.kind === "power" ? out.watts : out.besideW;
      watts?.fill(0);
      if (out.kind === "current") out.amps.fill(0);
      parts.forEach(({ harvester, at }, part) => {
        const one = roomsFor(rows)[part];
        harvester.fill(
          at.map((branch) => lights[branch]),
          rows,
          one,
        );
        if (one.kind === "current" && out.kind === "current") addTo(out.amps, one.amps);
        else if (one.kind === "power" && watts !== undefined) addTo(watts, one.watts);
        else throw new TypeError("fill: expected room made by this harvester, received another kind");
      });
    },
  };
};
