import type { Point } from "@/lib/geometry";

/** What a key asks of any canvas: to move the cross-hair by `by`, CSS pixels, or to look closer. */
export type LookCommand =
  | { readonly do: "aim"; readonly by: Point<"view"> }
  | { readonly do: "zoom"; readonly factor: number }
  | { readonly do: "fit" };

/** How far a key goes. */
export interface LookPace {
  /** CSS pixels: one step of the cross-hair, and one with Shift. */
  readonly step: number;
  readonly farStep: number;
  /** One step closer. */
  readonly zoom: number;
}

const arrows: Readonly<Record<string, Point<"view">>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** The command of a key (`KeyboardEvent.key`); null when it is none of these. */
export function lookCommand(key: string, shift: boolean, pace: LookPace): LookCommand | null {
  const arrow = Object.hasOwn(arrows, key) ? arrows[key] : undefined;
  if (arrow) {
    const step = shift ? pace.farStep : pace.step;
    return { do: "aim", by: { x: arrow.x * step, y: arrow.y * step } };
  }
  if (key === "+" || key === "=") return { do: "zoom", factor: pace.zoom };
  if (key === "-") return { do: "zoom", factor: 1 / pace.zoom };
  return key === "0" ? { do: "fit" } : null;
}

interface PressedKey {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

/** Ctrl (or Command) and Z takes back, with Shift it brings again; null for every other key. */
export function undoCommand({ key, shiftKey, ctrlKey, metaKey }: PressedKey): "undo" | "redo" | null {
  if (!(ctrlKey || metaKey) || key.toLowerCase() !== "z") return null;
  return shiftKey ? "redo" : "undo";
}

/** A letter is the same key with and without Shift; "Enter" and its like keep their names. */
export const plainKey = (key: string): string => (key.length === 1 ? key.toLowerCase() : key);

/** The index `step` away among `count` things, round and round; from none (-1) the first or the last. Null of nothing. */
export function wrapIndex(from: number, step: 1 | -1, count: number): number | null {
  if (count === 0) return null;
  if (from < 0) return step > 0 ? 0 : count - 1;
  return (from + step + count) % count;
}
