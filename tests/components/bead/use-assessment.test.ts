import { describe, expect, it } from "vitest";
import { settledContent } from "@/components/bead/use-assessment";
import { startWork, toContent, work, type WorkAction } from "@/components/bead/work-state";
import { emptyBeadContent } from "@/lib/assess";
import { newMark } from "@/lib/marks";
import { emptyRunSetup } from "@/lib/setup";

const photo = { id: "p", sha256: "0", widthPx: 4000, heightPx: 3000 };
const before = startWork(emptyBeadContent, [photo]);
const mark = newMark("m", "undercut", { kind: "point", at: { x: 9, y: 9 }, radius: 4 });
const draw: WorkAction = { type: "draw", photoId: "p", action: { type: "mark.add", mark } };
const type: WorkAction = { type: "setup", setup: { ...emptyRunSetup, volts: 24 } };
const settled = (...did: readonly WorkAction[]) => {
  const [old, newest] = [toContent(before), toContent(did.reduce(work, before))];
  return settledContent(newest, old) === newest ? "newest" : "before";
};

describe("what is assessed in the frame of a change", () => {
  it("is the newest where marks alone are newer: their answer comes with them", () => {
    expect(settled(draw)).toBe("newest");
    expect(settled(draw, { type: "photo.role", photoId: "p", role: "back" })).toBe("newest");
  });

  it.each<[string, WorkAction]>([
    ["a set-up", type],
    ["a name", { type: "name", title: "Lap 3" }],
    ["a welder", { type: "name", welder: "W. One" }],
    ["a judgement", { type: "judgement", change: { lookedFor: ["undercut"] } }],
  ])("is the one before while %s is typed, with or without a mark", (_, typed) => {
    expect(settled(typed)).toBe("before");
    expect(settled(draw, typed)).toBe("before");
  });
});
