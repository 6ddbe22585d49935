import { describe, expect, test } from "vitest";
import { finish, placePoint, type Draft } from "@/components/canvas/draft";
import { gripAt, type Scenery } from "@/components/canvas/gesture";
import { handlesOf } from "@/components/canvas/handles";
import { keyCommand } from "@/components/canvas/key-commands";
import { toolsMissing } from "@/components/canvas/tools-missing";
import { markTools, sectionMarkTools, sectionTools, type CanvasChange } from "@/components/canvas/types";
import { sayChange, toolWords } from "@/components/canvas/words";
import { assess, editSection, type PhotoSection, type SectionAction } from "@/lib/assess";
import { emptyDrawing } from "@/lib/marks";
import { emptyFillet, facts, meltedFillet, sectionBead } from "../../lib/assess/section-bead";

const { places } = assess(sectionBead(), facts).photos[0]!.section!.measures;
const handles = (tool: "metal" | "edge" | "root" | "move") =>
  handlesOf(emptyDrawing, tool, null, 1, Infinity, { section: meltedFillet, places });
const edit = (change: CanvasChange | null | undefined): PhotoSection =>
  editSection(meltedFillet, change as SectionAction);

describe("points of a section to take hold of", () => {
  test("one at every point of the outline with its tool, and between them where there is room", () => {
    const points = handles("metal").filter(({ role }) => role === "point");
    expect(points.map(({ at }) => at)).toEqual(meltedFillet.outline);
    const moved = edit(points[1]!.move({ x: 890, y: 930 }));
    expect(moved.outline![1]).toEqual({ x: 890, y: 930 });
    expect(edit(points[1]!.remove).outline).toHaveLength(meltedFillet.outline!.length - 1);
    const between = handles("metal").find(({ role }) => role === "between")!;
    expect(edit(between.move({ x: 1, y: 2 })).outline).toHaveLength(meltedFillet.outline!.length + 1);
  });

  test("the ends of all edges with theirs; without one of its ends an edge goes", () => {
    expect(handles("edge")).toHaveLength(4);
    const [first] = handles("edge");
    expect(edit(first!.move({ x: 7, y: 8 })).edges[0]!.points[0]).toEqual({ x: 7, y: 8 });
    expect(edit(first!.remove).edges.map(({ role }) => role)).toEqual(["plate-2"]);
  });

  test("root and toes together; a toe put elsewhere can be let go again", () => {
    const [root, toe1, toe2] = handles("root");
    expect(edit(root!.remove).root).toBeNull();
    expect([toe1!.remove, toe2!.remove]).toEqual([null, null]);
    const put = edit(toe2!.move({ x: 780, y: 860 }));
    expect(put.toes).toEqual([null, { x: 780, y: 860 }]);
    const again = handlesOf(emptyDrawing, "root", null, 1, Infinity, { section: put, places })[2]!;
    expect(editSection(put, again.remove as SectionAction)).toEqual(meltedFillet);
  });

  test("none with the hand, which moves the photo", () => {
    expect(handles("move")).toEqual([]);
  });
});

const spots = [0, 1, 2, 3].map((i) => ({ x: 100 * i, y: 40 * i * i }));
function tapped(tool: "metal" | "edge" | "root", points: typeof spots, edge?: "plate-1" | "groove-1") {
  return points.reduce<ReturnType<typeof placePoint>>(
    (step, at) => placePoint(tool, step.draft, at, 20, edge ? { edge } : {}),
    { draft: null, finished: null },
  );
}

describe("drawing a section point by point", () => {
  test("a straight edge is done with its second point, an old joint face with Done", () => {
    expect(tapped("edge", spots.slice(0, 2), "plate-1").finished).toEqual({
      kind: "change",
      action: { type: "section.edge", role: "plate-1", points: spots.slice(0, 2) },
    });
    const groove = tapped("edge", spots.slice(0, 3), "groove-1");
    expect(groove.finished).toBeNull();
    expect(finish(groove.draft)).toMatchObject({ action: { role: "groove-1", points: spots.slice(0, 3) } });
  });

  test("an edge that nobody named is none", () => {
    expect(finish(tapped("edge", spots.slice(0, 3)).draft)).toBeNull();
  });

  test("the root is done with one point", () => {
    expect(tapped("root", spots.slice(1, 2)).finished).toMatchObject({
      action: { type: "section.root", at: spots[1] },
    });
  });

  test("the weld metal is closed on its first point; near its last one, as at a toe, it goes on", () => {
    const open = tapped("metal", spots);
    const last = spots.at(-1)!;
    const trembled = placePoint("metal", open.draft, { x: last.x + 1, y: last.y }, 20);
    expect(trembled.draft).toEqual(open.draft);
    const close = placePoint("metal", open.draft, { x: last.x + 8, y: last.y }, 20);
    expect((close.draft as Extract<Draft, { kind: "path" }>).points).toHaveLength(5);
    expect(placePoint("metal", open.draft, { x: 4, y: 3 }, 20).finished).toMatchObject({
      action: { type: "section.outline", points: spots },
    });
  });

  test("a press with such a tool places a point under the finger, and never draws in one go", () => {
    const scenery: Scenery = {
      tool: "metal",
      draft: null,
      drawing: emptyDrawing,
      shapes: [],
      handles: [],
      selectedId: null,
      unitPx: 1,
    };
    for (const tool of ["metal", "edge", "root", "scale"] as const)
      expect(gripAt({ ...scenery, tool }, { x: 5, y: 5 }, 22)).toEqual({ kind: "place" });
    expect(gripAt({ ...scenery, tool: "outline" }, { x: 5, y: 5 }, 22)).toEqual({ kind: "stretch" });
  });
});

describe("tools of a section", () => {
  test("few enough for a thumb, each with a key of its own", () => {
    for (const list of [sectionTools, sectionMarkTools])
      expect(list.length).toBeLessThanOrEqual(markTools.length);
    const keys = [...new Set([...markTools, ...sectionTools])].map((tool) => toolWords[tool].key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const tool of sectionTools)
      expect(keyCommand(toolWords[tool].key, false, false)).toEqual({ do: "tool", tool });
  });

  test("those whose job is open carry a dot", () => {
    expect([...toolsMissing(emptyDrawing, emptyFillet)].sort()).toEqual([
      "edge",
      "metal",
      "root",
      "scale",
      "weld-line",
    ]);
    const done = toolsMissing(emptyDrawing, meltedFillet);
    expect(["edge", "metal", "root"].filter((tool) => done.has(tool as "edge"))).toEqual([]);
  });

  test("each change is said", () => {
    const say = (action: SectionAction) => sayChange(action, emptyDrawing, () => "");
    expect(say({ type: "section.outline", points: meltedFillet.outline })).toBe(
      "Weld metal outlined, 8 points",
    );
    expect(say({ type: "section.edge", role: "plate-2", points: null })).toBe("Plate 2 taken away");
    expect(say({ type: "section.toe", side: 1, at: { x: 1, y: 1 } })).toBe("Toe 2 moved");
  });
});
