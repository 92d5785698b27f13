import { UsageError } from "../verb.ts";

/** Which part of the lines this run takes: every `of`-th, starting at the `part`-th. */
export interface Shard {
  readonly part: number;
  readonly of: number;
}

export const WHOLE: Shard = { part: 1, of: 1 };

/**
 * Reads `2/8` as the second of eight parts.
 *
 * @throws UsageError when it is no such thing
 */
export const shardOf = (text: string): Shard => {
  const found = /^(\d{1,6})\/(\d{1,6})$/.exec(text);
  const part = Number(found?.[1]);
  const of = Number(found?.[2]);
  if (!(part >= 1 && part <= of))
    throw new UsageError(`--shard ${text}: must be i/n with i from 1 to n, such as 2/8`);
  return { part, of };
};

/** Whether a line belongs to a shard. The n shards of a file share its lines out, none lost and none doubled. */
export const inShard = (lineNumber: number, { part, of }: Shard): boolean =>
  (lineNumber - 1) % of === part - 1;
