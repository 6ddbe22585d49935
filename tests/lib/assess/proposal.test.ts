import { describe, expect, it } from "vitest";
import { proposal } from "@/lib/assess";
import { diagnose, DiagnoseInputSchema, type Diagnosis } from "@/lib/diagnose";
import { exampleSetups } from "@/lib/setup";

function diagnosed(input: object): Diagnosis {
  const result = diagnose(DiagnoseInputSchema.parse(input));
  if (!result.ok) throw new Error("no diagnosis");
  return result.value;
}

describe("proposal", () => {
  it("gives no advice on a bead with nothing wrong, whatever the example set-up", () => {
    for (const { name, setup } of exampleSetups) expect(proposal(diagnosed({ setup }), 0), name).toBeNull();
  });

  it("gives it for a mark, and for a set-up fault with no mark at all", () => {
    const [example] = exampleSetups;
    if (!example) throw new Error("no example");
    const marked = diagnosed({ setup: example.setup, findings: [{ imperfection: "undercut" }] });
    expect(proposal(marked, 1)?.first).toEqual(marked.firstChange);
    const reversed = diagnosed({ setup: { ...example.setup, polarity: "DCEP" } });
    expect(proposal(reversed, 0)?.first.causeId).toBe("polarity");
  });

  it("leaves the first word to the inspector", () => {
    const cracked = diagnosed({ findings: [{ imperfection: "crater-crack" }] });
    expect(proposal(cracked, 1)).toBeNull();
  });
});
