import { describe, expect, it } from "vitest";
import { proposal } from "@/lib/assess";
import { diagnose, DiagnoseInputSchema, type Diagnosis } from "@/lib/diagnose";
import { exampleSetups } from "@/lib/setup";
import { imperfectionIds, imperfections } from "@/lib/trade";

function diagnosed(input: object): Diagnosis {
  const result = diagnose(DiagnoseInputSchema.parse(input));
  if (!result.ok) throw new Error("no diagnosis");
  return result.value;
}

describe("proposal", () => {
  it("gives no advice on a bead with nothing wrong, whatever the example set-up", () => {
    for (const { name, setup } of exampleSetups) expect(proposal(diagnosed({ setup })), name).toBeNull();
  });

  it("gives it for a mark, and for a set-up fault with no mark at all", () => {
    const [example] = exampleSetups;
    if (!example) throw new Error("no example");
    const marked = diagnosed({ setup: example.setup, findings: [{ imperfection: "undercut" }] });
    // One mark and a set-up in order points everywhere: questions instead of a change.
    expect([proposal(marked), marked.firstChange]).toEqual([null, null]);
    expect(marked.settling).toHaveLength(2);
    const both = [{ imperfection: "undercut", place: "both-toes" }, { imperfection: "convex-bead" }];
    const clear = diagnosed({ setup: { process: "FCAW-S" }, findings: both });
    expect(proposal(clear)?.first).toEqual(clear.firstChange);
    expect(clear.firstChange?.causeId).toBe("travel-fast");
    const reversed = diagnosed({ setup: { ...example.setup, polarity: "DCEP" } });
    expect(proposal(reversed)?.first.causeId).toBe("polarity");
  });

  it("puts right what an answer says is wrong, on an unmarked bead too, whatever the example set-up", () => {
    for (const { name, setup } of exampleSetups) {
      const swapped = diagnosed({ setup, answers: { "polarity-lugs": "fault" } });
      expect(proposal(swapped)?.first.causeId, name).toBe("polarity");
    }
  });

  it("gives none for marks of tools and measuring alone, and gives it for what else is marked beside them", () => {
    const findings = [{ imperfection: "grinding-mark" }, { imperfection: "missing-length" }];
    for (const { name, setup } of exampleSetups)
      expect(proposal(diagnosed({ setup, findings })), name).toBeNull();
    const seen = [{ imperfection: "undercut", place: "both-toes" }, { imperfection: "convex-bead" }];
    const beside = diagnosed({ findings: [...findings, ...seen] });
    const alone = diagnosed({ findings: seen });
    expect(alone.firstChange).not.toBeNull();
    expect(proposal(beside)?.first.causeId).toBe(alone.firstChange?.causeId);
  });

  it("leaves the first word to the inspector", () => {
    for (const id of imperfectionIds.filter((one) => imperfections[one].group === "crack"))
      expect(proposal(diagnosed({ findings: [{ imperfection: id }] })), id).toBeNull();
  });
});
