import type { ScalePickKind } from "@/components/canvas";

/** Things a scale can be picked from, by the way they are picked. */
export interface ScaleObject {
  readonly kind: ScalePickKind;
  readonly name: string;
  readonly how: string;
}

export const scaleObjects: readonly ScaleObject[] = [
  { kind: "two-points", name: "Two points on a rule", how: "Quickest. It cannot see the camera's tilt." },
  {
    kind: "edges",
    name: "Bank-size card",
    how: "Two points on each straight edge, not on the round corners.",
  },
  { kind: "disc", name: "Round disc", how: "Five points or more on its rim, spread all round." },
  { kind: "rectangle", name: "Rectangle", how: "Its four corners, going round. You type both sides." },
];
