import { describe, expect, it } from "vitest";
import { photosNamed } from "@/lib/inspect";

const [one, other] = ["a".repeat(64), "0123456789abcdef".repeat(4)];

describe("photos a signed text names", () => {
  it("are found in their order, wherever they stand in it", () => {
    const text = JSON.stringify({ beads: [{ photos: [{ sha256: one }, { sha256: other }] }], more: [one] });
    expect(photosNamed(text)).toEqual([one, other]);
    expect(photosNamed("{}")).toEqual([]);
  });

  it("are still found, what is left of them, in a text that was cut off or damaged", () => {
    const text = JSON.stringify([{ sha256: one }, { sha256: other }]);
    expect(photosNamed(text.slice(0, -3))).toEqual([one]);
    expect(photosNamed(text.replace(one, `${one.slice(1)}z`))).toEqual([other]);
  });
});
