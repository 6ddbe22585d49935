import type { Point } from "@/lib/geometry";

/**
 * A drawing as plain shapes. Positions and radii are photo pixels. Everything that must look the same at every zoom
 * (line widths, dashes, ticks, badges, offsets of text) is in screen units: on screen one unit is one CSS pixel, on
 * the sheet the painter says how many units the picture is wide. Styles are tokens; painters own the colours.
 */
export type SceneInk = "gas" | "shape" | "fusion" | "crack" | "slag" | "surface" | "guide";

/** What a shape belongs to. */
export type SceneRole = "mark" | "scale" | "weld-line" | "toes" | "section";

export interface Stroke {
  readonly ink: SceneInk;
  /** Screen units. */
  readonly width: number;
  /** On, off, on, off ... in screen units, round ends. Empty: unbroken. */
  readonly dash: readonly number[];
}

interface Common {
  /** Unique within the scene and stable while the drawing changes elsewhere. */
  readonly key: string;
  readonly role: SceneRole;
  /** The mark it belongs to; null for scale, weld line and section. */
  readonly markId: string | null;
}

/** An open line through at least two points. */
export interface SceneLine extends Common {
  readonly kind: "line";
  readonly points: readonly Point<"photo">[];
  readonly stroke: Stroke;
}

/** A closed line through at least three points. */
export interface SceneOutline extends Common {
  readonly kind: "outline";
  readonly points: readonly Point<"photo">[];
  readonly stroke: Stroke;
}

/** A circle whose size was drawn. */
export interface SceneRing extends Common {
  readonly kind: "ring";
  readonly at: Point<"photo">;
  /** Photo pixels. */
  readonly radius: number;
  readonly stroke: Stroke;
}

/** A spot without a size: a cross in a circle, the same on every zoom. */
export interface SceneSpot extends Common {
  readonly kind: "spot";
  readonly at: Point<"photo">;
  /** Screen units. */
  readonly radius: number;
  readonly stroke: Stroke;
}

/** A short bar across a line's end. */
export interface SceneTick extends Common {
  readonly kind: "tick";
  readonly at: Point<"photo">;
  /** Unit vector along the line, pointing out of its end; the bar stands across it. */
  readonly along: Point<"photo">;
  /** Whole length of the bar, screen units. */
  readonly length: number;
  /** "start" is a single bar, "crater" a bar with a dish behind it, "measure" the end of a scale. */
  readonly end: "start" | "crater" | "measure";
  readonly stroke: Stroke;
}

/** The number of a mark, alone: a letter behind it would read as a test position (1G, 2F). */
export interface SceneBadge extends Common {
  readonly kind: "badge";
  readonly at: Point<"photo">;
  /** From `at` to the badge's middle, screen units. */
  readonly offset: Point<"view">;
  readonly number: number;
  readonly ink: SceneInk;
}

/** A few words beside a badge or a guide; their middle at the height of `at` plus `offset`. */
export interface SceneLabel extends Common {
  readonly kind: "label";
  readonly at: Point<"photo">;
  /** From `at` to the end of the text nearest to it, screen units. */
  readonly offset: Point<"view">;
  /** The side of the anchor the text stands on. */
  readonly side: "left" | "middle" | "right";
  readonly text: string;
}

export type SceneShape =
  | SceneLine
  | SceneOutline
  | SceneRing
  | SceneSpot
  | SceneTick
  | SceneBadge
  | SceneLabel;

/** Colours of one ink, as CSS colours. */
export interface InkColours {
  readonly line: string;
  /** Laid under the line, a little wider, so that it reads on dark scale and on bright ripples. */
  readonly casing: string;
  /** Text on a badge filled with the line colour. */
  readonly onLine: string;
}

/** What turns tokens into colours; owned by whoever paints. */
export interface ScenePalette {
  readonly inks: Readonly<Record<SceneInk, InkColours>>;
  readonly text: string;
  readonly halo: string;
}
