/** Days in words: halves and tenths only where they matter. @example shortDaysWords(1) // "1 short day" */
export const shortDaysWords = (days: number): string => {
  const shown = days < 9.95 ? Number(days.toFixed(1)) : Math.round(days);
  if (shown === 0) return days > 0 ? "hardly a short day" : "no short day";
  return `${shown} short ${shown === 1 ? "day" : "days"}`;
};
