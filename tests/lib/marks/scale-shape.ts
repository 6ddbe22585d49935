import type { MarkShapeData } from "@/lib/marks";

/** The same mark in a photo k times as large: every length of it times k. */
export function scaleShape(shape: MarkShapeData, k: number): MarkShapeData {
  const times = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x: x * k, y: y * k });
  if (shape.kind !== "point") return { ...shape, points: shape.points.map(times) };
  return { ...shape, at: times(shape.at), radius: shape.radius === null ? null : shape.radius * k };
}
