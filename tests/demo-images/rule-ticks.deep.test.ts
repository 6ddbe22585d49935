import { describe, expect, it } from "vitest";
import { renderScene } from "@/demo-images";
import { distance, greyAt } from "./picture";

/* Everything here is found in the pixels; the truth file is only what the finding is compared with. */

describe("a steel rule's ticks are found at their true pitch", () => {
  it("shows 1 mm and 1/16 inch (25.4 mm / 16, the international inch of 1959) by their strongest repeat", () => {
    const picture = renderScene({
      scenario: "stringer-ropey",
      megapixels: 1,
      quality: "exact-draft",
      seed: 2,
      tiltDeg: 0,
      fieldWidthMm: 122,
      distortion: 0,
    });
    const object = picture.truth.scaleObject!;
    const [first, last] = [object.keyPoints[1]!, object.keyPoints[8]!];
    const perMm = distance(first.px, last.px) / 70;
    const across = [
      (last.px[1] - first.px[1]) / distance(first.px, last.px),
      -(last.px[0] - first.px[0]) / distance(first.px, last.px),
    ];
    const readLine = (offsetMm: number): number[] =>
      Array.from({ length: 2801 }, (_, i) => {
        const t = i / 2800;
        return greyAt(
          picture,
          first.px[0] + (last.px[0] - first.px[0]) * t + across[0]! * offsetMm * perMm,
          first.px[1] + (last.px[1] - first.px[1]) * t + across[1]! * offsetMm * perMm,
        );
      });
    // Strength of a repeating darkness of the given pitch, by its Fourier coefficient.
    const strength = (line: readonly number[], pitchMm: number): number => {
      let [re, im] = [0, 0];
      line.forEach((level, i) => {
        const phase = (2 * Math.PI * (i / 2800) * 70) / pitchMm;
        re += level * Math.cos(phase);
        im += level * Math.sin(phase);
      });
      return Math.hypot(re, im);
    };
    const bestPitch = (line: readonly number[], around: number): number => {
      const candidates = Array.from({ length: 161 }, (_, i) => around * (0.96 + i * 0.0005));
      return candidates.reduce((best, pitch) =>
        strength(line, pitch) > strength(line, best) ? pitch : best,
      );
    };
    expect(bestPitch(readLine(1.5), 1.01)).toBeCloseTo(1, 2);
    expect(bestPitch(readLine(17.6), 1.6)).toBeCloseTo(25.4 / 16, 2);
  });
});
