/** What one plan of a batch came to: its settings, or what was wrong with it. One line of the results. */
export type BatchResult = {
  /** The plan's line in the input, from 1. */
  readonly line: number;
  /** Fingerprint of the input line, by which a resumed run knows that it reads the same input. */
  readonly sha256: string;
} & (BatchAnswer | { readonly problems: readonly string[] });

export interface BatchAnswer {
  readonly plan: string;
  readonly latitude_deg: number;
  readonly longitude_deg: number;
  readonly from: string;
  readonly to: string;
  /** Where the light comes from: `clear`, `weather` or `climate`. */
  readonly sky: string;
  /** The places whose climate was taken, after `rough: ` where it is; `null` for another sky. */
  readonly climate: string | null;
  readonly settings: readonly SettingTotal[];
  readonly notes: readonly string[];
}

/** A setting's season. */
export interface SettingTotal {
  readonly setting: string;
  readonly tilt_deg: number;
  readonly bearing_deg: number;
  readonly clear_Wh: number;
  readonly expected_Wh: number | null;
  /** Seasons drawn from a climate: nine in ten bring more than p10, one more than p90; `null` for another sky. */
  readonly p10_Wh: number | null;
  readonly p50_Wh: number | null;
  readonly p90_Wh: number | null;
  readonly days_best: number;
}
