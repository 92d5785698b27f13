/**
 * Prints how far the light computed for tilted sensors is from what they read, for each plane and month, by the default model
 * and the two kept for comparison. `npm run validate:plane`.
 */
import { DIFFUSE_SPLITS, type SkyToPlane } from "../../lib/plan/sky.ts";
import { type DiffuseSource, holzkirchenRuns } from "./comparisons/holzkirchen.ts";
import { nyAlesundRuns } from "./comparisons/ny-alesund.ts";
import { dailyError, MODELS, type PlaneDay, type PlaneRun } from "./comparisons/station.ts";

const signed = (value: number): string => `${value < 0 ? "-" : "+"}${Math.abs(value).toFixed(1)}`;

const cell = (days: readonly PlaneDay[]): string => {
  const { biasPct, rmsePct } = dailyError(days);
  return `${signed(biasPct)} / ${rmsePct.toFixed(1)}`.padStart(14);
};

const line = (label: string, days: Readonly<Record<SkyToPlane, readonly PlaneDay[]>>): string =>
  `${label.padEnd(28)}${String(days.perez.length).padStart(5)}${MODELS.map((model) => cell(days[model])).join("")}`;

const together = (runs: readonly PlaneRun[], keep: (day: PlaneDay) => boolean = () => true) => {
  const of = (model: SkyToPlane) => runs.flatMap(({ byModel }) => byModel[model].filter(keep));
  return { perez: of("perez"), "hay-davies": of("hay-davies"), isotropic: of("isotropic") };
};

const table = (title: string, runs: readonly PlaneRun[]): void => {
  console.log(`\n${title}`);
  console.log(
    `${"tilt bearing month".padEnd(28)}${"days".padStart(5)}${MODELS.map((model) => model.padStart(14)).join("")}`,
  );
  const months = [...new Set(together(runs).perez.map(({ date }) => date.slice(0, 7)))].sort();
  for (const run of runs) {
    const name = `${String(run.aim.tiltDeg).padStart(4)} ${String(run.aim.bearingDeg).padStart(7)}`;
    for (const month of months) {
      console.log(
        line(
          `${name} ${month}`,
          together([run], ({ date }) => date.startsWith(month)),
        ),
      );
    }
    console.log(line(`${name} all`, together([run])));
  }
  console.log(line("all planes", together(runs)));
};

const sources: readonly (readonly [DiffuseSource, string])[] = [
  ["measured", "global and diffuse measured"],
  ["engerer", "global alone, split by Engerer 2015"],
  ["erbs", "global alone, split by Erbs 1982"],
  ["ridley", "global alone, split by Ridley et al. 2010"],
  ["reindl", "global alone, split by Reindl et al. 1990"],
];

console.log(
  "Daily sums on tilted planes, computed against measured: bias / root-mean-square error, per cent of the mean day.",
);
for (const [source, words] of sources) {
  table(`Holzkirchen 47.9 N, upright, ground 0.20; ${words}`, holzkirchenRuns(source));
}
for (const split of DIFFUSE_SPLITS) {
  for (const tiltDeg of [45, 90] as const) {
    table(
      `Ny-Alesund 78.9 N, tilt ${tiltDeg}, ground measured; global alone, split by ${split}`,
      nyAlesundRuns(tiltDeg, split),
    );
  }
}
