/** Weather files made up for tests: a sky of even clearness over a place, written as CSV. */
import { airMassOfSine } from "../../../lib/sky/air-mass.ts";
import { birdClearLight } from "../../../lib/sky/bird.ts";
import { extraterrestrialClock } from "../../../lib/sky/extraterrestrial.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { sunVector } from "../../../lib/sun/position.ts";

export const PLACE = { latitudeDeg: 52, longitudeDeg: 5 } as const;

const AIR = clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, 0);
const MINUTE_MS = 60_000;

export interface MadeWeather {
  readonly from: string;
  readonly days: number;
  readonly intervalMinutes: number;
  /** Where in its interval a stamp lies, 0 start to 1 end [1]. */
  readonly stampAt?: number;
  /** Minutes that the clock is fast [0]. */
  readonly fastMinutes?: number;
  /** Share of the clear sky's light that comes through [0.7]. */
  readonly share?: number;
  readonly place?: { readonly latitudeDeg: number; readonly longitudeDeg: number };
}

/** One interval of such a file. */
export interface MadeRow {
  readonly stamp: string;
  readonly global: number;
}

/** Clear-sky light of a place, dimmed evenly, by intervals; two looks into each. */
export const madeRows = ({
  from,
  days,
  intervalMinutes,
  stampAt = 1,
  fastMinutes = 0,
  share = 0.7,
  place = PLACE,
}: MadeWeather): MadeRow[] => {
  const startMs = Date.parse(`${from}T00:00:00Z`);
  const normalAt = extraterrestrialClock();
  const lightAt = (ms: number): number => {
    const { up } = sunVector(ms, place.latitudeDeg, place.longitudeDeg);
    return share * birdClearLight(normalAt(ms), up, airMassOfSine(up), AIR, 0.2).global;
  };
  return Array.from({ length: (days * 1440) / intervalMinutes }, (_, i) => {
    const ms = startMs + i * intervalMinutes * MINUTE_MS;
    const global =
      (lightAt(ms + intervalMinutes * MINUTE_MS * 0.25) + lightAt(ms + intervalMinutes * MINUTE_MS * 0.75)) /
      2;
    const stampMs = ms + (stampAt * intervalMinutes + fastMinutes) * MINUTE_MS;
    return { stamp: new Date(stampMs).toISOString(), global: Math.round(global * 10) / 10 };
  });
};

/** Rows as CSV text. */
export const asCsv = (rows: readonly MadeRow[], header = "time_utc,ghi_W_m2"): string =>
  [header, ...rows.map(({ stamp, global }) => `${stamp},${global}`)].join("\r\n");
