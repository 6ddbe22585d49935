import { describe, expect, it } from "vitest";
import { eyeTotals, EyeRoundSchema, kindProgress, nextBeadId, ratesByKind, scoreRound } from "@/lib/eye";
import { failsLevel } from "@/lib/eye/fails-level";
import { drawnBead, fault } from "./eye";

const deep = drawnBead([fault("undercut", 200, 200)], { id: "plain-a" });
const good = drawnBead([], { id: "plain-b" });

describe("whether something on a bead fails a level", () => {
  /** ISO 5817, item 1.7: undercut up to 0.5 mm in level B and C, up to 1 mm in level D, for plate above 3 mm. */
  it.each([
    [0.4, { "iso-5817-b": false, "iso-5817-c": false, "iso-5817-d": false }],
    [0.7, { "iso-5817-b": true, "iso-5817-c": true, "iso-5817-d": false }],
    [1.2, { "iso-5817-b": true, "iso-5817-c": true, "iso-5817-d": true }],
  ] as const)("undercut of %f mm in 8 mm plate", (depthMm, expected) => {
    const bead = drawnBead([
      fault("undercut", 200, 200, { sizes: { lengthMm: 40, depthMm }, alongMm: [10, 50] }),
    ]);
    for (const [level, fails] of Object.entries(expected))
      expect(failsLevel(bead, level as keyof typeof expected), level).toBe(fails);
  });

  it("a crack fails every level, nothing fails none, and an unknown joint is not judged", () => {
    const crack = drawnBead([fault("longitudinal-crack", 300, 300, { sizes: { lengthMm: 12 } })]);
    expect(failsLevel(crack, "iso-5817-d")).toBe(true);
    expect(failsLevel(good, "iso-5817-b")).toBe(false);
    expect(failsLevel({ ...crack, joint: null }, "iso-5817-d")).toBeNull();
  });
});

describe("a round", () => {
  const begun = EyeRoundSchema.parse({
    look: "plain",
    level: "iso-5817-c",
    beadIds: ["plain-a", "plain-b", "plain-c"],
  });
  const at = { x: 200, y: 200 };

  it("goes bead by bead, and is scored at its end with what can still be read", () => {
    expect(nextBeadId(begun)).toBe("plain-a");
    const answers = [
      { beadId: "plain-a", marks: [{ at, kind: "undercut" as const, sizeMm: 30 }], fails: true },
      { beadId: "plain-b", marks: [{ at, kind: "spatter" as const, sizeMm: null }], fails: true },
      { beadId: "plain-c", marks: [], fails: null },
    ];
    const over = scoreRound({ ...begun, answers }, [deep, good]);
    expect(nextBeadId(over)).toBeNull();
    expect(over.scored).toMatchObject([
      {
        beadId: "plain-a",
        found: ["undercut"],
        missized: [{ isMm: 10, saidMm: 30 }],
        fails: true,
        saidFails: true,
      },
      { beadId: "plain-b", falseCalls: ["spatter"], fails: false, saidFails: true },
    ]);
    expect(EyeRoundSchema.parse(over)).toEqual(over);
    expect(eyeTotals(over.scored ?? [])).toEqual({
      found: 1,
      missed: 0,
      misnamed: 0,
      falseCalls: 1,
      missized: 1,
    });
  });

  it("tells by kind: found of the beads it was on, called of the beads it was not on, round by round", () => {
    const bead = (more: object) => ({
      ...{
        beadId: "x",
        found: [],
        missed: [],
        misnamed: [],
        falseCalls: [],
        missized: [],
        fails: null,
        saidFails: null,
      },
      ...more,
    });
    const rounds = [
      [bead({ missed: ["undercut"] }), bead({ misnamed: [{ is: "overlap", called: "undercut" }] })],
      [bead({ found: ["undercut"] }), bead({ falseCalls: ["undercut"] }), bead({})],
    ];
    const [undercut, overlap] = ratesByKind(rounds.flat());
    expect(undercut).toMatchObject({
      kind: "undercut",
      hits: { count: 1, of: 2 },
      falseCalls: { count: 2, of: 3 },
    });
    expect(overlap).toMatchObject({
      kind: "overlap",
      hits: { count: 0, of: 1 },
      falseCalls: { count: 0, of: 4 },
    });
    expect(kindProgress(rounds)).toEqual([
      { kind: "undercut", byRound: ["0 of 1", "1 of 1"] },
      { kind: "overlap", byRound: ["0 of 1", ""] },
    ]);
  });
});
