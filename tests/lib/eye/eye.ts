import type { EyeBead } from "@/lib/eye";

type Fault = EyeBead["faults"][number];

/** A square of `side` pixels about a spot, closed. */
export const squareAt = (x: number, y: number, side: number): Fault["outlinePx"] => [
  [x - side / 2, y - side / 2],
  [x + side / 2, y - side / 2],
  [x + side / 2, y + side / 2],
  [x - side / 2, y + side / 2],
];

export const fault = (kind: Fault["kind"], x: number, y: number, more: Partial<Fault> = {}): Fault => ({
  kind,
  place: "face",
  whole: false,
  outlinePx: squareAt(x, y, 40),
  sizes: { lengthMm: 10, depthMm: 0.9 },
  alongMm: [10, 20],
  ...more,
});

/** A tee of 8 mm plate, 1000 by 750 pixels, with these faults. */
export const drawnBead = (faults: readonly Fault[], more: Partial<EyeBead> = {}): EyeBead => ({
  id: "plain-test",
  scenario: "test",
  look: "plain",
  widthPx: 1000,
  heightPx: 750,
  joint: "tee",
  thicknessMm: 8,
  lengthMm: 100,
  faults: [...faults],
  ...more,
});
