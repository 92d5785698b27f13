import type { AnalogyKind } from "../../../plan/climate.ts";

/** Shipped places (by id) whose climate is of a kind; both hemispheres count, with the same season. */
export const ANALOGY_PLACES: Readonly<Record<AnalogyKind, readonly string[]>> = {
  // Stornoway, Valentia, Malin Head, Reykjavik, Brest, Punta Arenas, Ushuaia
  "cool wet coast": [
    "wmo-03026",
    "wmo-03953",
    "wmo-03980",
    "wmo-04030",
    "wmo-07110",
    "wmo-85934",
    "wmo-87938",
  ],
  // Erzurum, Lhasa, Zacatecas, La Quiaca, Bryce Canyon
  "dry mountain": ["wmo-17096", "wmo-55591", "wmo-76525", "wmo-87007", "tmy3-724756"],
  // Riyadh, Bechar, Ain Salah, Wadi Halfa, Upington, Needles, Las Vegas
  "hot desert": [
    "wmo-40438",
    "wmo-60571",
    "wmo-60630",
    "wmo-62600",
    "wmo-68424",
    "tmy3-723805",
    "tmy3-723860",
  ],
  // Hongkong, Wuhan, Durban, Porto Alegre, Buenos Aires, Brisbane, Jacksonville, Charleston
  "humid subtropical": [
    "wmo-45004",
    "wmo-57494",
    "wmo-68588",
    "wmo-83967",
    "wmo-87576",
    "wmo-94578",
    "tmy3-722060",
    "tmy3-722080",
  ],
  // Nagpur, Bangalore, Chiang Mai, Bamako, Ouagadougou, Managua, Cuiaba, Brasilia
  "tropical wet and dry": [
    "wmo-42867",
    "wmo-43295",
    "wmo-48327",
    "wmo-61291",
    "wmo-65503",
    "wmo-78741",
    "wmo-83361",
    "wmo-83377",
  ],
  // Wien, Bucuresti, Omsk, Almaty, Chicago, Fargo
  continental: ["wmo-11035", "wmo-15420", "wmo-28698", "wmo-36870", "tmy3-725300", "tmy3-727530"],
  // Tromso, Murmansk, Amderma, Great Wall, Mawson, Casey, Barrow
  "polar coast": [
    "wmo-01026",
    "wmo-22113",
    "wmo-23022",
    "wmo-89058",
    "wmo-89564",
    "wmo-89611",
    "tmy3-700260",
  ],
};
