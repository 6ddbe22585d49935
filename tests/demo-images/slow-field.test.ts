import { describe, expect, it } from "vitest";
import { fractalNoise2 } from "@/demo-images/noise/noise";
import { createSlowField } from "@/demo-images/noise/slow-field";

const field = (x: number, y: number): number => fractalNoise2(x * 0.12, y * 0.1, 9, 4);

describe("a field read off a lattice", () => {
  it("differs from the field by less than a hundredth of its range where its finest octave is eight cells wide", () => {
    const slow = createSlowField(0.12, field);
    let worst = 0;
    for (let i = 0; i < 4000; i++) {
      const [x, y] = [-60 + ((i * 37.7) % 121), -40 + ((i * 17.3) % 79)];
      worst = Math.max(worst, Math.abs(slow(x, y) - field(x, y)));
    }
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThan(0.02);
  });

  it("depends on the place alone, not on what was asked before", () => {
    const [a, b] = [createSlowField(0.2, field), createSlowField(0.2, field)];
    b(50, 50);
    b(-50, 3);
    expect(a(1.23, -4.56)).toBe(b(1.23, -4.56));
  });
});
