import { expect, it } from "vitest";
import { isTaken } from "@/components/canvas-kit/use-window-keys";

/** Something in the page that lies in `tag`, as `closest` tells it. */
const inside = (tag: string | null) => ({
  closest: ((asked: string) =>
    tag !== null && asked.split(", ").includes(tag) ? {} : null) as Element["closest"],
});

it("a key belongs to a field, to a dialog, and to nobody else", () => {
  for (const field of ["input", "textarea", "select", "[contenteditable]", "[role=dialog]"])
    expect(isTaken(inside(field), false), field).toBe(true);
  expect(isTaken(inside("button"), false)).toBe(false);
  expect(isTaken(null, false)).toBe(false);
  // What lies over the page has all keys, wherever the focus was left.
  expect(isTaken(null, true)).toBe(true);
});
