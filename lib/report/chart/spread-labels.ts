/**
 * Moves labels apart along one axis so that none lies on another, as little as it takes, in their own order.
 *
 * @param wanted where each label would like to stand
 * @param apart the least distance between two of them
 * @param limits the range they must stay in, when they fit into it
 * @returns where each stands, in the order given
 * @example spreadLabels([10, 11, 40], 5, [0, 100]) // [8, 13, 40]
 */
export const spreadLabels = (
  wanted: readonly number[],
  apart: number,
  [least, most]: readonly [number, number],
): readonly number[] => {
  interface Group {
    readonly members: readonly number[];
    readonly centre: number;
  }
  const half = ({ members }: Group): number => ((members.length - 1) * apart) / 2;
  const held = (group: Group): Group => {
    const top = Math.max(least + half(group), most - half(group));
    return { ...group, centre: Math.min(top, Math.max(least + half(group), group.centre)) };
  };
  const mean = (members: readonly number[]): number =>
    members.reduce((sum, index) => sum + wanted[index], 0) / members.length;
  const groups: Group[] = [];
  const order = wanted.map((_, index) => index).sort((a, b) => wanted[a] - wanted[b] || a - b);
  for (const index of order) {
    let group = held({ members: [index], centre: wanted[index] });
    for (
      let before = groups.at(-1);
      before !== undefined && before.centre + half(before) + apart > group.centre - half(group);
      before = groups.at(-1)
    ) {
      groups.pop();
      const members = [...before.members, ...group.members];
      group = held({ members, centre: mean(members) });
    }
    groups.push(group);
  }
  const placed = wanted.slice();
  for (const group of groups) {
    group.members.forEach((index, place) => {
      placed[index] = group.centre - half(group) + place * apart;
    });
  }
  return placed;
};
