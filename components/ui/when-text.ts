import { dayText } from "@/lib/report";

/** Date and time of an instant as clocks of a zone show it: year, month, day, hour, minute as written, two digits. */
function clockOf(iso: string, timeZone: string): Readonly<Record<string, string>> {
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
  }).formatToParts(new Date(iso));
  return Object.fromEntries(parts.map(({ type, value }) => [type, value]));
}

/** "30 November 2026": the day an instant falls on where the zone's clocks hang. `timeZone`: IANA name. */
export function localDayText(iso: string, timeZone: string): string {
  const { year, month, day } = clockOf(iso, timeZone);
  return dayText(`${year}-${month}-${day}`);
}

/** "30 November 2026, 18:00", by the zone's clocks; daylight saving of that day is in it. */
export function whenText(iso: string, timeZone: string): string {
  const { hour, minute } = clockOf(iso, timeZone);
  return `${localDayText(iso, timeZone)}, ${hour}:${minute}`;
}

/** "2026-11-30T18:00": what a field for a time holds, by the zone's clocks. */
export function fieldTimeText(iso: string, timeZone: string): string {
  const { year, month, day, hour, minute } = clockOf(iso, timeZone);
  return `${year}-${month}-${day}T${hour}:${minute}`;
}

/** "Denver time" of "America/Denver"; "UTC" of UTC and of whatever names no place. */
export function zoneText(timeZone: string): string {
  const place = timeZone.includes("/") ? timeZone.split("/").at(-1) : undefined;
  return place === undefined || timeZone.startsWith("Etc/")
    ? timeZone.replace("Etc/", "")
    : `${place.replaceAll("_", " ")} time`;
}
