import { describe, expect, it } from "vitest";
import { guideDone, guideStepIds, guideWords, nextStep } from "@/components/bead/guide-steps";
import { toolWords } from "@/components/canvas/words";
import { emptyBeadJudgement, type BeadContent } from "@/lib/assess";
import { emptyDrawing, type Drawing } from "@/lib/marks";
import { emptyRunSetup } from "@/lib/setup";
import { imperfections } from "@/lib/trade";

const bead = (drawing: Partial<Drawing>): BeadContent => ({
  title: "",
  welder: null,
  setup: emptyRunSetup,
  judgement: emptyBeadJudgement,
  photos: [{ id: "p", role: "face", drawing: { ...emptyDrawing, ...drawing } }],
});
const weldLine = [
  { x: 0, y: 0 },
  { x: 9, y: 0 },
];

describe("the guide of a first bead", () => {
  it("begins with the scale and names what is not done yet, whatever came first", () => {
    expect(nextStep(guideDone(bead({}), false))).toBe("scale");
    expect(nextStep(guideDone(bead({ weldLine }), false))).toBe("scale");
    const scaled = { scale: {} as NonNullable<Drawing["scale"]> };
    expect(nextStep(guideDone(bead(scaled), false))).toBe("weld");
    expect(nextStep(guideDone(bead({ ...scaled, weldLine }), false))).toBe("mark");
    const marked = { ...scaled, weldLine, marks: [{} as Drawing["marks"][number]] };
    expect(nextStep(guideDone(bead(marked), false))).toBe("read");
    expect(nextStep(guideDone(bead(marked), true))).toBeNull();
    expect(nextStep(guideDone(bead({}), true))).toBe("scale");
  });

  it("names tools and kinds as the screen does", () => {
    const said = guideStepIds.map((id) => guideWords[id].how).join(" ");
    for (const tool of ["scale", "weld-line", "line"] as const)
      expect(said).toContain(`Press ${toolWords[tool].name}`);
    expect(imperfections.overlap.name).toContain("Cold lap");
    expect(said).toContain("Cold lap");
  });
});
