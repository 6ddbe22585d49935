import { describe, expect, test } from "vitest";
import { wrapIndex } from "@/components/canvas-kit/look-keys";
import { keyCommand, nextIndex, nudgeCommand } from "@/components/canvas/key-commands";
import { tools } from "@/components/canvas/types";
import { keyHelp, toolWords } from "@/components/canvas/words";

describe("keyCommand", () => {
  test("arrows aim, with Shift ten times as far", () => {
    expect(keyCommand("ArrowLeft", false, false)).toEqual({ do: "aim", by: { x: -2, y: 0 } });
    expect(keyCommand("ArrowDown", true, false)).toEqual({ do: "aim", by: { x: 0, y: 20 } });
  });

  test("with Alt they go one pixel of the photo, with Shift as well a tenth of one", () => {
    expect(nudgeCommand("ArrowLeft", false)).toEqual({ do: "nudge", by: { x: -1, y: 0 } });
    expect(nudgeCommand("ArrowDown", true)).toEqual({ do: "nudge", by: { x: 0, y: 0.1 } });
    for (const key of ["l", "+", "0", "Delete", "Tab"]) expect(nudgeCommand(key, false), key).toBeNull();
  });

  test.each(tools)("the tool %s has its key, large or small, and the help names it", (tool) => {
    const { key } = toolWords[tool];
    expect(keyCommand(key, false, false)).toEqual({ do: "tool", tool });
    expect(keyCommand(key.toLowerCase(), false, false)).toEqual({ do: "tool", tool });
    expect(keyHelp([tool])).toContain(`${key} ${toolWords[tool].name.toLowerCase()}`);
  });

  test("a photo to look at only keeps what looks and picks, and leaves what writes to the browser", () => {
    for (const key of ["ArrowUp", "+", "0", "]", ".", " ", "Escape"]) {
      expect(keyCommand(key, false, true), key).not.toBeNull();
    }
    for (const key of ["Delete", "Backspace", "l", "S"]) expect(keyCommand(key, false, true), key).toBeNull();
  });

  test("other keys are the browser's", () => {
    for (const key of ["F5", "x", "PageDown", "Home"]) expect(keyCommand(key, false, false), key).toBeNull();
  });
});

test("round and round, from nothing to either end", () => {
  expect([wrapIndex(2, 1, 3), wrapIndex(0, -1, 3), wrapIndex(-1, 1, 3), wrapIndex(-1, -1, 3)]).toEqual([
    0, 2, 0, 2,
  ]);
  expect(wrapIndex(-1, 1, 0)).toBeNull();
});

test("one after the other, and out at either end", () => {
  expect([nextIndex(-1, 1, 2), nextIndex(0, 1, 2), nextIndex(1, 1, 2)]).toEqual([0, 1, null]);
  expect([nextIndex(-1, -1, 2), nextIndex(0, -1, 2)]).toEqual([1, null]);
  expect(nextIndex(-1, 1, 0)).toBeNull();
});
