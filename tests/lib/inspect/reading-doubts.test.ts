import { describe, expect, it } from "vitest";
import { assessBead } from "@/lib/assess";
import { InstrumentSchema } from "@/lib/inspect";
import { readingDoubts, readingsByGauge } from "@/lib/inspect/reading-doubts";
import { signBead } from "@/lib/inspect/sign-bead";
import { beadOf, soundBead, undercut } from "./build";

const DAY = "2026-11-25";
const gauge = (change: object) =>
  InstrumentSchema.parse({ kind: "fillet-gauge", name: "G", dueOn: DAY, ...change });
const bead = signBead(assessBead(soundBead("G")));
const doubts = (instruments: Parameters<typeof readingDoubts>[1], day: string | null = DAY) =>
  readingDoubts([bead], instruments, day).map(({ doubt }) => doubt);

describe("a reading", () => {
  // That a gauge out of date carries no acceptance is common
  // practice, no source.
  it.each([
    ["in date, on the due day itself", [gauge({})], []],
    ["calibrated that very day", [gauge({ calibratedOn: DAY })], []],
    ["overdue by a day", [gauge({ dueOn: "2026-11-24" })], ["overdue"]],
    ["calibrated a day later", [gauge({ calibratedOn: "2026-11-26", dueOn: "2027-11-26" })], ["not-yet"]],
    ["without a due date", [gauge({ dueOn: null })], ["not-recorded"]],
    ["of a kind that shows no size", [gauge({ kind: "magnifier", dueOn: null })], ["not-recorded"]],
    ["not ticked", [gauge({ name: "other" })], ["not-ticked"]],
    ["one of two by the same label, one overdue", [gauge({}), gauge({ dueOn: "2026-01-01" })], ["overdue"]],
  ])("with a gauge %s", (_, instruments, found) => {
    expect(doubts(instruments)).toEqual(found);
  });

  it("on a day nobody wrote down is doubtful, whatever the gauge", () => {
    expect(doubts([gauge({})], null)).toEqual(["day-unknown"]);
  });

  it("is named in words, each gauge once, those of marks with the number of the mark", () => {
    const depth = { quantity: "depth" as const, valueMm: 0.2, instrument: "U", resolutionMm: 0.05 };
    expect([...readingsByGauge(signBead(assessBead(beadOf(2, {}, [undercut([depth, depth])]))))]).toEqual([
      ["U", ["depth of mark 1 on photo 1", "depth of mark 1 on photo 2"]],
    ]);
    expect([...readingsByGauge(bead).values()].flat()).toContain("throat");
  });
});
