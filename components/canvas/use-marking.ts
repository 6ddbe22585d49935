"use client";

import { useMemo, useState } from "react";
import { newMarkId, roundPx } from "@/components/canvas-kit";
import { distance, type Point } from "@/lib/geometry";
import { newMark, reduce, startHistory, type Drawing, type Mark, type MarkShapeData } from "@/lib/marks";
import { editSection, type PhotoSection } from "@/lib/assess";
import type { SectionEdgeRole } from "@/lib/section";
import type { ImperfectionId } from "@/lib/trade";
import { finish, takeBackPoint, type Draft, type Finished, type Step } from "./draft";
import { scalePicked, type ScalePickKind } from "./scale-picks";
import { markTools, type BeadCanvasProps, type CanvasChange, type Tool } from "./types";
import { placedAlong } from "./followed";
import { useFollow, type Follow } from "./use-follow";
import { useHeldDraft } from "./use-held-draft";
import { useSaid } from "./use-said";
import { isSectionAction, sayChange, sayDraft, sayMark, sayStep, toolWords } from "./words";

export interface Marking {
  readonly tool: Tool;
  /** Tools that may be taken. */
  readonly offered: readonly Tool[];
  readonly draft: Draft | null;
  /** What the scale tool picks. */
  readonly scaleKind: ScalePickKind;
  /** What the edge tool draws; null where there is no section. */
  readonly edge: SectionEdgeRole | null;
  /** The section as it would be if the drag under way ended now; null where there is none. */
  readonly sectionPreview: PhotoSection | null;
  /** The drawing as it would be if the drag under way ended now. */
  readonly preview: Drawing;
  /** For the live region. */
  readonly said: string;
  /** What the next shapes are named without asking; null asks each time. */
  readonly repeat: ImperfectionId | null;
  readonly setRepeat: (imperfection: ImperfectionId | null) => void;
  readonly say: (text: string) => void;
  readonly setDraft: (draft: Draft | null) => void;
  readonly changeDraft: (change: (draft: Draft | null) => Draft | null) => void;
  /** Lines along the edge. */
  readonly follow: Follow;
  readonly settle: (step: Step) => void;
  /** Moves the loose end of what is being drawn. */
  readonly hover: (at: Point<"photo"> | null) => void;
  readonly done: () => void;
  readonly cancel: () => void;
  /** The last point of what is being drawn, else the last change. */
  readonly undo: () => void;
  readonly redo: () => void;
  readonly changeTool: (tool: Tool) => void;
  readonly nameShape: (imperfection: ImperfectionId) => void;
  readonly select: (id: string | null) => void;
  readonly remove: (id: string) => void;
}

/** State of the marking screen besides the view: the draft, what is said, and the way from a draft to one action. */
export function useMarking(props: BeadCanvasProps): Marking {
  const { history, readOnly = false, scaleKind = "two-points", offered = markTools, section = null } = props;
  const edge = section?.role ?? null;
  const drawing = history.present;
  const tool = readOnly ? "move" : props.tool;
  const held = useHeldDraft({ tool, scale: drawing.scale, scaleKind, edge });
  const { draft, setDraft } = held;
  const follow = useFollow();
  const [said, say] = useSaid();
  const [repeat, setRepeat] = useState<ImperfectionId | null>(null);
  const preview = useMemo(
    () => (draft?.kind === "change" ? after(drawing, draft.action) : drawing),
    [draft, drawing],
  );
  const sectionPreview = useMemo(
    () =>
      section && draft?.kind === "change" && isSectionAction(draft.action)
        ? editSection(section.section, draft.action)
        : (section?.section ?? null),
    [draft, section],
  );
  const desk: Desk = { props, drawing, tool, draft, setDraft, say, repeat, follow };
  return {
    tool,
    offered: readOnly ? ["move"] : offered,
    ...held,
    scaleKind,
    edge,
    preview,
    sectionPreview,
    said,
    repeat,
    setRepeat,
    say,
    follow,
    ...draftSteps(desk),
    ...historySteps(desk),
    ...markSteps(desk),
  };
}

