/** A day as the calendar has it, `2026-11-26`, in the cook's own time zone. */
export function dayOf(date: Date): string {
  const two = (number: number) => String(number).padStart(2, "0");
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** Whether a text is a day that there is. */
export function isDay(text: unknown): text is string {
  if (typeof text !== "string" || !/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(text);
}

/** Days from one day to another; negative where that is past. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}

/** Distance of a day: `today`, `in 3 days`, `5 days ago`. */
export function awayWords(days: number): string {
  if (days === 0) return "today";
  if (Math.abs(days) === 1) return days > 0 ? "tomorrow" : "yesterday";
  return days > 0 ? `in ${days} days` : `${-days} days ago`;
}
