/** Where a value stands in a plan: keys and list places, outermost first. */
export type Path = readonly (string | number)[];

const isContainer = (value: unknown): value is Readonly<Record<string | number, unknown>> =>
  typeof value === "object" && value !== null;

/** The value at a path, or `undefined`. */
export const valueAt = (root: unknown, path: Path): unknown =>
  path.reduce<unknown>((value, key) => (isContainer(value) ? value[key] : undefined), root);

/**
 * A copy with one value changed. `undefined` takes a key out, so that the library's default applies;
 * what is missing on the way is made.
 */
export const withValue = (root: unknown, path: Path, value: unknown): unknown => {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  const inner = withValue(isContainer(root) ? root[key] : undefined, rest, value);
  if (typeof key === "number") {
    const list = Array.isArray(root) ? [...root] : [];
    if (inner === undefined) list.splice(key, 1);
    else list[key] = inner;
    return list;
  }
  const { [key]: _, ...others } = isContainer(root) ? root : {};
  return inner === undefined ? others : { ...(isContainer(root) ? root : {}), [key]: inner };
};
