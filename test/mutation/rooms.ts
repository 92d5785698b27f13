/**
 * Mutation testing room after room: `npm run mutate:rooms`, or `npm run mutate:rooms -- plan sun season/legs`; a room that
 * is parted is asked for as a whole (`season`) or by its parts.
 * Prints one table and fails when a room is under the threshold that `stryker.config.json` states.
 * Takes hours on two cores: run it in a clone of its own.
 */
import { readFileSync } from "node:fs";
import { Stryker } from "@stryker-mutator/core";

type MutantStatus = Awaited<ReturnType<Stryker["runMutationTest"]>>[number]["status"];

interface Room {
  readonly name: string;
  readonly mutate: readonly string[];
  /** The room's own tests, and those from elsewhere that check it; `!` leaves some out. */
  readonly tests: readonly string[];
}

const room = (name: string, ...others: readonly string[]): Room => ({
  name,
  mutate: [`lib/${name}/**/*.ts`, `!lib/${name}/**/index.ts`],
  tests: [`test/${name}/**/*.test.ts`, ...others],
});

const ROOMS: readonly Room[] = [
  room("units"),
  room("plan"),
  room("sun", "test/references/sun-geometry-examples.test.ts", "test/references/magnetic-field.test.ts"),
  room("plane"),
  room("stand", "test/references/wind.test.ts"),
  room("panel"),
  {
    name: "sky",
    mutate: ["lib/sky/*.ts", "lib/sky/diffuse-share/*.ts", "!lib/sky/index.ts"],
    tests: ["test/sky/*.test.ts"],
  },
  // Left out as slow: the shipped files read whole, months of made weather, any interval on any step.
  room("sky/weather", "!test/sky/weather/{parse-weather,shipped-weather,weather-columns}.test.ts"),
  // Left out as slow: the shipped tables read whole, years at six latitudes. Invented places and days stand for them.
  room("sky/climate", "!test/sky/climate/{places,skies,tables}.test.ts"),
  room("circuit"),
  // The season by its parts: a run of all would take hours. Left out as slow, with quicker tests of the same promises in
  // their place: whole years of yields, shipped climates, the default step against one minute, any plan's battery, the
  // books of random batteries, a whole worth table.
  room("season/light", "!test/season/light/{integration,season-yield,sequences}.test.ts"),
  room("season/legs"),
  room("season/aiming"),
  room("season/battery", "!test/season/battery/{any-plan-battery,battery-season,worth}.test.ts"),
];

interface Score {
  readonly name: string;
  readonly mutants: number;
  readonly killed: number;
  /** Counted as noticed: a mutant that never ends is. A busy machine makes more of them, so they are told apart. */
  readonly timedOut: number;
  readonly survived: number;
  readonly leftOut: number;
}

const tally = (name: string, statuses: readonly MutantStatus[]): Score => {
  const count = (...wanted: readonly MutantStatus[]) =>
    statuses.filter((each) => wanted.includes(each)).length;
  const killed = count("Killed");
  const timedOut = count("Timeout");
  const survived = count("Survived", "NoCoverage");
  // Mutants of what is made once on loading are left out (`ignoreStatic`): each would cost a run of all tests.
  return {
    name,
    mutants: killed + timedOut + survived,
    killed,
    timedOut,
    survived,
    leftOut: count("Ignored"),
  };
};

const percent = ({ mutants, survived }: Score): number => (100 * (mutants - survived)) / mutants;

const row = (cells: readonly (string | number)[]): string =>
  cells.map((cell, index) => (index === 0 ? String(cell).padEnd(12) : String(cell).padStart(10))).join("");

const { thresholds } = JSON.parse(
  readFileSync(new URL("../../stryker.config.json", import.meta.url), "utf8"),
) as { readonly thresholds: { readonly break: number } };

const scoreOf = async ({ name, mutate, tests }: Room): Promise<Score> => {
  process.env.PANEL_SEASON_TESTS = tests.join(";");
  const results = await new Stryker({
    mutate: [...mutate],
    jsonReporter: { fileName: `.cache/mutation/${name.replace("/", "-")}.json` },
    reporters: ["clear-text", "json"],
    thresholds: { ...thresholds, break: null },
  }).runMutationTest();
  return tally(
    name,
    results.map(({ status }) => status),
  );
};

const asked = process.argv.slice(2);
const scores: Score[] = [];
const broken: string[] = [];
const chosen = ROOMS.filter(
  ({ name }) => asked.length === 0 || asked.some((room) => room === name || name.startsWith(`${room}/`)),
);
if (chosen.length === 0) {
  console.error(`No such room; there are ${ROOMS.map(({ name }) => name).join(", ")}.`);
  process.exit(2);
}
for (const each of chosen) {
  try {
    scores.push(await scoreOf(each));
  } catch (cause) {
    broken.push(`${each.name}: not scored, ${cause instanceof Error ? cause.message : String(cause)}`);
  }
}

console.log(`\n${row(["room", "mutants", "killed", "timed out", "survived", "score %", "left out"])}`);
for (const score of scores) {
  const { name, mutants, killed, timedOut, survived, leftOut } = score;
  console.log(row([name, mutants, killed, timedOut, survived, percent(score).toFixed(1), leftOut]));
}
for (const line of broken) console.log(line);
const reached = broken.length === 0 && scores.every((score) => percent(score) >= thresholds.break);
process.exitCode = reached ? 0 : 1;
