import type { Plan } from "@/lib/plan";
import { isFillet } from "@/lib/trade";
import type { GunDrawing, Stroke } from "./gun-drawings";

type Corner = readonly [x: number, y: number];
/** One pass as it lies in the section, mm, y up from the lower plate; corners in their order. */
export type PassOutline = readonly Corner[];

/**
 * The passes of a fillet, each with the same share of the metal: one in the root, then layers of one more each, laid from
 * the lower plate to the upper. Corner at nought, legs along the axes, mm.
 */
export function filletPasses(legMm: number, passes: number): readonly PassOutline[] {
  const outlines: PassOutline[] = [];
  for (let layer = 1; outlines.length < passes; layer += 1) {
    const before = legMm * Math.sqrt(outlines.length / passes);
    const many = Math.min(layer, passes - outlines.length);
    const after = legMm * Math.sqrt((outlines.length + many) / passes);
    // Cut in equal parts, the strip between two parallel faces falls into equal areas.
    const on = (leg: number, share: number): Corner => [leg * (1 - share), leg * share];
    for (let i = 0; i < many; i += 1) {
      const [from, to] = [i / many, (i + 1) / many];
      const inner: readonly Corner[] = before === 0 ? [[0, 0]] : [on(before, to), on(before, from)];
      outlines.push([on(after, from), on(after, to), ...inner]);
    }
  }
  return outlines;
}

/** Level layers of a groove, each with the same share of its area; root opening and included angle as planned, mm. */
export function groovePasses(
  { rootMm, includedDeg }: { readonly rootMm: number; readonly includedDeg: number },
  thicknessMm: number,
  passes: number,
): readonly PassOutline[] {
  const slope = Math.tan((includedDeg * Math.PI) / 360);
  const half = (height: number) => rootMm / 2 + height * slope;
  const whole = rootMm * thicknessMm + slope * thicknessMm ** 2;
  /** The height up to which a share of the area lies. */
  const heightOf = (share: number): number =>
    slope === 0
      ? thicknessMm * share
      : (-rootMm + Math.sqrt(rootMm ** 2 + 4 * slope * whole * share)) / (2 * slope);
  return Array.from({ length: passes }, (_, i): PassOutline => {
    const [low, high] = [heightOf(i / passes), heightOf((i + 1) / passes)];
    return [
      [-half(low), low],
      [half(low), low],
      [half(high), high],
      [-half(high), high],
    ];
  });
}

/** Beads beside each other, each a flat parabola that lies on the one before, mm. */
function padPasses(widthMm: number, stepMm: number, beads: number): readonly PassOutline[] {
  return Array.from({ length: beads }, (_, i): PassOutline =>
    Array.from({ length: 13 }, (_, k): Corner => {
      const across = k / 12;
      return [i * stepMm + across * widthMm, 4 * 0.3 * widthMm * across * (1 - across)];
    }),
  );
}

/** The passes of a plan in their order, to scale; null where there is one only. */
export function fillDrawing(plan: Plan): GunDrawing | null {
  const outlines = outlinesOf(plan);
  if (outlines.length < 2) return null;
  const at = fitted(outlines.flat());
  const { joint } = plan.setup;
  return {
    title: "Order of the passes, to scale",
    angle: String(outlines.length),
    strokes: [
      block(2, 78, 98, 86),
      ...(joint !== null && isFillet(joint) ? [block(2, 2, 8, 78)] : []),
      ...outlines.map((outline): Stroke => ({ kind: "pass", points: [...outline, outline[0]!].map(at) })),
    ],
    labels:
      outlines.length > MOST_NUMBERED
        ? []
        : outlines.map((outline, i) => ({ at: at(middleOf(outline)), text: String(i + 1) })),
  };
}

/** From millimetres into the square, above the plate. */
function fitted(points: readonly Corner[]): (point: Corner) => Corner {
  const [left, right] = [Math.min(...points.map(([x]) => x)), Math.max(...points.map(([x]) => x))];
  const scale = Math.min(84 / (right - left), 74 / Math.max(...points.map(([, y]) => y)));
  return ([x, y]) => [8 + (x - left) * scale, 78 - y * scale];
}

const block = (left: number, top: number, right: number, bottom: number): Stroke => ({
  kind: "plate",
  points: [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ],
});

/** More numbers than that lie on top of each other. */
const MOST_NUMBERED = 10;

const middleOf = (outline: PassOutline): Corner => [
  outline.reduce((sum, [x]) => sum + x, 0) / outline.length,
  outline.reduce((sum, [, y]) => sum + y, 0) / outline.length,
];

function outlinesOf({ setup, passes, leg, groove, gives }: Plan): readonly PassOutline[] {
  if (leg !== null) return filletPasses(leg.mm, passes);
  if (groove !== null) return groovePasses(groove, setup.thicknessMm!, passes);
  const value = (code: string) => gives.find((one) => one.code === code)?.value ?? null;
  const [width, step, beads] = [value("bead-width"), value("step-over"), value("passes")];
  return width === null || step === null || beads === null ? [] : padPasses(width, step, beads);
}
