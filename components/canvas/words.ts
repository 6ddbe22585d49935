import type { SectionAction } from "@/lib/assess";
import { reduce, type Drawing, type History, type Mark } from "@/lib/marks";
import { sectionEdgeSteps, sectionEdgeWords } from "@/lib/report";
import type { SectionEdgeRole } from "@/lib/section";
import { imperfections } from "@/lib/trade";
import type { Draft, PathTool } from "./draft";
import { mayFollow } from "./followed";
import { scalePicked, scalePickHint, type ScalePickKind } from "./scale-picks";
import type { CanvasChange, Tool } from "./types";

/** What each tool is called and does, and the key that picks it. */
export const toolWords: Readonly<Record<Tool, { name: string; key: string; does: string }>> = {
  move: { name: "Move", key: "M", does: "Move and zoom the photo, pick a mark, drag its points" },
  point: { name: "Point", key: "P", does: "Tap a spot; drag outwards to give a pore its size" },
  line: { name: "Line", key: "L", does: "Tap along it, or drag for a straight one" },
  outline: { name: "Outline", key: "O", does: "Tap round it, or draw round it in one go" },
  metal: { name: "Metal", key: "F", does: "Tap round all the metal that was fused" },
  edge: { name: "Edge", key: "E", does: "Tap along an edge of the joint as it was" },
  root: { name: "Root", key: "R", does: "Tap the deepest point of the root" },
  scale: { name: "Scale", key: "S", does: "Pick a thing whose size you know" },
  "weld-line": { name: "Weld", key: "W", does: "From the start of the weld to its crater" },
};

/** Switches whether lines run along the edge. */
export const FOLLOW_KEY = "a";
export const followWords = {
  name: "Along the edge",
  on: "Lines run along the edge. Each stretch is shown before you set its point.",
  off: "Lines run straight.",
} as const;

/** One line that says what to do next. */
export function hintFor(
  tool: Tool,
  draft: Draft | null,
  drawing: Drawing,
  scaleKind: ScalePickKind = "two-points",
  edge: SectionEdgeRole | null = null,
  follows = false,
): string {
  const placed = draft?.kind === "path" ? draft.points.length : 0;
  switch (tool) {
    case "move":
      if (edge !== null) return "Take a tool to draw, or to drag a point.";
      return drawing.marks.length > 0 ? "Tap a mark to pick it." : "Pick a tool to mark what you see.";
    case "point":
      return "Tap the spot. Drag outwards for its size.";
    case "line":
    case "outline":
      return shapeHint(tool, placed > 0, follows);
    case "metal":
      return placed === 0
        ? "Zoom in, then tap round all that was melted, both toes among the points."
        : "Tap round, closer where it bends. The first point again, or Done.";
    case "edge":
      return placed === 0
        ? sectionEdgeSteps[edge ?? "plate-1"]
        : "Tap on along it, as far off as you can see it.";
    case "root":
      return "Tap the deepest point of the root, or drag it.";
    case "scale":
      if (draft?.kind === "unmeasured") return scalePicked[draft.scaleKind];
      return scalePickHint(scaleKind, placed);
    case "weld-line":
      if (placed > 0) return "Follow the weld to the crater, then Done.";
      return drawing.weldLine === null
        ? "Tap where the weld starts."
        : "The weld line is set. Drag its points, or tap where the weld starts to draw it anew.";
  }
}

function shapeHint(tool: "line" | "outline", isBegun: boolean, follows: boolean): string {
  if (follows && !isBegun) return "Tap where it starts. It runs along the edge to the next tap.";
  if (tool === "line")
    return isBegun ? "Tap on. The last point again, or Done." : "Tap along it, or drag a straight line.";
  return isBegun ? "Tap round. The first point again, or Done." : "Tap round it, or draw round it.";
}

/** Of a picked point of what is selected. */
export function pickedHint(number: number, count: number, removable: boolean): string {
  return `Point ${number} of ${count}. ${removable ? "Drag it, or remove it." : "Drag it; the shape needs it."}`;
}

