import type { KeyboardEvent } from "react";
import { useWindowKeys, wrapIndex, type EaselState } from "@/components/canvas-kit";
import { distance } from "@/lib/geometry";
import { shapePoints } from "@/lib/marks";
import { fewestOf, placePoint } from "./draft";
import type { Scenery } from "./gesture";
import { mayFollow } from "./followed";
import { handleAt } from "./handles";
import { keyCommand, nextIndex, nudgeCommand, type KeyCommand } from "./key-commands";
import { pickAt } from "./suggested";
import type { Tool } from "./types";
import { useCross, type Cross } from "./use-cross";
import type { Marking } from "./use-marking";
import type { PickedPoint } from "./use-picked-point";
import { followWords } from "./words";

/** CSS pixels: how near the cross-hair counts as on it. */
const REACH = 12;

type Heard = Pick<
  globalThis.KeyboardEvent,
  "key" | "shiftKey" | "ctrlKey" | "metaKey" | "altKey" | "preventDefault"
>;

interface Hands {
  readonly marking: Marking;
  readonly scenery: Scenery;
  readonly picked: PickedPoint;
  readonly easel: EaselState;
  readonly cross: Cross;
  readonly readOnly: boolean;
}

/** What a key does wherever the focus is; the others mean something else on a button or in a list. */
const anywhere: ReadonlySet<KeyCommand["do"]> = new Set(["tool", "follow", "zoom", "fit", "mark"]);

/** The whole of marking by keyboard. */
export function useKeys(hands: Omit<Hands, "cross">) {
  const cross = useCross(hands.marking, hands.easel);
  const all = { ...hands, cross };
  const hear = (event: Heard, obeys: (command: KeyCommand) => boolean) => {
    if (event.ctrlKey || event.metaKey) return;
    const command = event.altKey
      ? nudgeCommand(event.key, event.shiftKey)
      : keyCommand(event.key, event.shiftKey, hands.readOnly);
    if (command && obeys(command) && obey(command, all)) event.preventDefault();
  };
  useWindowKeys((event) => hear(event, (command) => anywhere.has(command.do)));
  const onKeyDown = (event: KeyboardEvent) => hear(event, () => true);
  return { cross: cross.shown, hideCross: cross.hide, onKeyDown };
}

/** Carries a command out; false leaves the key to the browser. */
function obey(command: KeyCommand, hands: Hands): boolean {
  const { cross, marking } = hands;
  switch (command.do) {
    case "aim":
    case "nudge":
      if (command.do === "aim") cross.moveBy(command.by);
      else cross.nudge(command.by);
      return true;
    case "tab":
      return marking.draft === null && tabTo(command.step, hands);
    case "mark":
      selectAt(wrapIndex(selectedIndex(hands), command.step, hands.scenery.drawing.marks.length), hands);
      return true;
    case "point":
      goToPoint(command.step, hands);
      return true;
    case "zoom":
      hands.easel.control.zoomBy(command.factor);
      return true;
    case "fit":
      hands.easel.control.fit();
      return true;
    case "tool":
      return takeTool(command.tool, marking);
    case "follow":
      return switchFollow(marking);
    case "place":
      place(hands);
      return true;
    case "enter":
      enter(hands);
      return true;
    case "cancel":
      cancel(hands);
      return true;
    case "remove":
      remove(hands);
      return true;
  }
}

/** False where it is not offered. */
function takeTool(tool: Tool, { offered, changeTool }: Marking): boolean {
  if (!offered.includes(tool)) return false;
  changeTool(tool);
  return true;
}

/** False where no line could be drawn anyway. */
function switchFollow({ follow, offered, say }: Marking): boolean {
  if (!offered.some(mayFollow)) return false;
  say(follow.toggle() ? followWords.on : followWords.off);
  return true;
}

const selectedIndex = ({ scenery: { drawing, selectedId } }: Hands): number =>
  drawing.marks.findIndex((mark) => mark.id === selectedId);

function selectAt(index: number | null, { scenery, marking, cross }: Hands): void {
  const mark = index === null ? undefined : scenery.drawing.marks[index];
  if (!mark) return;
  marking.select(mark.id);
  const [at] = shapePoints(mark.shape);
  if (at) cross.goTo(at);
}

/** From mark to mark; past either end Tab leaves the canvas, so that the keyboard is not caught in it. */
function tabTo(step: 1 | -1, hands: Hands): boolean {
  const next = nextIndex(selectedIndex(hands), step, hands.scenery.drawing.marks.length);
  if (next === null) hands.marking.select(null);
  else selectAt(next, hands);
  return next !== null;
}

function goToPoint(step: 1 | -1, { scenery: { handles, unitPx }, cross, picked }: Hands): void {
  const points = handles.filter((handle) => handle.role !== "between");
  const here = points.findIndex((handle) => cross.shown && distance(handle.at, cross.shown) < unitPx);
  const next = points[wrapIndex(here, step, points.length) ?? -1];
  if (!next) return;
  picked.pick(next);
  cross.goTo(next.at);
}

function place(hands: Hands): void {
  const { marking, cross, readOnly } = hands;
  const { handles, tool, draft, unitPx } = hands.scenery;
  const at = cross.stand();
  if (cross.carried) {
    cross.putDown();
    return marking.settle({ draft: null, finished: { kind: "change", action: cross.carried.move(at) } });
  }
  const handle = readOnly || draft?.kind === "path" ? null : handleAt(handles, at, REACH * unitPx);
  if (handle) return cross.pickUp(handle);
  if (tool === "move") return pickAt(hands.scenery, marking.select, at, REACH);
  if (tool !== "point") {
    return marking.settle(placePoint(tool, draft, at, (REACH / 2) * unitPx, kindsOf(marking)));
  }
  if (draft?.kind === "spot") return marking.done();
  marking.settle({ draft: { kind: "spot", at, radius: null }, finished: null });
}

const kindsOf = ({ scaleKind, edge }: Marking) => ({ scaleKind, ...(edge ? { edge } : {}) });

/** Finishes a path that has enough points, else places one. */
function enter(hands: Hands): void {
  const { draft, scaleKind, done } = hands.marking;
  const enough = draft?.kind === "path" && draft.points.length >= fewestOf(draft.tool, scaleKind);
  if (enough) done();
  else place(hands);
}

/** Gives up the innermost thing there is: what is drawn, what is selected, the cross-hair. */
function cancel({ marking, scenery, cross }: Hands): void {
  cross.putDown();
  if (marking.draft !== null) marking.cancel();
  else if (scenery.selectedId !== null) marking.select(null);
  else cross.hide();
}

/** The point under the cross-hair, else the whole mark. */
function remove({ marking, scenery, cross, picked }: Hands): void {
  const { handles, selectedId, unitPx } = scenery;
  const handle = cross.shown && handleAt(handles, cross.shown, unitPx * 2);
  if (handle?.remove) picked.remove(handle);
  else if (selectedId !== null) marking.remove(selectedId);
}
