import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { trendSentence } from "@/lib/trends";
import { calendarMonth, isoWeek } from "@/lib/trends/calendar";
import { groupBy, groupByPeriod } from "@/lib/trends/group";
import { rejectChart } from "@/tests/lib/find/one-by-one/reject-chart";
import { rejectRate } from "@/tests/lib/find/one-by-one/reject-rate";
import { trendSentences } from "@/lib/trends/sentences";
import { bead } from "./bead";

describe("weeks and months", () => {
  // ISO 8601: week 1 holds the year's first Thursday. Well-known turns of the year, from memory.
  it.each([
    ["2005-01-01", "2004-W53"],
    ["2005-01-02", "2004-W53"],
    ["2005-12-31", "2005-W52"],
    ["2007-01-01", "2007-W01"],
    ["2007-12-31", "2008-W01"],
    ["2008-12-28", "2008-W52"],
    ["2008-12-29", "2009-W01"],
    ["2010-01-03", "2009-W53"],
  ])("%s lies in %s", (day, week) => expect(isoWeek(day)).toBe(week));

  it("every day agrees with the calendar of the platform", () => {
    const dayMs = 86_400_000;
    fc.assert(
      fc.property(fc.integer({ min: -25_000, max: 60_000 }), (n) => {
        const date = new Date(n * dayMs);
        const thursday = new Date(n * dayMs + (3 - ((date.getUTCDay() + 6) % 7)) * dayMs);
        const year = thursday.getUTCFullYear();
        const week = Math.floor((thursday.getTime() - Date.UTC(year, 0, 1)) / (7 * dayMs)) + 1;
        expect(isoWeek(date.toISOString().slice(0, 10))).toBe(`${year}-W${String(week).padStart(2, "0")}`);
      }),
      { numRuns: 2000 },
    );
  });

  it.each(["2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "25.11.2026", "2026-11-25T10:00:00Z", ""])(
    "%s is no date",
    (text) => {
      expect(isoWeek(text)).toBeNull();
      expect(calendarMonth(text)).toBeNull();
    },
  );

  it("knows leap years", () => {
    expect(calendarMonth("2024-02-29")).toBe("2024-02");
    expect(calendarMonth("2000-02-29")).toBe("2000-02");
    expect(calendarMonth("1900-02-29")).toBeNull();
  });
});

describe("groups", () => {
  const beads = [
    bead("a", { welder: "M. Aalto", day: "2026-11-30", verdict: "reject" }),
    bead("b", { welder: null, day: "2026-10-02", verdict: "accept" }),
    bead("c", { welder: "M. Aalto", day: "2026-10-05", verdict: "cannot-say" }),
    bead("d", { welder: null, day: "2026-12-01", verdict: "accept" }),
  ];

  it("keep their beads; what is not known is a group of its own", () => {
    expect(groupBy(beads, "welder").map(({ key, beadIds }) => [key, beadIds])).toEqual([
      ["M. Aalto", ["a", "c"]],
      [null, ["b", "d"]],
    ]);
    expect(groupBy(beads, (one) => one.day.slice(0, 4)).map(({ key }) => key)).toEqual(["2026"]);
  });

  it("by period stand in order of time", () => {
    expect(groupByPeriod(beads, "month")).toMatchObject({
      ok: true,
      value: [{ key: "2026-10" }, { key: "2026-11" }, { key: "2026-12" }],
    });
    expect(groupByPeriod(beads, "week")).toMatchObject({
      ok: true,
      value: [{ key: "2026-W40" }, { key: "2026-W41" }, { key: "2026-W49", beadIds: ["a", "d"] }],
    });
  });

  it("a day that is none is an issue with its place", () => {
    expect(groupByPeriod([...beads, bead("e", { day: "yesterday" })], "week")).toEqual({
      ok: false,
      issues: [{ code: "day-not-a-date", path: [4, "day"], data: { day: "yesterday", beadId: "e" } }],
    });
  });

  it("the reject rate is of decided beads, and names the others", () => {
    expect(rejectRate(beads)).toMatchObject({
      rejected: { count: 1, of: 3 },
      rejectedIds: ["a"],
      decidedIds: ["a", "b", "d"],
      undecidedIds: ["c"],
    });
  });

  it("the reject chart leads from each point to its beads", () => {
    expect(rejectChart(beads, "week")).toMatchObject({
      ok: true,
      value: {
        centre: { count: 1, of: 3 },
        points: [
          { label: "2026-W40", beadIds: ["b"] },
          { label: "2026-W49", beadIds: ["a", "d"], share: { count: 1, of: 2 } },
        ],
        skipped: ["2026-W41"],
      },
    });
    expect(rejectChart([bead("c")], "month")).toMatchObject({ ok: false, issues: [{ code: "no-samples" }] });
  });
});

describe("sentences", () => {
  it("say what to do, with the numbers in place", () => {
    expect(trendSentence({ code: "sample-impossible", path: [0], data: { count: 5, of: 3 } })).toContain(
      "5 of 3",
    );
    for (const sentence of Object.values(trendSentences)) expect(sentence({})).toMatch(/\.$/);
  });
});
