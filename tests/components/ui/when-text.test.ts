import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fieldTimeText, localDayText, whenText, zoneText } from "@/components/ui/when-text";
import { inDepth } from "../../setup/in-depth";

/**
 * Rules of daylight saving: United States from the second Sunday of March to the first of November, 2:00 local (Energy
 * Policy Act of 2005); European Union last Sundays of March and October, 01:00 UTC (Directive 2000/84/EC); New South Wales
 * first Sundays of October and April (Standard Time Act 1987, as amended; from memory).
 */
describe("an instant by the clock of whoever reads it", () => {
  it.each([
    // Set in Denver for 30 November, 18:00 (UTC-7): the same evening there, the next day elsewhere.
    ["2026-12-01T01:00:00.000Z", "America/Denver", "30 November 2026, 18:00"],
    ["2026-12-01T01:00:00.000Z", "Europe/Berlin", "1 December 2026, 02:00"],
    ["2026-12-01T01:00:00.000Z", "Australia/Sydney", "1 December 2026, 12:00"],
    // Set in Sydney for 30 November, 09:00 (UTC+11, daylight saving).
    ["2026-11-29T22:00:00.000Z", "Australia/Sydney", "30 November 2026, 09:00"],
    ["2026-11-29T22:00:00.000Z", "America/Denver", "29 November 2026, 15:00"],
    // Berlin, 25 October 2026: 02:30 comes twice.
    ["2026-10-25T00:30:00.000Z", "Europe/Berlin", "25 October 2026, 02:30"],
    ["2026-10-25T01:30:00.000Z", "Europe/Berlin", "25 October 2026, 02:30"],
    // 29 March 2026: 01:59 is followed by 03:00.
    ["2026-03-29T00:59:00.000Z", "Europe/Berlin", "29 March 2026, 01:59"],
    ["2026-03-29T01:00:00.000Z", "Europe/Berlin", "29 March 2026, 03:00"],
    // Denver, 8 March and 1 November 2026.
    ["2026-03-08T08:59:00.000Z", "America/Denver", "8 March 2026, 01:59"],
    ["2026-03-08T09:00:00.000Z", "America/Denver", "8 March 2026, 03:00"],
    ["2026-11-01T07:30:00.000Z", "America/Denver", "1 November 2026, 01:30"],
    ["2026-11-01T08:30:00.000Z", "America/Denver", "1 November 2026, 01:30"],
    // Sydney, 5 April and 4 October 2026.
    ["2026-04-04T15:30:00.000Z", "Australia/Sydney", "5 April 2026, 02:30"],
    ["2026-04-04T16:30:00.000Z", "Australia/Sydney", "5 April 2026, 02:30"],
    ["2026-10-03T15:59:00.000Z", "Australia/Sydney", "4 October 2026, 01:59"],
    ["2026-10-03T16:00:00.000Z", "Australia/Sydney", "4 October 2026, 03:00"],
    // Midnight is 00:00 of the day that begins.
    ["2026-06-30T22:00:00.000Z", "Europe/Berlin", "1 July 2026, 00:00"],
  ])("%s in %s is %s", (iso, zone, words) => {
    expect(whenText(iso, zone)).toBe(words);
    expect(whenText(iso, zone).startsWith(localDayText(iso, zone))).toBe(true);
    const field = fieldTimeText(iso, zone);
    expect([field.slice(11), String(Number(field.slice(8, 10)))]).toEqual([
      words.slice(-5),
      words.split(" ")[0],
    ]);
    expect(field).toMatch(/^2026-\d\d-\d\dT\d\d:\d\d$/);
  });

  it("names the place", () => {
    expect(["America/Denver", "America/New_York", "UTC", "Etc/UTC"].map(zoneText)).toEqual([
      "Denver time",
      "New York time",
      "UTC",
      "UTC",
    ]);
  });

  it("law: what is read in a zone and reckoned back by the zone's own distance from UTC is the instant", () => {
    const day = 86_400_000;
    const instants = fc.integer({ min: Date.UTC(2024, 0), max: Date.UTC(2030, 0) });
    fc.assert(
      fc.property(
        instants,
        fc.constantFrom("America/Denver", "Europe/Berlin", "Australia/Sydney"),
        (ms, zone) => {
          const iso = new Date(Math.floor(ms / 60_000) * 60_000).toISOString();
          const read = Date.parse(`${whenText(iso, zone).replace(",", "")} UTC`);
          const apart = (read - Date.parse(iso)) / 60_000;
          // Whole hours, and for each zone one of two.
          const hours = { "America/Denver": [-7, -6], "Europe/Berlin": [1, 2], "Australia/Sydney": [10, 11] };
          expect(hours[zone as keyof typeof hours]).toContain(apart / 60);
          expect(Math.abs(read - Date.parse(iso))).toBeLessThan(day);
        },
      ),
      { numRuns: inDepth(60, 2000), seed: 18 },
    );
  });
});
