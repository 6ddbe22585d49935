import { invariant } from "@/lib/base";

/** From the first day of year 1 on, so that no record's time is negative. */
const BEGIN_MS = 62_135_596_800_000;

/**
 * A bead's place in time as a text: 13 hexadecimal digits of milliseconds since year 1, then 8 of its number. Texts sort as
 * (time, number) do, and no two beads share one, so a page of a list begins after exactly one of them. `atMs`: since 1970.
 */
export function placeOf(atMs: number, number: number): string {
  const ms = atMs + BEGIN_MS;
  invariant(ms >= 0 && Number.isSafeInteger(ms), `no place for ${atMs} ms`);
  invariant(Number.isSafeInteger(number) && number >= 0, `no place for bead ${number}`);
  return ms.toString(16).padStart(13, "0") + number.toString(16).padStart(8, "0");
}

/** @twice */
export const isPlace = (text: string): boolean => /^[0-9a-f]{21}$/.test(text);
