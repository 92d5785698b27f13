/** Seasons drawn under a stated climate, and the table of their days: run in Node and in a browser, they must be the same. */
import {
  panelUnits,
  readPlan,
  seasonBands,
  seasonCsv,
  seasonSun,
  seasonYield,
  settingsOf,
  skiesOfPlan,
  skySequences,
} from "../../lib/index.ts";

const twelve = [0.6, 1.2, 2.5, 3.9, 4.9, 5.3, 5.0, 4.3, 3.0, 1.7, 0.8, 0.5];

const hex = (values: Float64Array): string =>
  Array.from(new Uint8Array(values.buffer), (byte) => byte.toString(16).padStart(2, "0")).join("");

export interface Drawn {
  /** The bytes of every day's ratio to the clear sky, in every season. */
  readonly ratios: string;
  readonly csv: string;
  /** Bands of the seasons' totals, whole Wh. */
  readonly totals: readonly number[];
}

export const drawnSeasons = (): Drawn => {
  const plan = readPlan({
    site: { latitudeDeg: 53.5, longitudeDeg: 8.6, timeZone: "Europe/Berlin" },
    season: { from: "2027-05-01", to: "2027-06-30", stepMinutes: 30 },
    sky: {
      source: "climate",
      from: { kind: "months", sunshineHours: twelve.map((value) => 40 * value + 20) },
      seed: 42,
    },
    panels: [{ name: "panel", module: { powerW: 100 } }],
    stand: { legs: [{ name: "leg", lengthMm: 500 }] },
  });
  const { cloud, skies } = skiesOfPlan(plan, null);
  if (cloud === null) throw new Error("a climate has cloud");
  const { days } = seasonSun(plan);
  const { ratio } = skySequences(days, cloud.days, cloud.chosen.climate.uncertainty, {
    seasons: 200,
    seed: 42,
  });
  const yields = seasonYield(skies, panelUnits(plan.panels), settingsOf(plan));
  const bands = seasonBands(yields, cloud);
  return {
    ratios: hex(ratio),
    csv: seasonCsv(yields),
    totals: bands.flatMap(({ p10Wh, p50Wh, p90Wh }) => [p10Wh, p50Wh, p90Wh].map(Math.round)),
  };
};
