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
    expect(proposal(marked)?.first).toEqual(marked.firstChange);
    const reversed = diagnosed({ setup: { ...example.setup, polarity: "DCEP" } });
    expect(proposal(reversed)?.first.causeId).toBe("polarity");
  });

  it("gives none for marks of tools and measuring alone, and gives it for what else is marked beside them", () => {
    const findings = [{ imperfection: "grinding-mark" }, { imperfection: "missing-length" }];
    for (const { name, setup } of exampleSetups)
      expect(proposal(diagnosed({ setup, findings })), name).toBeNull();
    const beside = diagnosed({ findings: [...findings, { imperfection: "undercut" }] });
    const alone = diagnosed({ findings: [{ imperfection: "undercut" }] });
    expect(proposal(beside)?.first.causeId).toBe(alone.firstChange?.causeId);
  });

  it("leaves the first word to the inspector", () => {
    for (const id of imperfectionIds.filter((one) => imperfections[one].group === "crack"))
      expect(proposal(diagnosed({ findings: [{ imperfection: id }] })), id).toBeNull();
  });
});
