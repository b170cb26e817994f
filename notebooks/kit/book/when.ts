const FORMAT = new Intl.DateTimeFormat("en-GB", {
  day: "numeric",
  month: "long",
  year: "numeric",
  hour: "2-digit",
  minute: "2-digit",
});

/** A time of the book in words, by the clock of this machine: `1 March 2026 at 08:00`. */
export function when(time: string): string {
  return FORMAT.format(new Date(time));
}
