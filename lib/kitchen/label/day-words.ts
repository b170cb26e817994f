import {InputError} from "../../core/errors.ts";

const MONTHS = "January February March April May June July August September October November December".split(
  " ",
);

/**
 * Refuses anything but a day of the calendar as `2027-03-31`, from the year 2000 to 2199.
 *
 * @throws InputError naming the place
 */
export function expectDay(value: string, place: string): void {
  const advice = "write year, month and day, e.g. 2027-03-31";
  const found = typeof value === "string" ? /^(2[01]\d\d)-(\d\d)-(\d\d)$/.exec(value) : null;
  if (!found) throw new InputError(place, "no date", value, advice);
  const [year, month, day] = found.slice(1).map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  if (day < 1 || day > days) throw new InputError(place, "no day of the calendar", value, advice);
}

/** A day in words, the month's name unmistakable: `31 March 2027`. */
export function dayWords(day: string): string {
  const [year, month, date] = day.split("-").map(Number) as [number, number, number];
  return `${date} ${MONTHS[month - 1]} ${year}`;
}
