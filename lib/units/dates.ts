/** Civil dates in words and digits. A date is `2027-06-21`; it has no zone, so every formatter here works in UTC. */

const formatter = (options: Intl.DateTimeFormatOptions): ((date: string) => string) => {
  // Made once: a formatter costs a hundred times what it then takes to write a date.
  const format = new Intl.DateTimeFormat("en-GB", { timeZone: "UTC", ...options });
  return (date) => format.format(Date.parse(date));
};

/** A civil date in words. @example dateWords("2027-06-21") // "21 June 2027" */
export const dateWords = formatter({ day: "numeric", month: "long", year: "numeric" });

/** The same where the year is known from elsewhere. @example dayMonthWords("2027-06-21") // "21 June" */
export const dayMonthWords = formatter({ day: "numeric", month: "long" });

/** The same where room is short. @example dayMonthShort("2027-06-21") // "21 Jun" */
export const dayMonthShort = formatter({ day: "numeric", month: "short" });

/** The month of a date or of `2027-06`. @example monthWords("2027-06") // "June" */
export const monthWords = formatter({ month: "long" });

/** A month's first three letters. @example monthShort("2027-06") // "Jun" */
export const monthShort = formatter({ month: "short" });

/** The month and year of a date or of `2027-06`. @example monthYearWords("2027-06") // "June 2027" */
export const monthYearWords = formatter({ month: "long", year: "numeric" });

/** The UTC date of an instant. @example isoDate(0) // "1970-01-01" */
export const isoDate = (timeMs: number): string => new Date(timeMs).toISOString().slice(0, 10);

/** The UTC date and minute of an instant. @example isoMinute(0) // "1970-01-01T00:00Z" */
export const isoMinute = (timeMs: number): string => `${new Date(timeMs).toISOString().slice(0, 16)}Z`;

/** A month of the calendar by its number, 1 to 12. @example calendarMonth(6) // "June" */
export const calendarMonth = (month: number): string => monthWords(`2027-${String(month).padStart(2, "0")}`);
