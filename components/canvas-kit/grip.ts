import type { PhotoPoint } from "@/lib/marks";

/**
 * What a press took hold of. Decided once, at the press; a long press turns "stretch" into "place". `Held` is what
 * else there is to take hold of on one canvas: the handle of a point, a whole mark.
 */
export type Grip<Held extends HeldThing = never> =
  | { readonly kind: "pan" }
  /** The point follows the finger and is set on release. */
  | { readonly kind: "place" }
  /** The press point is set; the drag gives what the tool in hand makes of it. */
  | { readonly kind: "stretch" }
  | Held;

export interface HeldThing {
  readonly kind: "handle" | "mark";
}

/** A drag so far, photo pixels. */
export interface PhotoDrag {
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
  /** Every place the pointer has been, first to last. */
  readonly trail: readonly PhotoPoint[];
}
