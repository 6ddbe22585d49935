import { useMemo, useState } from "react";
import { distance, type Point } from "@/lib/geometry";
import { newMark, reduce, startHistory, type MarkShapeData } from "@/lib/marks";
import type { ImperfectionId } from "@/lib/trade";
import { finish, takeBackPoint, type Draft, type Finished, type Step } from "./draft";
import { newMarkId } from "./new-mark-id";
import { scalePicked, type ScalePickKind } from "./scale-picks";
import type { BeadCanvasProps, Tool } from "./types";
import { roundPx } from "./view";
import { sayDraft, sayMark, toolWords } from "./words";

export interface Marking {
  readonly tool: Tool;
  readonly draft: Draft | null;
  /** What the scale tool picks. */
  readonly scaleKind: ScalePickKind;
  /** The drawing as it would be if the drag under way ended now. */
  readonly preview: BeadCanvasProps["history"]["present"];
  /** For the live region. */
  readonly said: string;
  /** What the next shapes are named without asking; null asks each time. */
  readonly repeat: ImperfectionId | null;
  readonly setRepeat: (imperfection: ImperfectionId | null) => void;
  readonly say: (text: string) => void;
  readonly setDraft: (draft: Draft | null) => void;
  readonly settle: (step: Step) => void;
  /** Moves the loose end of what is being drawn. */
  readonly hover: (at: Point | null) => void;
  readonly done: () => void;
  readonly cancel: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly changeTool: (tool: Tool) => void;
  readonly nameShape: (imperfection: ImperfectionId) => void;
  readonly select: (id: string | null) => void;
  readonly remove: (id: string) => void;
}

/** A draft belongs to the tool (and scale object) it was begun with and, once a length is asked for, to the scale of that moment. */
interface Held {
  readonly draft: Draft | null;
  readonly tool: Tool;
  readonly scale: unknown;
  readonly scaleKind: ScalePickKind;
}

/** State of the marking screen besides the view: the draft, what is said, and the way from a draft to one action. */
export function useMarking(props: BeadCanvasProps): Marking {
  const { history, onAction, onSelect, readOnly = false, scaleKind = "two-points" } = props;
  const drawing = history.present;
  const tool = readOnly ? "move" : props.tool;
  const [held, setHeld] = useState<Held>({ draft: null, tool, scale: drawing.scale, scaleKind });
  const [said, say] = useState("");
  const [repeat, setRepeat] = useState<ImperfectionId | null>(null);

  const stale =
    held.tool !== tool ||
    (tool === "scale" && held.scaleKind !== scaleKind) ||
    (held.draft?.kind === "unmeasured" && held.scale !== drawing.scale);
  const draft = stale ? null : held.draft;
  const setDraft = (next: Draft | null) => setHeld({ draft: next, tool, scale: drawing.scale, scaleKind });

  const preview = useMemo(
    () => (draft?.kind === "change" ? reduce(startHistory(drawing), draft.action).present : drawing),
    [draft, drawing],
  );

  const addMark = (imperfection: ImperfectionId, shape: MarkShapeData) => {
    const mark = newMark(newMarkId(), imperfection, shape);
    onAction({ type: "mark.add", mark });
    onSelect(mark.id);
    say(`${sayMark(mark, drawing.marks.length + 1)} added`);
  };

  const complete = (finished: Finished) => {
    switch (finished.kind) {
      case "shape":
        if (repeat !== null) return addMark(repeat, finished.shape);
        setDraft({ kind: "unnamed", shape: finished.shape });
        return say("Drawn. Now name it.");
      case "scale":
        setDraft({ ...finished, kind: "unmeasured" });
        say(scalePicked[finished.scaleKind]);
        return props.onScalePicked(finished.points);
      case "weld-line":
        say("Weld line set");
        return onAction({ type: "weldLine.set", points: finished.points });
      case "change":
        return onAction(finished.action);
    }
  };

  const settle = (step: Step) => {
    setDraft(step.draft);
    if (step.finished) return complete(step.finished);
    const words = sayDraft(step.draft);
    if (words !== "") say(words);
  };

  const cancel = () => {
    if (draft?.kind === "unmeasured") props.onScaleCancelled?.();
    if (draft !== null) say("Cancelled");
    setDraft(null);
  };

  return {
    tool,
    draft,
    scaleKind,
    preview,
    said,
    repeat,
    setRepeat,
    say,
    setDraft,
    settle,
    cancel,
    hover: (at) => {
      if (draft?.kind === "path") setDraft({ ...draft, next: at });
      if (draft?.kind === "spot" && at)
        setDraft({ ...draft, radius: roundPx(distance(draft.at, at)) || null });
    },
    done: () => {
      const finished = finish(draft);
      if (finished) settle({ draft: null, finished });
      else say("Not enough points yet");
    },
    undo: () => {
      if (draft?.kind === "path") return settle({ draft: takeBackPoint(draft), finished: null });
      onAction({ type: "undo" });
      say("Undone");
    },
    redo: () => {
      onAction({ type: "redo" });
      say("Redone");
    },
    changeTool: (next) => {
      if (next !== tool) cancel();
      props.onToolChange(next);
      say(`${toolWords[next].name}. ${toolWords[next].does}`);
    },
    nameShape: (imperfection) => {
      setDraft(null);
      if (draft?.kind === "unnamed") addMark(imperfection, draft.shape);
    },
    select: (id) => {
      onSelect(id);
      const index = drawing.marks.findIndex((mark) => mark.id === id);
      const mark = drawing.marks[index];
      if (mark) say(`${sayMark(mark, index + 1)} selected`);
    },
    remove: (id) => {
      const index = drawing.marks.findIndex((mark) => mark.id === id);
      onAction({ type: "mark.remove", id });
      onSelect(null);
      say(`Mark ${index + 1} removed`);
    },
  };
}
