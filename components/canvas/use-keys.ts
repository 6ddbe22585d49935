import { useState, type KeyboardEvent } from "react";
import { add, distance, type Point } from "@/lib/geometry";
import { shapePoints, type PhotoPoint } from "@/lib/marks";
import { fewestOf, placePoint } from "./draft";
import { handleAt, type Handle } from "./handles";
import { markAt } from "./hit";
import type { Scenery } from "./gesture";
import { tools } from "./types";
import type { Marking } from "./use-marking";
import type { ViewControl } from "./use-view";
import { grainOf, pickPoint, roundPoint, type Size } from "./view";
import { toolWords } from "./words";

/** CSS pixels: one step of the cross-hair, and how near counts as on it. */
const STEP = 2;
const REACH = 12;

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** The whole of marking by keyboard: a cross-hair in photo pixels, and a handle it may carry. */
export function useKeys(
  marking: Marking,
  scenery: Scenery,
  control: ViewControl,
  box: Size,
  readOnly: boolean,
) {
  const [cross, setCross] = useState<Point | null>(null);
  const [carried, setCarried] = useState<Handle | null>(null);
  const { tool, draft } = marking;
  const { drawing, handles, selectedId, unitPx } = scenery;

  const middle = (): Point => pickPoint(control.view, { x: box.width / 2, y: box.height / 2 });
  /** A point of the cross-hair, with the grain of the view it is set in. */
  const seen = (at: Point): PhotoPoint => ({ ...roundPoint(at), grainPx: grainOf(unitPx) });
  const goTo = (at: Point) => {
    setCross(at);
    control.show(at);
    if (carried) marking.setDraft({ kind: "change", action: carried.move(seen(at)) });
    else marking.hover(at);
  };

  const selectAt = (index: number) => {
    const mark = drawing.marks[index];
    marking.select(mark?.id ?? null);
    const [at] = mark ? shapePoints(mark.shape) : [];
    if (at) goTo(at);
  };
  const selectedIndex = drawing.marks.findIndex((mark) => mark.id === selectedId);
  /** From mark to mark; past either end Tab leaves the canvas, so that the keyboard is not caught in it. */
  const tabTo = (step: 1 | -1): boolean => {
    const from = selectedIndex < 0 && step < 0 ? drawing.marks.length : selectedIndex;
    if (drawing.marks[from + step] === undefined) {
      marking.select(null);
      return false;
    }
    selectAt(from + step);
    return true;
  };
  const cycle = (step: 1 | -1) => {
    const count = drawing.marks.length;
    if (count > 0) selectAt((Math.max(selectedIndex, step < 0 ? 0 : -1) + step + count) % count);
  };
  const cyclePoint = (step: 1 | -1) => {
    const points = handles.filter((handle) => handle.role !== "between");
    const here = points.findIndex((handle) => cross && distance(handle.at, cross) < unitPx);
    const next = points[(here + step + points.length) % Math.max(1, points.length)];
    if (next) goTo(next.at);
  };

  const pickUp = (at: Point): boolean => {
    const handle = draft?.kind === "path" ? null : handleAt(handles, at, REACH * unitPx);
    if (!handle) return false;
    setCarried(handle);
    setCross(handle.at);
    marking.say("Point picked up. Move it, then Space to put it down.");
    return true;
  };

  const place = () => {
    const at = seen(cross ?? middle());
    setCross(at);
    if (carried) {
      setCarried(null);
      marking.say("Point put down");
      return marking.settle({ draft: null, finished: { kind: "change", action: carried.move(at) } });
    }
    if (!readOnly && pickUp(at)) return;
    if (tool === "move") return marking.select(markAt(drawing, scenery.shapes, at, REACH, unitPx));
    if (tool !== "point")
      return marking.settle(placePoint(tool, draft, at, (REACH / 2) * unitPx, marking.scaleKind));
    if (draft?.kind === "spot") return marking.done();
    marking.settle({ draft: { kind: "spot", at, radius: null }, finished: null });
  };

  const enter = () => {
    const enough = draft?.kind === "path" && draft.points.length >= fewestOf(draft.tool, marking.scaleKind);
    return enough ? marking.done() : place();
  };

  const cancel = () => {
    setCarried(null);
    if (draft !== null) return marking.cancel();
    if (selectedId !== null) return marking.select(null);
    setCross(null);
  };

  const remove = () => {
    const handle = cross && handleAt(handles, cross, unitPx * 2);
    if (handle?.remove)
      return marking.settle({ draft: null, finished: { kind: "change", action: handle.remove } });
    if (selectedId !== null) marking.remove(selectedId);
  };

  /** Whether the key was ours; if not, the browser keeps it. */
  const press = (key: string, shift: boolean): boolean => {
    const arrow = arrows[key];
    if (arrow) {
      const step = STEP * unitPx * (shift ? 10 : 1);
      goTo(seen(add(cross ?? middle(), { x: arrow.x * step, y: arrow.y * step })));
      return true;
    }
    if (key === "Tab") return draft === null && tabTo(shift ? -1 : 1);
    const always: Readonly<Record<string, () => void>> = {
      "+": () => control.zoomBy(1.25),
      "=": () => control.zoomBy(1.25),
      "-": () => control.zoomBy(0.8),
      "0": control.fit,
      "[": () => cycle(-1),
      "]": () => cycle(1),
      ",": () => cyclePoint(-1),
      ".": () => cyclePoint(1),
      " ": place,
      Enter: enter,
      Escape: cancel,
    };
    const writing: Readonly<Record<string, () => void>> = { Delete: remove, Backspace: remove };
    const act = always[key] ?? (readOnly ? undefined : writing[key]);
    act?.();
    const named = readOnly
      ? undefined
      : tools.find((t) => toolWords[t].key.toLowerCase() === key.toLowerCase());
    if (!act && named) marking.changeTool(named);
    return act !== undefined || named !== undefined;
  };

  const onKeyDown = (event: KeyboardEvent) => {
    const command = event.ctrlKey || event.metaKey;
    if (command || event.altKey) return;
    if (press(event.key, event.shiftKey)) event.preventDefault();
  };
  return { cross, hideCross: () => setCross(null), onKeyDown };
}
