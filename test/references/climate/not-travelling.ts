import { existsSync } from "node:fs";
import { pathToFileURL } from "node:url";
import type { HourlyYear } from "./hourly-year.ts";

/**
 * Stations whose data may not travel with the project: added when PANEL_SEASON_DATASETS names a folder that has them, and
 * said to be missing otherwise.
 */
export const notTravelling = (): readonly HourlyYear[] => {
  const folder = process.env.PANEL_SEASON_DATASETS;
  if (folder === undefined) {
    console.log("\nNot run: two Brazilian stations (8.9 S and 22.7 S); their data is not here.");
    return [];
  }
  const station = (name: string, file: string, rest: Partial<HourlyYear>): readonly HourlyYear[] => {
    const path = `${folder}/${file}`;
    if (!existsSync(path)) {
      console.log(`\nNot run: ${name}; ${file} is not in the folder.`);
      return [];
    }
    return [
      {
        name,
        file: pathToFileURL(path).href,
        latitudeDeg: 0,
        longitudeDeg: 0,
        elevationM: 0,
        year: 2020,
        ground: 0.2,
        intervalMinutes: 60,
        column: "ghi_W_m2",
        kind: "measured year",
        ...rest,
      },
    ];
  };
  return [
    ...station("Garanhuns", "C_garanhuns_inmet_2020_hourly.csv", {
      latitudeDeg: -8.911,
      longitudeDeg: -36.493,
      elevationM: 828,
    }),
    ...station("Cachoeira Paulista", "C_cachoeira_paulista_sonda_2017_8months_10min.csv.gz", {
      latitudeDeg: -22.69,
      longitudeDeg: -45.006,
      elevationM: 574,
      year: 2017,
      intervalMinutes: 10,
    }),
  ];
};
