import { describe, expect, it } from "vitest";
import { deskCommand } from "@/components/course/desk-keys";

const press = (
  key: string,
  code = "",
  held: Partial<Record<"shift" | "ctrl" | "meta" | "alt", boolean>> = {},
) => ({
  key,
  code,
  shiftKey: held.shift ?? false,
  ctrlKey: held.ctrl ?? false,
  metaKey: held.meta ?? false,
  altKey: held.alt ?? false,
});

describe("a key at the feedback desk", () => {
  it("is a line of the rubric by its digit, on either block of digits, and a phrase with Shift", () => {
    expect(deskCommand(press("1", "Digit1"), false)).toEqual({ do: "line", at: 0 });
    expect(deskCommand(press("9", "Numpad9"), false)).toEqual({ do: "line", at: 8 });
    // On a German keyboard Shift and 3 is a paragraph sign: the place of the key counts.
    expect(deskCommand(press("§", "Digit3", { shift: true }), false)).toEqual({ do: "phrase", at: 2 });
    // On a French one a digit without Shift is another sign.
    expect(deskCommand(press("&", "Digit1"), false)).toEqual({ do: "line", at: 0 });
    expect(deskCommand(press("1", "Digit1", { shift: true }), false)).toEqual({ do: "phrase", at: 0 });
    expect(deskCommand(press("0", "Digit0"), false)).toBeNull();
  });

  it("goes on, goes back, marks the rest, and returns", () => {
    expect(deskCommand(press("PageDown"), false)).toEqual({ do: "next" });
    expect(deskCommand(press("PageUp"), false)).toEqual({ do: "previous" });
    for (const key of ["r", "R"]) expect(deskCommand(press(key, "KeyR"), false)).toEqual({ do: "rest" });
    for (const held of [{ ctrl: true }, { meta: true }])
      expect(deskCommand(press("Enter", "Enter", held), false)).toEqual({ do: "return" });
    expect(deskCommand(press("Enter", "Enter"), false)).toBeNull();
  });

  it("is heard in a field only where it returns, so that no digit that is typed becomes a mark", () => {
    expect(deskCommand(press("Enter", "Enter", { ctrl: true }), true)).toEqual({ do: "return" });
    for (const [key, code] of [
      ["1", "Digit1"],
      ["r", "KeyR"],
      ["PageDown", "PageDown"],
    ] as const)
      // prettier-ignore
      expect(deskCommand(press(key, code), true)).toBeNull();
  });

  it("is the browser's where Ctrl, Meta or Alt is held: reload, the first tab", () => {
    for (const held of [{ ctrl: true }, { meta: true }, { alt: true }]) {
      expect(deskCommand(press("r", "KeyR", held), false)).toBeNull();
      expect(deskCommand(press("1", "Digit1", held), false)).toBeNull();
    }
  });
});
