import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearMiss, sameLetters } from "@/lib/case/near-miss";
import { polarities } from "@/lib/trade";

const sizes = ["lengthMm", "depthMm", "heightMm", "diameterMm", "areaMm2"];

describe("the word that was meant", () => {
  it.each([
    ["depthMM", "depthMm"],
    ["depth_mm", "depthMm"],
    ["depth", "depthMm"],
    ["dephtMm", "depthMm"],
    ["depthIn", "depthMm"],
    ["diametrMm", "diameterMm"],
    ["diameterInch", "diameterMm"],
    ["targetThroatMm", null],
    ["areaMm", "areaMm2"],
    ["colour", null],
    ["d", null],
    ["", null],
    ["__", null],
    ["深さ", null],
    ["x".repeat(100_000), null],
  ])("of %s is %s", (word, meant) => {
    expect(nearMiss(word, sizes)).toBe(meant);
  });

  it("is not guessed where two are equally near: the wrong lug would be the opposite advice", () => {
    for (const word of ["DC+", "DC-", "DC", "DCE", "DCEX", "DCEM"])
      expect(nearMiss(word, polarities)).toBeNull();
    expect(nearMiss("dcep", polarities)).toBe("DCEP");
    expect(nearMiss("leg", ["leg1", "leg2"])).toBeNull();
  });

  it("is found after any one slip, where no other word is as near", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("electrode", "thickness", "wormhole"),
        fc.nat(),
        fc.nat(3),
        (word, n, kind) => {
          const at = n % word.length;
          const before = word.slice(0, at);
          const after = word.slice(at + 1);
          const slip = [
            before + after,
            `${before}q${after}`,
            `${before}q${word.slice(at)}`,
            before + (after[0] ?? "") + word[at]! + after.slice(1),
          ][kind]!;
          expect(nearMiss(slip, ["overlap", word, "spatter"])).toBe(word);
        },
      ),
      { seed: 13, numRuns: 300 },
    );
  });

  it("surely means the same unit only where case and signs alone differ", () => {
    expect([sameLetters("depthMM", "depthMm"), sameLetters("depth_mm", "depthMm")]).toEqual([true, true]);
    expect(["depthIn", "depth", "depthM"].some((word) => sameLetters(word, "depthMm"))).toBe(false);
  });
});
