import { describe, expect, test } from "vitest";
import { lookCommand, undoCommand, wrapIndex } from "@/components/canvas-kit/look-keys";

const pace = { step: 3, farStep: 30, zoom: 1.5 };
const pressed = (key: string, held: Partial<Record<"shiftKey" | "ctrlKey" | "metaKey", boolean>> = {}) => ({
  key,
  shiftKey: false,
  ctrlKey: false,
  metaKey: false,
  ...held,
});

describe("keys of every canvas", () => {
  test("arrows aim at the canvas's own pace", () => {
    expect(lookCommand("ArrowLeft", false, pace)).toEqual({ do: "aim", by: { x: -3, y: 0 } });
    expect(lookCommand("ArrowDown", true, pace)).toEqual({ do: "aim", by: { x: 0, y: 30 } });
  });

  test("closer and farther undo each other", () => {
    const [closer, farther] = ["+", "-"].map((key) => lookCommand(key, false, pace));
    expect(closer).toEqual({ do: "zoom", factor: 1.5 });
    expect(farther?.do === "zoom" && farther.factor * 1.5).toBeCloseTo(1, 12);
    expect(lookCommand("0", false, pace)).toEqual({ do: "fit" });
  });

  test("other keys, and names that every object has, are none of these", () => {
    for (const key of ["a", "Enter", "constructor", "toString"])
      expect(lookCommand(key, false, pace)).toBeNull();
  });

  test("Ctrl or Command and Z takes back, with Shift it brings again", () => {
    expect(undoCommand(pressed("z", { ctrlKey: true }))).toBe("undo");
    expect(undoCommand(pressed("Z", { metaKey: true, shiftKey: true }))).toBe("redo");
    expect(undoCommand(pressed("z"))).toBeNull();
    expect(undoCommand(pressed("y", { ctrlKey: true }))).toBeNull();
  });

  test("round and round", () => {
    expect([wrapIndex(-1, 1, 3), wrapIndex(2, 1, 3), wrapIndex(0, -1, 3), wrapIndex(-1, -1, 3)]).toEqual([
      0, 0, 2, 2,
    ]);
    expect(wrapIndex(0, 1, 0)).toBeNull();
  });
});
