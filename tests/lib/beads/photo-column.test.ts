import { describe, expect, it } from "vitest";
import { canonicalJson } from "@/lib/base";
import { emptyDrawing } from "@/lib/marks";
import { photoColumn, readPhotoColumn } from "@/lib/beads/photo-column";
import { meltedFillet } from "../assess/section-bead";

describe("a photo's column", () => {
  it("is the drawing alone where there is no section, as it always was", () => {
    expect(photoColumn({ drawing: emptyDrawing })).toBe(emptyDrawing);
    expect(readPhotoColumn(emptyDrawing)).toEqual({ drawing: emptyDrawing });
    expect(readPhotoColumn(emptyDrawing)).not.toHaveProperty("section");
  });

  it("gives back the section that was put in, and a drawing without it", () => {
    const stored = JSON.parse(canonicalJson(photoColumn({ drawing: emptyDrawing, section: meltedFillet })));
    expect(readPhotoColumn(stored)).toEqual({ drawing: emptyDrawing, section: meltedFillet });
  });

  it("throws on a section that is none", () => {
    expect(() => readPhotoColumn({ ...emptyDrawing, section: { joint: "fillet" } })).toThrow();
  });
});
