/** What was known last, by name. */
const known = new Map<string, unknown>();

/**
 * The latest of some values that come and go: while `value` is `null`, the one before it; `null` only until there was one.
 * Keeps a page standing while its next answer is being worked out.
 */
export const held = <Value>(name: string, value: Value | null): Value | null => {
  if (value !== null) known.set(name, value);
  // Only this function fills the map, under the caller's own name and type.
  return (known.get(name) as Value | undefined) ?? null;
};
