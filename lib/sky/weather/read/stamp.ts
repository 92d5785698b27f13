/**
 * Reading time stamps: ISO 8601 date and time, `T` or a blank between. Without a zone they are UTC.
 */
import { DAY_MS } from "../../../units/time.ts";

const STAMP =
  /^(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):?(\d{2})(?::?(\d{2})(?:\.\d{1,9})?)?\s*(Z|z|[+-]\d{2}(?::?\d{2})?)?$/;
const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Midnight UTC of a civil date, or NaN when there is no such date (30 February). */
const midnight = (year: number, month: number, day: number): number => {
  const ms = Date.UTC(year, month - 1, day);
  if (month >= 1 && month <= 12 && day >= 1 && day <= 28) return ms;
  return month >= 1 && month <= 12 && day >= 1 && new Date(ms).getUTCDate() === day ? ms : Number.NaN;
};

const offsetMinutes = (zone: string | undefined): number => {
  if (zone === undefined || zone === "Z" || zone === "z") return 0;
  const sign = zone.startsWith("-") ? -1 : 1;
  const hours = Number(zone.slice(1, 3));
  const minutes = Number(zone.slice(3).replace(":", "") || "0");
  return sign * (hours * 60 + minutes);
};

/**
 * The instant a stamp names, UTC milliseconds; NaN when it can't be read.
 *
 * @example stampMs("2027-06-21 12:00") // 1813579200000
 */
export const stampMs = (text: string): number => {
  const match = STAMP.exec(text.trim());
  if (match === null) return Number.NaN;
  const [, year, month, day, hour, minute, second, zone] = match;
  const hours = Number(hour);
  const minutes = Number(minute);
  const seconds = Number(second ?? "0");
  const endOfDay = hours === 24 && minutes === 0 && seconds === 0;
  if (!(hours < 24 || endOfDay) || minutes > 59 || seconds > 59) return Number.NaN;
  return (
    midnight(Number(year), Number(month), Number(day)) +
    ((hours * 60 + minutes - offsetMinutes(zone)) * 60 + seconds) * 1000
  );
};

/**
 * A civil date as days since 1970-01-01; NaN when it can't be read.
 *
 * @example dateDay("1970-01-02") // 1
 */
export const dateDay = (text: string): number => {
  const match = DATE.exec(text.trim());
  return match === null
    ? Number.NaN
    : midnight(Number(match[1]), Number(match[2]), Number(match[3])) / DAY_MS;
};
