import type { ClimateFrom } from "../../plan/climate.ts";
import type { Plan } from "../../plan/plan.ts";

const TO_PLANE = {
  perez: "sky to plane: Perez et al. 1990",
  "hay-davies": "sky to plane: Hay & Davies 1980",
  isotropic: "sky to plane: isotropic (Liu & Jordan 1963)",
} as const;

const SPLIT = {
  engerer: "Engerer 2015",
  erbs: "Erbs, Klein & Duffie 1982",
  ridley: "Ridley, Boland & Lauret 2010",
  reindl: "Reindl, Beckman & Duffie 1990",
} as const;

const CLIMATE = [
  "cloud climate: daily clearness by Bendt, Collares-Pereira & Rabl 1981 to the site's clear day (tropics: Saunier, Reddy & Kumar 1987), each month's mean kept",
  "beam and diffuse of cloudy days: Erbs, Klein & Duffie 1982, hourly and daily, relative to the clear sky; the day's course is the clear sky's",
  "seasons drawn with day-to-day memory: Graham, Hollands & Brunger 1988, leaning towards a place's own days where they are known",
  "air temperature through the day: Erbs, Klein & Beckman 1983; wind with height: FAO-56",
] as const;

/** Where a climate's twelve months come from. */
const climateWords = (from: ClimateFrom): string => {
  switch (from.kind) {
    case "nearest":
      return "climate of the nearest places of the shipped tables";
    case "place":
      return `climate of ${from.name}`;
    case "analogy":
      return `climate by analogy, rough: a ${from.like}`;
    case "table":
      return `climate of the table ${from.file}`;
    case "months":
      return "climate of twelve months as stated";
  }
};

/** The models behind a plan's figures, each with its source, for the tables' metadata. */
export const modelWords = ({ sky, panels }: Plan): readonly string[] => [
  "sun: Meeus, Astronomical Algorithms, apparent position; distance: Spencer 1971; 1361 W/m² (Kopp & Lean 2011)",
  "clear sky: Bird & Hulstrom 1981; air mass: Kasten & Young 1989",
  ...(sky.source === "weather"
    ? [
        `weather file: ${sky.file.slice(sky.file.lastIndexOf("/") + 1)}; where it has no beam, diffuse share by ${SPLIT[sky.diffuseSplit]}`,
      ]
    : []),
  ...(sky.source === "climate" ? [climateWords(sky.from), ...CLIMATE] : []),
  TO_PLANE[sky.toPlane],
  "glass: Martin & Ruiz 2001, 2005",
  panels.some(({ mount }) => mount.kind === "fixed" && mount.back === "roof")
    ? "cell temperature: Faiman 2008; on a roof 1.8 times the rise, Skoplaki et al. 2008"
    : "cell temperature: Faiman 2008",
  "panel: single diode fitted to the nameplate, De Soto, Klein & Beckman 2006",
];
