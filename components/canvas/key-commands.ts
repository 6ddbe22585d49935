import { lookCommand, plainKey, type LookCommand } from "@/components/canvas-kit";
import type { Point } from "@/lib/geometry";
import { tools, type Tool } from "./types";
import { FOLLOW_KEY, toolWords } from "./words";

/** What a key asks of the canvas. */
export type KeyCommand =
  | LookCommand
  /** The cross-hair, and the point it carries, by so many photo pixels. */
  | { readonly do: "nudge"; readonly by: Point<"photo"> }
  /** To the next or the last mark; past either end the focus leaves the canvas. */
  | { readonly do: "tab"; readonly step: 1 | -1 }
  /** To the next or the last mark, round and round. */
  | { readonly do: "mark"; readonly step: 1 | -1 }
  /** To the next or the last point of what is selected, round and round. */
  | { readonly do: "point"; readonly step: 1 | -1 }
  | { readonly do: "tool"; readonly tool: Tool }
  /** Lines run along the edge, or straight again. */
  | { readonly do: "follow" }
  | { readonly do: "place" | "enter" | "cancel" | "remove" };

/** Fine enough to set a point by. */
const pace = { step: 2, farStep: 20, zoom: 1.25 } as const;

const looking: Readonly<Record<string, KeyCommand>> = {
  "[": { do: "mark", step: -1 },
  "]": { do: "mark", step: 1 },
  ",": { do: "point", step: -1 },
  ".": { do: "point", step: 1 },
  " ": { do: "place" },
  Enter: { do: "enter" },
  Escape: { do: "cancel" },
};

const writing: Readonly<Record<string, KeyCommand>> = {
  Delete: { do: "remove" },
  Backspace: { do: "remove" },
  [FOLLOW_KEY]: { do: "follow" },
  ...Object.fromEntries(
    tools.map((tool): [string, KeyCommand] => [toolWords[tool].key.toLowerCase(), { do: "tool", tool }]),
  ),
};

/** The command of a key (`KeyboardEvent.key`); null when the key is the browser's. */
export function keyCommand(key: string, shift: boolean, readOnly: boolean): KeyCommand | null {
  const look = lookCommand(key, shift, pace);
  if (look) return look;
  if (key === "Tab") return { do: "tab", step: shift ? -1 : 1 };
  const named = plainKey(key);
  return looking[named] ?? (readOnly ? null : (writing[named] ?? null));
}

/** Of a key held with Alt: an arrow goes one photo pixel, with Shift a tenth of one; null when the key is the browser's. */
export function nudgeCommand(key: string, shift: boolean): KeyCommand | null {
  const photoPx = shift ? 0.1 : 1;
  const arrow = lookCommand(key, false, { ...pace, step: photoPx });
  return arrow?.do === "aim" ? { do: "nudge", by: { x: arrow.by.x, y: arrow.by.y } } : null;
}

/** The index `step` away, from none (-1) the first or the last; null past either end. */
export function nextIndex(from: number, step: 1 | -1, count: number): number | null {
  const next = from < 0 && step < 0 ? count - 1 : from + step;
  return next >= 0 && next < count ? next : null;
}
