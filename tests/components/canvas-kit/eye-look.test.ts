import { describe, expect, it } from "vitest";
import { asTaken, eyeFilter, eyeLookLimits, isAsTaken } from "@/components/canvas-kit/eye-look";

describe("the view for the eye", () => {
  it("asks for no filter at all where the photo is shown as taken", () => {
    expect(isAsTaken(asTaken)).toBe(true);
    expect(eyeFilter(asTaken)).toBe("");
  });

  it("asks for what was changed and for nothing else", () => {
    expect(eyeFilter({ ...asTaken, brightness: 1.4 })).toBe("brightness(1.4)");
    expect(eyeFilter({ ...asTaken, detail: 0.5 })).toBe("url(#photo-detail)");
    expect(eyeFilter({ brightness: 2, contrast: 1.5, detail: 1 })).toBe(
      "brightness(2) contrast(1.5) url(#photo-detail)",
    );
    expect(isAsTaken({ ...asTaken, contrast: 1.05 })).toBe(false);
  });

  it("can always go back: what was taken lies within every slider", () => {
    for (const key of ["brightness", "contrast", "detail"] as const) {
      const [least, most] = eyeLookLimits[key];
      expect(least).toBeLessThanOrEqual(asTaken[key]);
      expect(most).toBeGreaterThan(asTaken[key]);
    }
  });
});
