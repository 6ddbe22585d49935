import { describe, expect, it } from "vitest";
import { assess } from "@/lib/assess";
import { sectionScene } from "@/lib/report";
import { emptyFillet, facts, meltedFillet, sectionBead } from "../assess/section-bead";

const { measures } = assess(sectionBead(), facts).photos[0]!.section!;
const keys = (...shapes: Parameters<typeof sectionScene>) => sectionScene(...shapes).map(({ key }) => key);

describe("sectionScene", () => {
  it("paints nothing of an empty section", () => {
    expect(sectionScene(emptyFillet, null)).toEqual([]);
  });

  it("paints the outline as picked until toes are found, and then face and fusion line instead", () => {
    expect(keys(meltedFillet, null)).toContain("section:outline");
    const found = keys(meltedFillet, measures.places);
    expect(found).not.toContain("section:outline");
    expect(found).toEqual(
      expect.arrayContaining([
        "section:face",
        "section:fusion",
        "section:toe-1",
        "section:toe-2",
        "section:corner",
      ]),
    );
  });

  it("puts corner, toes and root where they are, and every key once", () => {
    const shapes = sectionScene(meltedFillet, measures.places);
    const at = (key: string) => shapes.find((shape) => shape.key === key);
    // The corner of `filletDrawing` lies at 800, 1000; toe 1 is 8 mm along plate 1, at 20 px per mm.
    expect(at("section:corner")).toMatchObject({
      at: { x: expect.closeTo(800, 6) as number, y: expect.closeTo(1000, 6) as number },
    });
    expect(at("section:toe-1")).toMatchObject({ at: { x: 960, y: 1000 } });
    expect(at("section:toe-2")).toMatchObject({ at: { x: 800, y: 840 } });
    expect(at("section:root")).toMatchObject({ at: meltedFillet.root });
    expect(new Set(shapes.map(({ key }) => key)).size).toBe(shapes.length);
    expect(shapes.every(({ role, markId }) => role === "section" && markId === null)).toBe(true);
  });
});
