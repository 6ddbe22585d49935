/** Calendar arithmetic on day numbers: no clock, no time zone. Proleptic Gregorian, years 1 to 9999. */

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

const daysBefore = (year: number): number => {
  const y = year - 1;
  return 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
};

/** Day number of an ISO date, 1 for 0001-01-01, a Monday; null when the text is no date. */
export function dayNumber(iso: string): number | null {
  const [, y = "", m = "", d = ""] = DATE.exec(iso) ?? [];
  const [year, month, day] = [Number(y), Number(m), Number(d)];
  const length = (DAYS[month - 1] ?? 0) + (month === 2 && isLeap(year) ? 1 : 0);
  if (year < 1 || day < 1 || day > length) return null;
  const inYear = DAYS.slice(0, month - 1).reduce((sum: number, n) => sum + n, 0);
  return daysBefore(year) + inYear + (month > 2 && isLeap(year) ? 1 : 0) + day;
}

/** "2026-W48" by ISO 8601: weeks begin on Monday, week 1 holds the year's first Thursday. null for no date. */
export function isoWeek(iso: string): string | null {
  const day = dayNumber(iso);
  if (day === null) return null;
  const thursday = day - ((day - 1) % 7) + 3;
  // The week belongs to the year its Thursday lies in, which is the date's own or a neighbour.
  const own = Number(iso.slice(0, 4));
  const year = thursday > daysBefore(own + 1) ? own + 1 : thursday <= daysBefore(own) ? own - 1 : own;
  const week = Math.floor((thursday - daysBefore(year) - 1) / 7) + 1;
  return `${String(year).padStart(4, "0")}-W${String(week).padStart(2, "0")}`;
}

/** "2026-11"; null for no date. */
export function calendarMonth(iso: string): string | null {
  return dayNumber(iso) === null ? null : iso.slice(0, 7);
}

/** ISO date of a day number of this calendar, the inverse of `dayNumber`. */
export function dateOfDay(day: number): string {
  let year = Math.floor((day - 1) / 365.2425) + 1;
  while (daysBefore(year + 1) < day) year += 1;
  while (daysBefore(year) >= day) year -= 1;
  let left = day - daysBefore(year);
  let month = 0;
  const length = (m: number): number => (DAYS[m] ?? 31) + (m === 1 && isLeap(year) ? 1 : 0);
  while (left > length(month)) {
    left -= length(month);
    month += 1;
  }
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${String(year).padStart(4, "0")}-${two(month + 1)}-${two(left)}`;
}

/** First and last day of "2026-W48" or "2026-11"; null for any other text. */
export function periodDays(key: string): { readonly from: string; readonly to: string } | null {
  const [, weekYear, week] = /^(\d{4})-W(\d{2})$/.exec(key) ?? [];
  if (weekYear !== undefined && week !== undefined) {
    // 4 January always lies in week 1.
    const fourth = dayNumber(`${weekYear}-01-04`);
    if (fourth === null) return null;
    const monday = fourth - ((fourth - 1) % 7) + (Number(week) - 1) * 7;
    const from = dateOfDay(monday);
    return isoWeek(from) === key ? { from, to: dateOfDay(monday + 6) } : null;
  }
  const first = dayNumber(`${key}-01`);
  if (first === null || !/^\d{4}-\d{2}$/.test(key)) return null;
  const last = [31, 30, 29, 28].map((d) => `${key}-${d}`).find((date) => dayNumber(date) !== null);
  return { from: `${key}-01`, to: last ?? `${key}-28` };
}
