import { afterEach, describe, expect, it, vi } from "vitest";
import { shopDay } from "@/app/_door/shop-day";
import { wallContent } from "@/app/exercises/wall-content";
import { ExerciseContentSchema } from "@/lib/course";
import { useFreshDb } from "../setup/fresh-db";

const fresh = useFreshDb();

/** A machine that serves, with its clock set to a place. */
function serveIn(timeZone: string) {
  const real = Intl.DateTimeFormat.prototype.resolvedOptions.call(new Intl.DateTimeFormat("en-GB"));
  vi.spyOn(Intl.DateTimeFormat.prototype, "resolvedOptions").mockReturnValue({ ...real, timeZone });
}
afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

/** UTC-7, UTC+1 and UTC+11 at the end of November: the places' own daylight saving rules, IANA time zone database. */
describe("the day on a paper of the course is the day of the shop", () => {
  it.each([
    // Printed or returned at six in the evening in Denver.
    ["America/Denver", "2026-12-01T01:00:00.000Z", "30 November 2026"],
    ["Europe/Berlin", "2026-12-01T01:00:00.000Z", "1 December 2026"],
    ["Australia/Sydney", "2026-12-01T01:00:00.000Z", "1 December 2026"],
    // Half past midnight in Berlin.
    ["Europe/Berlin", "2026-11-29T23:30:00.000Z", "30 November 2026"],
    // Nine in the morning in Sydney.
    ["Australia/Sydney", "2026-11-29T22:00:00.000Z", "30 November 2026"],
    ["America/Denver", "2026-11-29T22:00:00.000Z", "29 November 2026"],
    ["UTC", "2026-11-29T23:59:59.000Z", "29 November 2026"],
  ])("%s, %s: %s", async (zone, iso, day) => {
    serveIn(zone);
    expect(shopDay(iso)).toBe(day);
    vi.useFakeTimers({ toFake: ["Date"], now: new Date(iso) });
    const exercise = {
      ...{ id: "e1", title: "Stringers", code: "CDFG", open: true, withoutAccount: false },
      ...{ revision: 1, codeUntil: iso, dueAt: null, handIns: 0 },
      group: { id: "g1", name: "Evening class", closed: false },
      content: ExerciseContentSchema.parse({}),
    };
    expect((await wallContent(fresh().db, exercise)).day).toBe(day);
  });
});
