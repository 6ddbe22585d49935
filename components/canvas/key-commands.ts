import type { Point } from "@/lib/geometry";
import { tools, type Tool } from "./types";
import { toolWords } from "./words";

/** What a key asks of the canvas. */
export type KeyCommand =
  /** Moves the cross-hair by `by`, CSS pixels. */
  | { readonly do: "aim"; readonly by: Point }
  /** To the next or the last mark; past either end the focus leaves the canvas. */
  | { readonly do: "tab"; readonly step: 1 | -1 }
  /** To the next or the last mark, round and round. */
  | { readonly do: "mark"; readonly step: 1 | -1 }
  /** To the next or the last point of what is selected, round and round. */
  | { readonly do: "point"; readonly step: 1 | -1 }
  | { readonly do: "zoom"; readonly factor: number }
  | { readonly do: "tool"; readonly tool: Tool }
  | { readonly do: "fit" | "place" | "enter" | "cancel" | "remove" };

/** CSS pixels: one step of the cross-hair, and one with Shift. */
const STEP = 2;
const FAR_STEP = 20;

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

const looking: Readonly<Record<string, KeyCommand>> = {
  "+": { do: "zoom", factor: 1.25 },
  "=": { do: "zoom", factor: 1.25 },
  "-": { do: "zoom", factor: 0.8 },
  "0": { do: "fit" },
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
  ...Object.fromEntries(
    tools.map((tool): [string, KeyCommand] => [toolWords[tool].key.toLowerCase(), { do: "tool", tool }]),
  ),
};

/** The command of a key (`KeyboardEvent.key`); null when the key is the browser's. */
export function keyCommand(key: string, shift: boolean, readOnly: boolean): KeyCommand | null {
  const arrow = arrows[key];
  if (arrow) {
    const step = shift ? FAR_STEP : STEP;
    return { do: "aim", by: { x: arrow.x * step, y: arrow.y * step } };
  }
  if (key === "Tab") return { do: "tab", step: shift ? -1 : 1 };
  const named = key.length === 1 ? key.toLowerCase() : key;
  return looking[named] ?? (readOnly ? null : (writing[named] ?? null));
}

/** The index `step` away among `count` things, round and round; from none (-1) the first or the last. Null of nothing. */
export function wrapIndex(from: number, step: 1 | -1, count: number): number | null {
  if (count === 0) return null;
  if (from < 0) return step > 0 ? 0 : count - 1;
  return (from + step + count) % count;
}

/** The index `step` away, from none (-1) the first or the last; null past either end. */
export function nextIndex(from: number, step: 1 | -1, count: number): number | null {
  const next = from < 0 && step < 0 ? count - 1 : from + step;
  return next >= 0 && next < count ? next : null;
}
