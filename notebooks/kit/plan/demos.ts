/** The demo plans that travel with the library, as their files state them. */
const FILES = import.meta.glob<unknown>("../../../data/plans/*.json", { eager: true, import: "default" });

export interface Demo {
  /** The file's name without its ending: what a link or a test calls it. */
  readonly id: string;
  readonly name: string;
  readonly given: unknown;
}

const nameOf = (given: unknown, otherwise: string): string =>
  typeof given === "object" && given !== null && "name" in given ? String(given.name) : otherwise;

export const DEMOS: readonly Demo[] = Object.entries(FILES).map(([file, given]) => {
  const id = file.slice(file.lastIndexOf("/") + 1).replace(/\.json$/, "");
  return { id, name: nameOf(given, id), given };
});

/** The plan a newcomer meets: the same one the command line runs when none is named. */
export const FIRST_DEMO: Demo = (() => {
  const first = DEMOS.find(({ id }) => id === "warden-hut");
  if (first === undefined) throw new Error("The demo plan warden-hut.json is missing from data/plans");
  return first;
})();