/** "Undercut 3, 42 mm"; without a size "Undercut 3". */
export function sayMark(mark: Mark, number: number, size = ""): string {
  const name = `${imperfections[mark.imperfection].name} ${number}`;
  return size === "" ? name : `${name}, ${size}`;
}

/** What a change of the drawing did, said once it is done. `drawing` is the one after it. */
export function sayChange(action: CanvasChange, drawing: Drawing, sizeOf: (mark: Mark) => string): string {
  if (isSectionAction(action)) return saySection(action);
  if (action.type === "scale.set") return "Scale changed";
  if (action.type === "weldLine.set") return "Weld line changed";
  const id = "id" in action ? action.id : null;
  const index = drawing.marks.findIndex((mark) => mark.id === id);
  const mark = drawing.marks[index];
  if (!mark) return "";
  return `${sayMark(mark, index + 1, sizeOf(mark))}, ${action.type === "mark.moveBy" ? "moved" : "changed"}`;
}

/** "Weld metal outlined", "Plate 1 drawn", "Toe 2 moved" */
function saySection(action: SectionAction): string {
  switch (action.type) {
    case "section.outline":
      return action.points === null
        ? "Outline taken away"
        : `Weld metal outlined, ${action.points.length} points`;
    case "section.edge":
      return `${sectionEdgeWords[action.role]} ${action.points === null ? "taken away" : "drawn"}`;
    case "section.root":
      return action.at === null ? "Root taken away" : "Root marked";
    case "section.toe":
      return action.at === null ? `Toe ${action.side + 1} found again` : `Toe ${action.side + 1} moved`;
    default:
      return "Section changed";
  }
}

export const isSectionAction = (action: CanvasChange): action is SectionAction =>
  action.type.startsWith("section.");

/** What undo or redo did: how many marks there are after it, or that there was no step. */
export function sayStep(type: "undo" | "redo", history: History): string {
  const next = reduce(history, { type });
  if (next === history) return `Nothing to ${type}`;
  const count = next.present.marks.length;
  return `${type === "undo" ? "Undone" : "Redone"}. ${count} ${count === 1 ? "mark" : "marks"} on the photo.`;
}

const toolNouns: Readonly<Record<PathTool, string>> = {
  line: "line",
  outline: "outline",
  metal: "weld metal",
  edge: "edge",
  root: "root",
  scale: "scale",
  "weld-line": "weld line",
};

/** Said when a draft changes; empty when there is nothing worth hearing. */
export function sayDraft(draft: Draft | null): string {
  switch (draft?.kind) {
    case "path": {
      const what = toolNouns[draft.tool];
      return draft.points.length === 0 ? "" : `Point placed, ${draft.points.length} of ${what}`;
    }
    case "spot":
      return "Middle placed. Move for the size, then place again.";
    case "unnamed":
      return "Drawn. Now name it.";
    case "unmeasured":
      return scalePicked[draft.scaleKind];
    default:
      return "";
  }
}

/** All keys, for whoever cannot see the tools. */
export const keyHelp = (offered: readonly Tool[]): string =>
  "Arrow keys move the cross-hair, with Shift ten times as far, with Alt by one pixel of the photo, " +
  "with Alt and Shift by a tenth of one. Space or Enter places a point, Enter finishes. " +
  "Escape cancels, Delete removes the point under the cross-hair or else the picked mark. " +
  "Tab or the square brackets go from mark to mark, comma and full stop from point to point. " +
  `${offered.map((tool) => `${toolWords[tool].key} ${toolWords[tool].name.toLowerCase()}`).join(", ")} pick a tool. ` +
  (offered.some(mayFollow) ? "A makes lines run along the edge, or straight again. " : "") +
  "Plus, minus and zero zoom. " +
  "Control Z undoes, Control Shift Z redoes.";