/** What the steps below work on, as it was when the screen was drawn. */
interface Desk {
  readonly props: BeadCanvasProps;
  readonly drawing: Drawing;
  readonly tool: Tool;
  readonly draft: Draft | null;
  readonly setDraft: (draft: Draft | null) => void;
  readonly say: (text: string) => void;
  readonly repeat: ImperfectionId | null;
  readonly follow: Follow;
}

const after = (drawing: Drawing, action: CanvasChange): Drawing =>
  isSectionAction(action) ? drawing : reduce(startHistory(drawing), action).present;

function draftSteps(desk: Desk): Pick<Marking, "settle" | "hover" | "done" | "cancel" | "changeTool"> {
  const { props, tool, draft, setDraft, say, follow } = desk;
  const settle = (step: Step) => {
    setDraft(follow.on ? placedAlong(draft, step.draft, follow.shown) : step.draft);
    if (step.finished) return complete(desk, step.finished);
    const words = sayDraft(step.draft);
    if (words !== "") say(words);
  };
  return {
    settle,
    cancel: () => giveUp(desk),
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
    changeTool: (next) => {
      if (next !== tool) giveUp(desk);
      props.onToolChange(next);
      say(`${toolWords[next].name}. ${toolWords[next].does}`);
    },
  };
}

function giveUp({ props, draft, setDraft, say }: Desk): void {
  if (draft?.kind === "unmeasured") props.onScaleCancelled?.();
  if (draft !== null) say("Cancelled");
  setDraft(null);
}

/** What a finished draft asks for, done or asked of the person. */
function complete(desk: Desk, finished: Finished): void {
  const { props, drawing, setDraft, say, repeat } = desk;
  switch (finished.kind) {
    case "shape":
      if (repeat !== null) return addMark(desk, repeat, finished.shape);
      setDraft({ kind: "unnamed", shape: finished.shape });
      return say("Drawn. Now name it.");
    case "scale":
      setDraft({ ...finished, kind: "unmeasured" });
      say(scalePicked[finished.scaleKind]);
      return props.onScalePicked(finished.points);
    case "weld-line":
      say("Weld line set");
      return props.onAction({ type: "weldLine.set", points: finished.points });
    case "change":
      say(sayChange(finished.action, after(drawing, finished.action), sizeOf(desk)));
      if (isSectionAction(finished.action)) return props.section?.onAction(finished.action);
      return props.onAction(finished.action);
  }
}

const sizeOf =
  ({ props }: Desk) =>
  (mark: Mark): string =>
    props.shapeLabel?.(mark.shape) ?? "";

function addMark(desk: Desk, imperfection: ImperfectionId, shape: MarkShapeData): void {
  const { props, drawing, say } = desk;
  const mark = newMark(newMarkId(), imperfection, shape);
  props.onAction({ type: "mark.add", mark });
  props.onSelect(mark.id);
  say(`${sayMark(mark, drawing.marks.length + 1, sizeOf(desk)(mark))}, placed`);
}

function historySteps(desk: Desk): Pick<Marking, "undo" | "redo"> {
  const { props, draft, setDraft, say } = desk;
  const { history, onAction } = props;
  return {
    undo: () => {
      if (draft?.kind === "path") {
        const shorter = takeBackPoint(draft);
        setDraft(shorter);
        return say(shorter === null ? "No point left" : sayDraft(shorter));
      }
      if (draft !== null) return giveUp(desk);
      say(sayStep("undo", history));
      onAction({ type: "undo" });
    },
    redo: () => {
      say(sayStep("redo", history));
      onAction({ type: "redo" });
    },
  };
}

function markSteps(desk: Desk): Pick<Marking, "nameShape" | "select" | "remove"> {
  const { props, drawing, draft, setDraft, say } = desk;
  const numbered = (id: string | null, does: string) => {
    const index = drawing.marks.findIndex((mark) => mark.id === id);
    const mark = drawing.marks[index];
    if (mark) say(`${sayMark(mark, index + 1, sizeOf(desk)(mark))}, ${does}`);
  };
  return {
    nameShape: (imperfection) => {
      setDraft(null);
      if (draft?.kind === "unnamed") addMark(desk, imperfection, draft.shape);
    },
    select: (id) => {
      props.onSelect(id);
      numbered(id, "selected");
    },
    remove: (id) => {
      props.onAction({ type: "mark.remove", id });
      props.onSelect(null);
      numbered(id, "removed");
    },
  };
}
