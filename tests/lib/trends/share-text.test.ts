import { describe, expect, it } from "vitest";
import { shareOf, shareText } from "@/lib/trends";

describe("a share in words", () => {
  it("is a count with its interval while the numbers are small", () => {
    expect(shareText(shareOf(0, 0))).toBe("none looked at");
    expect(shareText(shareOf(2, 3))).toBe("2 of 3 (95 % interval 21 % to 94 %)");
    // Only the interval's ends carry a percent sign.
    for (let of = 1; of < 20; of += 1) expect(shareText(shareOf(1, of)).split("%")).toHaveLength(4);
  });
  it("may name its percentage from twenty on, never without the interval", () => {
    expect(shareText(shareOf(5, 20))).toBe("5 of 20, 25 % (95 % interval 11 % to 47 %)");
  });
});
