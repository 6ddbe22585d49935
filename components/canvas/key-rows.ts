import { mayFollow } from "./followed";
import type { Tool } from "./types";
import { toolWords } from "./words";

/** One line of the list of keys: what is pressed, as `KeyboardEvent.key`, and what that does. */
export interface KeyRow {
  readonly keys: readonly string[];
  /** How they are written where the name of the key is not what stands on it. */
  readonly shown: string;
  readonly does: string;
}

const row = (shown: string, does: string, ...keys: readonly string[]): KeyRow => ({
  keys: keys.length > 0 ? keys : [shown],
  shown,
  does,
});

/** Work wherever no field has the focus. */
export const keysAnywhere = (offered: readonly Tool[]): readonly KeyRow[] => [
  ...offered.map((tool) => row(toolWords[tool].key, `${toolWords[tool].name}: ${toolWords[tool].does}`)),
  ...(offered.some(mayFollow) ? [row("A", "Lines run along the edge, or straight again")] : []),
  row("[ and ]", "The mark before, the next mark", "[", "]"),
  row("+ and −", "Closer, further away", "+", "-"),
  row("0", "The whole photo"),
  row("Ctrl Z", "Undo; with Shift, redo"),
  row("?", "This list"),
];

/** Work with the photo in focus: click it, or reach it by Tab. */
export const keysOnPhoto: readonly KeyRow[] = [
  row(
    "Arrows",
    "Move the cross-hair; with Shift, further",
    "ArrowLeft",
    "ArrowRight",
    "ArrowUp",
    "ArrowDown",
  ),
  row("Alt and arrows", "Move it by one pixel of the photo; with Shift, by a tenth of one", "ArrowLeft"),
  row("Space", "Place a point, pick up a point, put it down, pick a mark", " "),
  row("Enter", "Finish what is drawn"),
  row("Esc", "Give up what is drawn or picked", "Escape"),
  row(", and .", "The point before, the next point of what is picked", ",", "."),
  row("Del", "Take away the point under the cross-hair, or the mark", "Delete", "Backspace"),
  row("Tab", "To the next mark; past the last one, on in the page"),
];
