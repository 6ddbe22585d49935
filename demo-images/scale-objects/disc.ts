import { noise1 } from "../noise/noise";
import type { ScaleObject } from "./scale-object";

export const DISC_CODE = 3;

/** A plain turned disc of stated diameter with a small chamfer; no coin of any country. */
export function createDisc(diameterMm: number): ScaleObject {
  const radius = diameterMm / 2;
  return {
    kind: "disc",
    lengthMm: diameterMm,
    widthMm: diameterMm,
    thicknessMm: 2,
    code: DISC_CODE,
    cover: (a, b, step) => Math.min(1, Math.max(0, 0.5 - (Math.hypot(a, b) - radius) / step)),
    ink: () => 0,
    relief(a, b) {
      const r = Math.hypot(a, b);
      return 0.0022 * noise1(r * 6, 73) + 0.0014 * noise1(r * 13, 74);
    },
    keyPoints: [
      { name: "centre", at: [0, 0] },
      ...Array.from({ length: 8 }, (_, i) => ({
        name: `rim ${i * 45} deg`,
        at: [radius * Math.cos((i * Math.PI) / 4), radius * Math.sin((i * Math.PI) / 4)] as const,
      })),
    ],
    sizes: { diameterMm },
  };
}
