import { MEAN_MONTH_DAYS } from "../sky/climate/month-sun.ts";
import { climateNear } from "../sky/climate/place/choose-place.ts";
import { placeLine } from "../sky/climate/place/chosen-climate.ts";
import { findPlaces } from "../sky/climate/place/find-place.ts";
import { heightNote, placeHeight } from "../sky/climate/place/place-height.ts";
import { type ClimateStation, monthlyGlobal } from "../sky/climate/station.ts";
import { shippedClimates } from "./climate-tables.ts";
import { DELIVERY_OPTIONS, deliver } from "./deliver.ts";
import {
  numberOption,
  textOption,
  UsageError,
  type Verb,
  type VerbWords,
  type Voice,
  wholeOption,
} from "./verb.ts";

const help = `
  panel-season places NAME [options]
  panel-season places --near LATITUDE,LONGITUDE [options]

  --near LAT,LON   the places nearest to a site, and what the site is told; south and west are negative
  --elevation M    height of that site above the sea [that of the places near]
  --most N         how many places at most, 1 to 100 [10]
  --json           as JSON on standard output, with twelve months each

2381 places on every continent travel with the program: mean daily radiation of US and German typical
years, of European normals and some measured years, hours of sunshine elsewhere, and a world grid. A place's name or id goes into a plan:
"sky": { "source": "climate", "from": { "kind": "place", "name": "wmo-55591" } }

Examples
  panel-season places "punta arenas"
  panel-season places --near 53.5,8.6
`;

const yearOf = ({ light, latitudeDeg }: ClimateStation): number =>
  monthlyGlobal(light, latitudeDeg).reduce(
    (sum, global, month) => sum + global * (MEAN_MONTH_DAYS[month] ?? 0),
    0,
  );

const lineOf = (station: ClimateStation): string => {
  const { id, place, country, latitudeDeg, longitudeDeg, elevationM, source } = station;
  const at = `${latitudeDeg.toFixed(2)}, ${longitudeDeg.toFixed(2)}`;
  const height = elevationM === null ? "height not known" : `${elevationM} m`;
  return `${id.padEnd(26)} ${place}, ${country}; ${at}; ${height}; ${source}; ${Math.round(yearOf(station))} kWh/m2 a year`;
};

const jsonOf = ({ light, ...station }: ClimateStation) => ({
  ...station,
  globalKWhM2Day: monthlyGlobal(light, station.latitudeDeg).map((value) => Number(value.toFixed(3))),
});

const spotOf = (near: string) => {
  const [latitudeDeg = Number.NaN, longitudeDeg = Number.NaN, ...rest] = near.split(",").map(Number);
  if (!(Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180) || rest.length > 0) {
    throw new UsageError(
      `--near ${near}: must be a latitude -90 to 90 and a longitude -180 to 180, as 53.5,8.6`,
    );
  }
  return { latitudeDeg, longitudeDeg };
};

const run = async (words: VerbWords, voice: Voice): Promise<void> => {
  const table = await shippedClimates();
  const most = wholeOption(words, "most", [1, 100], "places") ?? 10;
  const near = textOption(words, "near");
  const [name] = words.positionals;
  if ((near === undefined) === (name === undefined)) {
    throw new UsageError("places: give a name, or --near LATITUDE,LONGITUDE");
  }
  if (near === undefined) {
    const found = findPlaces(table, name ?? "", most);
    const lines = found.length === 0 ? [`No place is called "${name}".`] : found.map(lineOf);
    const json = () => ({ places: found.map(jsonOf) });
    await deliver({ heading: null, files: [], lines, json }, words, voice);
    return;
  }
  const spot = spotOf(near);
  const stated = numberOption(words, "elevation", [-430, 6000], "m above the sea");
  const height = placeHeight({ kind: "nearest" }, table, spot);
  const site =
    stated === undefined
      ? ({ ...spot, elevationM: height?.elevationM ?? 0, heightBorrowed: true } as const)
      : { ...spot, elevationM: stated };
  const { climate, warnings, shares } = climateNear(table, site);
  await deliver(
    {
      heading: null,
      files: [],
      json: () => ({
        site,
        climate,
        places: shares.map(({ station, ...share }) => ({ ...share, ...jsonOf(station) })),
        warnings,
      }),
      lines: [
        ...shares.map(
          (share) => `${String(Math.round(100 * share.weight)).padStart(3)} %  ${placeLine(share)}`,
        ),
        "",
        stated === undefined ? heightNote(height, "--elevation") : `Height above the sea: ${stated} m`,
        `Mean daily light, January to December, kWh/m2: ${climate.globalKWhM2.map((value) => value.toFixed(1)).join(" ")}`,
        ...warnings,
      ],
    },
    words,
    voice,
  );
};

export const placesVerb: Verb = {
  name: "places",
  says: "places whose climate can stand in for a weather file, by name or near a site",
  help,
  options: {
    near: { type: "string" },
    elevation: { type: "string" },
    most: { type: "string" },
    json: DELIVERY_OPTIONS.json,
  },
  mostWords: 1,
  run,
};
