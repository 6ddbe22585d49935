import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { periodDays } from "@/lib/trends";
import { calendarMonth, isoWeek } from "@/lib/trends/calendar";

const arbDay = fc
  .date({ min: new Date("0004-01-10"), max: new Date("9990-12-20"), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

describe("the days of a period", () => {
  it.each([
    // ISO 8601's own example of a year's first week: 2008-12-29 begins 2009-W01 (ISO 8601:2004, 3.2.2; from memory).
    ["2009-W01", "2008-12-29", "2009-01-04"],
    ["2026-W48", "2026-11-23", "2026-11-29"],
    ["2024-02", "2024-02-01", "2024-02-29"],
    ["2100-02", "2100-02-01", "2100-02-28"],
  ])("of %s are %s to %s", (key, from, to) => {
    expect(periodDays(key)).toEqual({ from, to });
  });

  it.each(["2026-W54", "2026-W00", "2025-W53", "2026-13", "2026", "W48", "2026-1"])(
    "of %s are none",
    (key) => {
      expect(periodDays(key)).toBeNull();
    },
  );

  it("hold every day that is sorted into it, and seven days or a month of them", () => {
    fc.assert(
      fc.property(arbDay, (day) => {
        const week = periodDays(isoWeek(day) ?? "");
        const month = periodDays(calendarMonth(day) ?? "");
        for (const span of [week, month]) expect(span && span.from <= day && day <= span.to).toBe(true);
        // The platform's calendar as the independent one.
        expect(Date.parse(week?.to ?? "") - Date.parse(week?.from ?? "")).toBe(6 * 86_400_000);
        expect(new Date(week?.from ?? "").getUTCDay()).toBe(1);
      }),
    );
  });
});
