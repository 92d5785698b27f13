/**
 * Which column of a weather file is what. Names are the trade's abbreviations (IEC 61724-1: GHI, DNI, DHI, ...) and the
 * standard names of the Climate and Forecast (CF) conventions, each with or without its unit behind it.
 */

/** What a column can hold. */
export const QUANTITIES = [
  "time",
  "date",
  "global",
  "beamNormal",
  "beamHorizontal",
  "diffuse",
  "airC",
  "windMs",
] as const;

export type Quantity = (typeof QUANTITIES)[number];

const NAMES: Readonly<Record<Quantity, readonly string[]>> = {
  time: ["time_utc", "time", "timestamp", "datetime", "date_time"],
  date: ["date"],
  global: ["ghi", "global_horizontal_irradiance", "surface_downwelling_shortwave_flux_in_air"],
  beamNormal: ["dni", "direct_normal_irradiance", "surface_direct_along_beam_shortwave_flux_in_air"],
  beamHorizontal: [
    "beam_horizontal",
    "direct_horizontal_irradiance",
    "surface_direct_downwelling_shortwave_flux_in_air",
  ],
  diffuse: ["dhi", "diffuse_horizontal_irradiance", "surface_diffuse_downwelling_shortwave_flux_in_air"],
  airC: ["air", "air_temperature", "t_amb"],
  windMs: ["wind", "wind_speed", "ws"],
};

/** The name to suggest for a quantity, with its unit. */
export const SUGGESTED: Readonly<Record<Quantity, string>> = {
  time: "time_utc",
  date: "date",
  global: "ghi_W_m2",
  beamNormal: "dni_W_m2",
  beamHorizontal: "beam_horizontal_W_m2",
  diffuse: "dhi_W_m2",
  airC: "air_degC",
  windMs: "wind_m_s",
};

/** A unit that may stand behind a name: what it measures, and how a value becomes ours. */
export interface Unit {
  readonly of: "irradiance" | "energy" | "temperature" | "speed" | "text";
  /** Ours = scale x value + offset: W/m2, Wh/m2 in the interval, degC, m/s. */
  readonly scale: number;
  readonly offset: number;
}

const UNITS: Readonly<Record<string, Unit>> = {
  w_m2: { of: "irradiance", scale: 1, offset: 0 },
  w_m_2: { of: "irradiance", scale: 1, offset: 0 },
  kw_m2: { of: "irradiance", scale: 1000, offset: 0 },
  wh_m2: { of: "energy", scale: 1, offset: 0 },
  wh_m_2: { of: "energy", scale: 1, offset: 0 },
  kwh_m2: { of: "energy", scale: 1000, offset: 0 },
  kj_m2: { of: "energy", scale: 1 / 3.6, offset: 0 },
  j_cm2: { of: "energy", scale: 1e4 / 3600, offset: 0 },
  mj_m2: { of: "energy", scale: 1000 / 3.6, offset: 0 },
  degc: { of: "temperature", scale: 1, offset: 0 },
  c: { of: "temperature", scale: 1, offset: 0 },
  k: { of: "temperature", scale: 1, offset: -273.15 },
  m_s: { of: "speed", scale: 1, offset: 0 },
  m_s_1: { of: "speed", scale: 1, offset: 0 },
  km_h: { of: "speed", scale: 1 / 3.6, offset: 0 },
};

const KIND: Readonly<Record<Quantity, Unit["of"]>> = {
  time: "text",
  date: "text",
  global: "irradiance",
  beamNormal: "irradiance",
  beamHorizontal: "irradiance",
  diffuse: "irradiance",
  airC: "temperature",
  windMs: "speed",
};

/** Units tried longest first, so that `_m_s` is not read as a unit `s`. */
const UNIT_ENDINGS = Object.keys(UNITS).sort((a, b) => b.length - a.length);

/** A header read: what it holds, and in which unit. */
export interface ColumnMeaning {
  readonly quantity: Quantity;
  readonly unit: Unit;
}

/** `GHI [W/m2]` and `ghi_W_m2` alike become `ghi_w_m2`. */
const normalised = (header: string): string =>
  header
    .toLowerCase()
    .replaceAll("²", "2")
    .replaceAll("°", "deg")
    .replaceAll(/[^a-z0-9]+/g, "_")
    .replaceAll(/^_+|_+$/g, "");

const quantityNamed = (name: string): Quantity | undefined =>
  QUANTITIES.find((each) => NAMES[each].includes(name));

const fits = (unit: Unit, quantity: Quantity): boolean =>
  unit.of === KIND[quantity] || (unit.of === "energy" && KIND[quantity] === "irradiance");

const plain = (quantity: Quantity): Unit => ({ of: KIND[quantity], scale: 1, offset: 0 });

/**
 * The unit behind a header for a quantity that is known from elsewhere; our own unit where none is written.
 *
 * @example unitBehind("hall roof, kWh/m2", "global") // { of: "energy", scale: 1000, offset: 0 }
 */
export const unitBehind = (header: string, quantity: Quantity): Unit => {
  const name = normalised(header);
  for (const ending of UNIT_ENDINGS) {
    const unit = UNITS[ending];
    if (unit !== undefined && name.endsWith(`_${ending}`) && fits(unit, quantity)) return unit;
  }
  return plain(quantity);
};

/**
 * What a column holds, from its header; `null` when the name or its unit is not one of ours.
 *
 * @example meaningOf("GHI [W/m2]") // { quantity: "global", unit: { of: "irradiance", scale: 1, offset: 0 } }
 */
export const meaningOf = (header: string): ColumnMeaning | null => {
  const name = normalised(header);
  const bare = quantityNamed(name);
  if (bare !== undefined) return { quantity: bare, unit: plain(bare) };
  for (const ending of UNIT_ENDINGS) {
    if (!name.endsWith(`_${ending}`)) continue;
    const quantity = quantityNamed(name.slice(0, -ending.length - 1));
    const unit = UNITS[ending];
    if (quantity !== undefined && unit !== undefined && fits(unit, quantity)) return { quantity, unit };
  }
  return null;
};
