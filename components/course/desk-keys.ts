/** What a key asks of the desk, wherever on it the hand is; no key of the drawing board is among them. */
export type DeskCommand =
  | { readonly do: "line"; readonly at: number }
  | { readonly do: "rest" }
  | { readonly do: "phrase"; readonly at: number }
  | { readonly do: "previous" | "next" | "return" };

interface PressedKey {
  readonly key: string;
  /** The key's place: with Shift a digit is another sign on each keyboard. */
  readonly code: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

/** The command of a key; null when it is none. `typing`: the hand is in a field, where only the return is heard. */
export function deskCommand(event: PressedKey, typing: boolean): DeskCommand | null {
  const { key, code, shiftKey, ctrlKey, metaKey, altKey } = event;
  if ((ctrlKey || metaKey) && key === "Enter") return { do: "return" };
  if (typing || ctrlKey || metaKey || altKey) return null;
  const digit = /^(?:Digit|Numpad)([1-9])$/.exec(code)?.[1];
  if (digit) return { do: shiftKey ? "phrase" : "line", at: Number(digit) - 1 };
  if (key.toLowerCase() === "r") return { do: "rest" };
  if (key === "PageDown") return { do: "next" };
  return key === "PageUp" ? { do: "previous" } : null;
}
