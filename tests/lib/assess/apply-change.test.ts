import { describe, expect, it } from "vitest";
import { applyChange, confirmedCounts } from "@/lib/assess";
import type { Change } from "@/lib/diagnose";
import { emptyRunSetup, RunSetupSchema } from "@/lib/setup";

const setup = RunSetupSchema.parse({
  ctwdMm: 32,
  volts: 14,
  polarity: "DCEP",
  weldLengthMm: 110,
  arcTimeS: 40,
});
const change = (over: Partial<Change>): Change =>
  ({ causeId: "ctwd-long", unitKind: "small-length", toSi: 19, toText: null, ...over }) as Change;

describe("applyChange", () => {
  it("puts the number where the cause says it belongs", () => {
    expect(applyChange(setup, change({})).ctwdMm).toBe(19);
    expect(applyChange(setup, change({ causeId: "volt-low", unitKind: "voltage", toSi: 15.5 })).volts).toBe(
      15.5,
    );
    expect(
      applyChange(setup, change({ causeId: "work-angle", unitKind: "angle", toSi: 45 })).workAngleDeg,
    ).toBe(45);
  });

  it("changes polarity by its word", () => {
    expect(applyChange(setup, change({ causeId: "polarity", toSi: null, toText: "DCEN" })).polarity).toBe(
      "DCEN",
    );
  });

  it("leaves the set-up alone where the change is something to do, but forgets the length and time of the last bead", () => {
    const next = applyChange(setup, change({ causeId: "contam", unitKind: null, toSi: null }));
    expect(next).toEqual({ ...setup, weldLengthMm: null, arcTimeS: null });
    // "within one wire diameter" is a length that is no field of the set-up
    expect(applyChange(emptyRunSetup, change({ causeId: "placement", toSi: 0.9 }))).toEqual(emptyRunSetup);
  });
});

describe("confirmedCounts", () => {
  const tried = (causeId: string) => ({ causeId, sentence: "", step: "" });

  it("counts cures by cause, and nothing else", () => {
    expect(
      confirmedCounts([
        { tried: tried("ctwd-long"), outcome: "cured" },
        { tried: tried("ctwd-long"), outcome: "cured" },
        { tried: tried("ctwd-long"), outcome: "better" },
        { tried: tried("volt-high"), outcome: "cured" },
        { tried: tried("no-such-cause"), outcome: "cured" },
        { tried: null, outcome: "cured" },
      ]),
    ).toEqual({ "ctwd-long": 2, "volt-high": 1 });
  });
});
