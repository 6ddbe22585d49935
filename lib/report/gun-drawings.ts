/** A drawing of a few strokes in its own square of 100 by 100, y down. */
export interface GunDrawing {
  readonly title: string;
  readonly angle: string;
  readonly strokes: readonly Stroke[];
  readonly labels?: readonly { readonly at: readonly [x: number, y: number]; readonly text: string }[];
}

export interface Stroke {
  readonly points: readonly (readonly [x: number, y: number])[];
  /** "plate" is filled, "gun" is heavy, "square" dashed, "arc" fine, "way" the direction of travel, "pass" a pass. */
  readonly kind: "plate" | "gun" | "square" | "arc" | "way" | "pass";
}

const GUN = 58;
const FOOT: readonly [number, number] = [50, 72];

/** A point at a distance from the foot of the arc, `degrees` off straight up, to the right where positive. */
const off = (degrees: number, length: number): readonly [number, number] => [
  FOOT[0] + length * Math.sin((degrees * Math.PI) / 180),
  FOOT[1] - length * Math.cos((degrees * Math.PI) / 180),
];

const arcBetween = (from: number, to: number, radius: number) =>
  Array.from({ length: 13 }, (_, i) => off(from + ((to - from) * i) / 12, radius));

/**
 * The gun from the side, travelling to the right: dragged it points back at the bead, so that its handle leads. Degrees off
 * square.
 */
export function travelDrawing(degrees: number, direction: "drag" | "square" | "push"): GunDrawing {
  const lean = direction === "drag" ? degrees : direction === "push" ? -degrees : 0;
  return {
    title: direction === "drag" ? "Drag" : direction === "push" ? "Push" : "Square",
    angle: `${Math.round(degrees)}°`,
    strokes: [
      {
        kind: "plate",
        points: [
          [4, 74],
          [96, 74],
          [96, 86],
          [4, 86],
        ],
      },
      { kind: "square", points: [FOOT, off(0, GUN)] },
      { kind: "gun", points: [off(lean, 6), off(lean, GUN)] },
      { kind: "arc", points: arcBetween(0, lean, 40) },
      {
        kind: "way",
        points: [
          [60, 94],
          [92, 94],
          [86, 90],
          [92, 94],
          [86, 98],
        ],
      },
    ],
  };
}

/** The gun along the weld: from the first plate in a fillet, from the surface elsewhere. */
export function workDrawing(degrees: number, isFillet: boolean): GunDrawing {
  // The first plate lies flat: an angle from it is its complement off straight up.
  const lean = 90 - degrees;
  const upright = [
    [38, 10],
    [48, 10],
    [48, 74],
    [38, 74],
  ] as const;
  return {
    title: isFillet ? "Work angle, from the lower plate" : "Work angle, from the plate",
    angle: `${Math.round(degrees)}°`,
    strokes: [
      {
        kind: "plate",
        points: [
          [4, 74],
          [96, 74],
          [96, 86],
          [4, 86],
        ],
      },
      ...(isFillet ? [{ kind: "plate" as const, points: upright }] : []),
      { kind: "gun", points: [off(lean, 6), off(lean, GUN)] },
      { kind: "arc", points: arcBetween(90, lean, 34) },
    ],
  };
}
