import { describe, expect, it } from "vitest";
import { editSection, emptyPhotoSection, nextSectionStep, type SectionAction } from "@/lib/assess";
import { meltedFillet } from "./section-bead";

const line = [
  { x: 10, y: 10 },
  { x: 900, y: 20 },
];

describe("nextSectionStep", () => {
  it("asks for one thing at a time until all of a fillet is drawn", () => {
    const asked: string[] = [];
    let section = emptyPhotoSection("fillet");
    const draw: Record<string, SectionAction> = {
      outline: { type: "section.outline", points: meltedFillet.outline },
      "plate-1": { type: "section.edge", role: "plate-1", points: line },
      "plate-2": { type: "section.edge", role: "plate-2", points: line },
      root: { type: "section.root", at: { x: 5, y: 5 } },
    };
    for (let k = 0; k < 10; k += 1) {
      const step = nextSectionStep(section, true);
      if (step === null) break;
      const name = step.kind === "edge" ? step.role : step.kind;
      asked.push(name);
      section = editSection(section, draw[name]!);
    }
    expect(asked).toEqual(["outline", "plate-1", "plate-2", "root"]);
  });

  it("asks for the joint before all, and for the scale before anything is drawn", () => {
    expect(nextSectionStep(null, false)).toEqual({ kind: "joint" });
    expect(nextSectionStep(meltedFillet, false)).toEqual({ kind: "scale" });
  });

  it("wants no root of a butt", () => {
    const roles = ["face", "back", "groove-1", "groove-2"] as const;
    const drawn = roles.reduce(
      (section, role) => editSection(section, { type: "section.edge", role, points: line }),
      { ...emptyPhotoSection("butt"), outline: meltedFillet.outline },
    );
    expect(nextSectionStep(drawn, true)).toBeNull();
  });
});
