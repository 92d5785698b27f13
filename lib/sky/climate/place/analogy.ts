import type { AnalogyKind, SunshineRelation } from "../../../plan/climate.ts";
import { PlanError } from "../../../units/problem.ts";
import { type ClimateSite, distanceKm } from "../spot.ts";
import { monthlyClearness, type Twelve } from "../station.ts";
import type { ClimateTable } from "../table/climate-table.ts";
import { ANALOGY_PLACES } from "./analogy-places.ts";
import { blendClimate, type PlaceShare } from "./blend.ts";
import type { ChosenClimate } from "./chosen-climate.ts";

const finite = (values: Twelve): Twelve => values.filter(Number.isFinite);
const mean = (values: Twelve): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Scatter of the yearly clearness of places of one kind, as a share of its mean. */
const scatter = (shares: readonly PlaceShare[], relation: SunshineRelation): number => {
  const yearly = shares.map(({ station }) =>
    mean(finite(monthlyClearness(station.light, station.latitudeDeg, relation))),
  );
  const middle = mean(yearly);
  return Math.sqrt(mean(yearly.map((value) => (value - middle) ** 2))) / middle;
};

/**
 * A climate by analogy: the mean clearness of shipped places of a kind, at the site's latitude. Rough, and says so;
 * its uncertainty holds the scatter between those places.
 *
 * @throws PlanError when the table has none of the kind's places
 */
export const climateByAnalogy = (
  table: ClimateTable,
  kind: AnalogyKind,
  site: ClimateSite,
  relation: SunshineRelation = "fitted",
): ChosenClimate => {
  const ids: readonly string[] = ANALOGY_PLACES[kind];
  const stations = table.stations.filter((station) => ids.includes(station.id));
  if (stations.length === 0) {
    throw new PlanError([
      {
        path: "sky.from.like",
        value: kind,
        allowed: "needs the shipped climate tables; none of its places is in the table given",
      },
    ]);
  }
  const shares = stations.map(
    (station): PlaceShare => ({
      station,
      distanceKm: distanceKm(station, site),
      heightDifferenceM: station.elevationM === null ? null : site.elevationM - station.elevationM,
      weight: 1 / stations.length,
    }),
  );
  const climate = blendClimate(shares, site, relation);
  const between = scatter(shares, relation);
  return {
    kind: "analogy",
    climate: {
      ...climate,
      uncertainty: {
        month: climate.uncertainty.month.map((uncertainty) => Math.hypot(uncertainty, between)),
        year: Math.hypot(climate.uncertainty.year, between),
      },
    },
    shares,
    says: `a ${kind}, like ${stations.map((station) => station.place).join(", ")}`,
    warnings: [
      `Rough: the light of a ${kind} elsewhere, not of this place. Any table of the region is better.`,
    ],
  };
};
