import type { Plan } from "../../plan/plan.ts";
import { skyAtRatio } from "../../sky/climate/days/cloud-skies.ts";
import { drawnAir } from "../../sky/climate/days/day-air.ts";
import type { LightSequences } from "../../sky/climate/days/sequences.ts";
import type { SunColumns } from "../../sun/columns.ts";
import { wholeDays } from "../../sun/whole-days.ts";
import { drawSeasons } from "./sequences.ts";
import { type ReadySky, readySkies } from "./skies.ts";
import type { PlanSkies } from "./skies-of-plan.ts";

/** Skies that a battery is put through: each a season, one as likely as the next. */
export type SkySource =
  /** The years of a weather file; or the clear sky alone, where nothing else is known. */
  | {
      readonly kind: "years";
      readonly sun: SunColumns;
      readonly skies: readonly ReadySky[];
      /** Whether there is cloud in them; if not, every answer is an upper bound. */
      readonly cloudIn: boolean;
    }
  /** Seasons drawn from a climate, day by day between rungs of cloud. */
  | {
      readonly kind: "drawn";
      readonly sun: SunColumns;
      readonly rungs: readonly CloudRung[];
      readonly sequences: LightSequences;
      /** Fills in a season's air, degC on every step of its whole days; left out where the climate knows none. */
      readonly air?: (season: number, out: Float64Array) => void;
    };

/** A sky in which every day has the same ratio of its light to the clear day's. */
export interface CloudRung {
  readonly ratio: number;
  readonly sky: ReadySky;
}

/** How many seasons a source has. */
export const seasonsOf = (source: SkySource): number =>
  source.kind === "years" ? source.skies.length : source.sequences.seasons;

/**
 * A day's ratio to its clear day lies between two rungs this far apart. A panel's watts go next to straight between them,
 * but for the jumps between the bins of Perez et al. (4 % of a day at worst), which the rungs even out (tested).
 */
const RUNG_STEP = 0.05;

/** The rungs that hold all days of some sequences, darkest first. */
const rungRatios = ({ ratio }: LightSequences): readonly number[] => {
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (const value of ratio) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  if (!(least <= most)) return [1];
  const first = Math.floor(least / RUNG_STEP);
  const last = Math.max(first + 1, Math.ceil(most / RUNG_STEP));
  return Array.from({ length: last - first + 1 }, (_, rung) => (first + rung) * RUNG_STEP);
};

/**
 * The seasons that a plan's skies offer a battery: drawn ones where they come from a climate, else the years of the
 * weather file, else the clear sky.
 *
 * @param onProgress told while seasons are drawn how many of their days are done
 */
export const skySource = (
  { site, sky }: Pick<Plan, "site" | "sky">,
  { skies, cloud }: PlanSkies,
  onProgress?: (done: number, days: number) => void,
): SkySource => {
  const { sun, clear, expected } = skies;
  if (cloud === null) {
    const cloudIn = expected.length > 0;
    return { kind: "years", sun, skies: cloudIn ? expected : [clear], cloudIn };
  }
  const sequences = drawSeasons({ days: sun.days }, cloud, onProgress);
  const ratios = rungRatios(sequences);
  const columns = ratios.map((ratio) => ({
    weight: 1 / ratios.length,
    sky: skyAtRatio(sun, clear.sky, cloud.days, ratio),
  }));
  const ready = readySkies(sun, clear.sky, columns, sky.toPlane, site.horizon).expected;
  return {
    kind: "drawn",
    sun,
    rungs: ratios.map((ratio, at) => ({ ratio, sky: ready[at] })),
    sequences,
    ...(cloud.air === null ? {} : { air: drawnAir(cloud.air, wholeDays(sun), sequences) }),
  };
};
