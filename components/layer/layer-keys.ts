import { lookCommand, plainKey, undoCommand, type LookCommand } from "@/components/canvas-kit";
import type { LayerTool } from "./layer-draft";

/** What a key asks of the instructor's layer. */
export type LayerCommand =
  | LookCommand
  | { readonly do: "tool"; readonly tool: LayerTool }
  | { readonly do: "undo" | "redo" | "place" | "end" | "next" | "cancel" | "remove" };

/** An arrow points at a place, it does not measure it: far steps get there sooner. */
const pace = { step: 8, farStep: 40, zoom: 1.4 } as const;

const commands: Readonly<Record<string, LayerCommand>> = {
  m: { do: "tool", tool: "move" },
  a: { do: "tool", tool: "arrow" },
  t: { do: "tool", tool: "text" },
  f: { do: "tool", tool: "freehand" },
  o: { do: "tool", tool: "outline" },
  e: { do: "end" },
  n: { do: "next" },
  Enter: { do: "place" },
  Escape: { do: "cancel" },
  Delete: { do: "remove" },
  Backspace: { do: "remove" },
};

type PressedKey = Parameters<typeof undoCommand>[0];

/** The command of a key; null when the key is the browser's. */
export function layerCommand(event: PressedKey): LayerCommand | null {
  if (event.ctrlKey || event.metaKey) {
    const step = undoCommand(event);
    return step && { do: step };
  }
  const key = plainKey(event.key);
  const look = lookCommand(key, event.shiftKey, pace);
  return look ?? (Object.hasOwn(commands, key) ? commands[key]! : null);
}
