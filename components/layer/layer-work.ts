import type { CanvasPhoto } from "@/components/canvas-kit";
import type { LayerAction, LayerHistory, LayerPoint } from "@/lib/course";
import type { Drawing } from "@/lib/marks";
import type { LayerTool } from "./layer-draft";

/** What the instructor works on and with, and what each hand movement asks for. */
export interface LayerWork {
  readonly photo: CanvasPhoto;
  /** The student's own marks: shown, never touched. */
  readonly drawing: Drawing;
  readonly history: LayerHistory;
  readonly onAction: (action: LayerAction) => void;
  readonly tool: LayerTool;
  readonly onToolChange: (tool: LayerTool) => void;
  readonly selectedId: string | null;
  readonly onSelect: (id: string | null) => void;
  /** A place for words was chosen; ask for them. */
  readonly onTextAt: (at: LayerPoint) => void;
}
