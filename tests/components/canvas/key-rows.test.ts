import { expect, it } from "vitest";
import { undoCommand } from "@/components/canvas-kit";
import { keyCommand } from "@/components/canvas/key-commands";
import { keysAnywhere, keysOnPhoto } from "@/components/canvas/key-rows";
import { tools } from "@/components/canvas/types";

const rows = [...keysAnywhere(tools), ...keysOnPhoto];
/** Answered by the board, not by the canvas. */
const boards = ["Ctrl Z", "?"];

it("every key of the list does something", () => {
  for (const key of rows.flatMap(({ keys }) => keys).filter((key) => !boards.includes(key)))
    expect(keyCommand(key, false, false), key).not.toBeNull();
  const z = { key: "z", shiftKey: false, ctrlKey: true, metaKey: false };
  expect([undoCommand(z), undoCommand({ ...z, shiftKey: true })]).toEqual(["undo", "redo"]);
});

it("every key that does something is in the list", () => {
  const listed = new Set(rows.flatMap(({ keys }) => keys.map((key) => key.toLowerCase())));
  const all = [..."abcdefghijklmnopqrstuvwxyz0123456789[],.;'/\\-+ "].concat(
    ["Enter", "Escape", "Delete", "Backspace", "Tab", "ArrowLeft", "ArrowUp", "Home", "F2"], // prettier-ignore
  );
  const working = all.filter((key) => keyCommand(key, false, false) !== null);
  expect(working.length).toBeGreaterThan(20);
  expect(working.filter((key) => !listed.has(key.toLowerCase()))).toEqual([]);
});
