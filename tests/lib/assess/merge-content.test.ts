import { describe, expect, it } from "vitest";
import { emptyBeadContent, emptyPhotoSection, mergeContent, type BeadContent } from "@/lib/assess";
import { emptyDrawing, type Mark } from "@/lib/marks";

const mark = (id: string, note = ""): Mark => ({
  id,
  imperfection: "undercut",
  shape: {
    kind: "line",
    points: [
      { x: 10, y: 20 },
      { x: 30, y: 47 },
    ],
  },
  place: "upper-toe",
  stretch: null,
  patterns: [],
  gauge: [],
  note,
});

function bead(change: Partial<BeadContent>, marks: Mark[]): BeadContent {
  return {
    ...emptyBeadContent,
    photos: [{ id: "p1", role: "face", drawing: { ...emptyDrawing, marks } }],
    ...change,
  };
}

describe("mergeContent", () => {
  it("keeps every mark of both windows, mine where both have one and the same", () => {
    const merged = mergeContent(
      bead({}, [mark("a", "mine"), mark("b")]),
      bead({}, [mark("a", "theirs"), mark("c")]),
    );
    expect(merged.photos[0]?.drawing.marks.map(({ id, note }) => `${id} ${note}`)).toEqual([
      "a mine",
      "b ",
      "c ",
    ]);
  });

  it("keeps a photo only they have, and a scale only they set", () => {
    const theirs = bead({}, []);
    const scale = { kind: "two-points" as const, a: { x: 0, y: 0 }, b: { x: 100, y: 0 }, lengthMm: 50 };
    const merged = mergeContent(bead({}, []), {
      ...theirs,
      photos: [
        { id: "p1", role: "face", drawing: { ...emptyDrawing, scale } },
        { id: "p2", role: "back", drawing: emptyDrawing },
      ],
    });
    expect(merged.photos.map(({ id }) => id)).toEqual(["p1", "p2"]);
    expect(merged.photos[0]?.drawing.scale).toEqual(scale);
  });

  it("joins what both looked for, and lets my settings stand", () => {
    const mine = bead(
      { title: "Mine", judgement: { ...emptyBeadContent.judgement, lookedFor: ["overlap"] } },
      [],
    );
    const theirs = bead(
      { title: "Theirs", judgement: { ...emptyBeadContent.judgement, lookedFor: ["overlap", "spatter"] } },
      [],
    );
    const merged = mergeContent(mine, theirs);
    expect(merged.title).toBe("Mine");
    expect(merged.judgement.lookedFor).toEqual(["overlap", "spatter"]);
  });
});

describe("a section in two windows", () => {
  const section = (x: number) => ({ ...emptyPhotoSection("fillet"), root: { x, y: 5 } });
  const withSection = (x: number | null): BeadContent => ({
    ...bead({}, []),
    photos: [
      {
        id: "p1",
        role: "section",
        drawing: emptyDrawing,
        ...(x === null ? {} : { section: section(x) }),
      },
    ],
  });

  it("is kept whoever drew it, mine where both did, and stays away where nobody did", () => {
    const root = (mine: number | null, theirs: number | null) =>
      mergeContent(withSection(mine), withSection(theirs)).photos[0]?.section?.root?.x;
    expect([root(1, 2), root(null, 2), root(1, null)]).toEqual([1, 2, 1]);
    expect(mergeContent(withSection(null), withSection(null)).photos[0]).not.toHaveProperty("section");
  });
});
