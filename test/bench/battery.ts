import { sum } from "d3";
import { readPlan } from "../../lib/plan/index.ts";
import { batterySeasons, meanOutcome } from "../../lib/season/battery/battery-season.ts";
import { choicesOf } from "../../lib/season/battery/set-ups.ts";
import { skiesOfPlan } from "../../lib/season/light/skies-of-plan.ts";
import { skySource } from "../../lib/season/light/sky-source.ts";
import { measure, measuredLine, ratioLine } from "./measure.ts";
import { straightforwardBattery } from "./straightforward-battery.ts";

const SEASONS = 200;
/** The straightforward version lives through so many seasons and is scaled up: each costs the same. */
const STRAIGHT_SEASONS = 1;

/** 200 seasons x 214 days x 8 set-ups, hourly, full curve. */
export const benchBattery = (): readonly string[] => {
  const plan = readPlan({
    name: "bench hut",
    site: { latitudeDeg: 53.56, longitudeDeg: 8.59, timeZone: "Europe/Berlin" },
    season: { from: "2027-03-15", to: "2027-10-14", stepMinutes: 60 },
    sky: {
      source: "climate",
      from: { kind: "months", globalKWhM2: [0.6, 1.2, 2.4, 4, 5, 5.2, 5, 4.3, 2.9, 1.6, 0.8, 0.45] },
      seasons: SEASONS,
    },
    panels: [{ name: "propped panel", module: { powerW: 100 }, lengthMm: 1050 }],
    stand: {
      pivotMm: 760,
      legs: [
        { name: "short", lengthMm: 300 },
        { name: "long", lengthMm: 700 },
      ],
    },
    circuit: { controller: { kind: "pwm", maxCurrentA: 10 } },
    battery: { chemistry: "LiFePO4", capacityAh: 50 },
    loads: {
      appliances: [
        { name: "lamps", watts: 12, use: { kind: "at-times", times: [{ from: "20:00", to: "23:00" }] } },
        { name: "cool box", watts: 36, use: { kind: "cooling", dutyPct: 30 } },
        { name: "laptop", watts: 40, supply: "inverter", use: { kind: "for-hours", hours: 1.5 } },
      ],
    },
  });
  const planSkies = skiesOfPlan(plan, null);
  const source = skySource(plan, planSkies);
  if (source.kind !== "drawn") throw new Error("benchBattery: expected drawn seasons");
  const { asIs, remedies } = choicesOf(plan, planSkies.skies);
  const setUps = [asIs, ...remedies.map(({ setUp }) => setUp)].slice(0, 8);
  const options = { timeZone: plan.site.timeZone, airC: plan.air.temperatureC };
  const shortDaysOf = (): number =>
    sum(batterySeasons(source, setUps, options), (season) => meanOutcome(season, "shortDays"));

  const runs = measure(
    [
      {
        name: `straightforward, ${STRAIGHT_SEASONS} season of ${SEASONS}`,
        run: () => straightforwardBattery(plan, source, setUps, STRAIGHT_SEASONS),
      },
      { name: `engine, ${SEASONS} seasons`, run: shortDaysOf },
    ],
    3,
    1,
  );
  const [straight, engine] = runs.map(({ leastMs }) => leastMs);
  const steps = SEASONS * source.sun.days.length * 24 * setUps.length;
  return [
    `${SEASONS} seasons x ${source.sun.days.length} days x ${setUps.length} set-ups, hourly, full curve:`,
    ...runs.map(measuredLine),
    ratioLine(
      "straightforward (scaled to all seasons) / engine",
      (straight * SEASONS) / STRAIGHT_SEASONS / engine,
      10,
      "at least",
    ),
    `  cost of one hour of one set-up: ${((engine * 1e6) / steps).toFixed(0)} ns`,
  ];
};
