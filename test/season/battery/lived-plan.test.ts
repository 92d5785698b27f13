import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type PlanInput, readPlan } from "../../../lib/plan/index.ts";
import { livedPlan } from "../../../lib/season/battery/lived-plan.ts";
import { skiesOfPlan } from "../../../lib/season/index.ts";
import { JOBS, planOfJob } from "../../../notebooks/kit/work/jobs.ts";
import { listen, ownFolder } from "../../cli/listen.ts";

// A week in spring whose short days hang on the step: the light is stepped through by ten minutes, the battery by an hour.
const plan: PlanInput = {
  site: { latitudeDeg: 52, longitudeDeg: 5, timeZone: "Etc/GMT-1" },
  season: { from: "2027-03-01", to: "2027-03-20", stepMinutes: 10 },
  sky: { source: "climate", from: { kind: "months", clearness: new Array(12).fill(0.4) }, seasons: 20 },
  panels: [{ name: "p", module: { powerW: 60 } }],
  battery: { chemistry: "LiFePO4", capacityAh: 10 },
  loads: { appliances: [{ name: "pump", watts: 14, use: { kind: "for-hours", hours: 8 } }] },
};

test("the battery's step is the plan's worth.stepMinutes, whatever the light's", () => {
  expect(livedPlan(readPlan(plan)).season.stepMinutes).toBe(60);
  expect(
    livedPlan(readPlan({ ...plan, season: { from: "2027-03-01", to: "2027-03-20" } })).season,
  ).toMatchObject({ from: "2027-03-01", stepMinutes: 60 });
});

test("legs for the fewest short days: the command line and the notebook give the same short days", async () => {
  const folder = await ownFolder();
  const file = join(folder, "plan.json");
  await writeFile(file, JSON.stringify(plan));
  const { said } = await listen("legs", file, "--for", "fewest short days", "--most", "1", "--json");
  const told = JSON.parse(said).sets.map(({ shortDays }: { readonly shortDays: number }) => shortDays);
  const asPage = planOfJob("shortDayLegs", readPlan(plan));
  const answer = JOBS.shortDayLegs(asPage, skiesOfPlan(asPage, null), () => {}, {});
  expect(told).toEqual(answer.slice(0, told.length).map(({ shortDays }) => shortDays));
  // The light's own step tells otherwise, so that the two agree by more than chance.
  const asLight = readPlan(plan);
  const other = JOBS.shortDayLegs(asLight, skiesOfPlan(asLight, null), () => {}, {});
  expect(told).not.toEqual(other.slice(0, told.length).map(({ shortDays }) => shortDays));
});
