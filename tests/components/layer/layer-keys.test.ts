import { expect, test } from "vitest";
import { layerTools } from "@/components/layer/layer-draft";
import { layerCommand } from "@/components/layer/layer-keys";

const pressed = (key: string, held: Partial<Record<"shiftKey" | "ctrlKey" | "metaKey", boolean>> = {}) =>
  layerCommand({ key, shiftKey: false, ctrlKey: false, metaKey: false, ...held });

test("every tool has its letter, small or large", () => {
  const tools = ["m", "A", "t", "F", "o"].map((key) => pressed(key));
  expect(tools).toEqual(layerTools.map((tool) => ({ do: "tool", tool })));
});

test("the whole of drawing has a key", () => {
  expect(pressed("Enter")).toEqual({ do: "place" });
  expect(pressed("e")).toEqual({ do: "end" });
  expect(pressed("n")).toEqual({ do: "next" });
  expect(pressed("Escape")).toEqual({ do: "cancel" });
  expect(pressed("Backspace")).toEqual({ do: "remove" });
  expect(pressed("ArrowRight", { shiftKey: true })).toEqual({ do: "aim", by: { x: 40, y: 0 } });
  expect(pressed("z", { ctrlKey: true })).toEqual({ do: "undo" });
});

test("what the browser means by a key stays the browser's", () => {
  expect(pressed("a", { ctrlKey: true })).toBeNull();
  expect(pressed("Tab")).toBeNull();
  expect(pressed("toString")).toBeNull();
});
