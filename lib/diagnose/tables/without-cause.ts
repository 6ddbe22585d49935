import type { ImperfectionId } from "@/lib/trade";

/**
 * Imperfections that no setting and no movement of the arc leaves: tools, measuring and handling do. Each has the
 * sentence that is said instead of a cause. All of it common practice, no source.
 */
export const withoutCause: Partial<Readonly<Record<ImperfectionId, string>>> = {
  "missing-length":
    "no setting leaves a weld short. Measure and mark both ends before striking the arc; whether and how the rest is welded on, drawing and procedure say.",
  "torn-surface":
    "it was torn when something was knocked off the plate, not left by the arc. Cut attachments off above the plate and grind the rest, instead of breaking them away.",
  "grinding-mark": "the disc made it, not the arc. A finer disc and a lighter, flatter hand leave less.",
  "chipping-mark":
    "hammer or chisel made it, not the arc. Strike the slag and not the plate; where slag needs heavy blows, mark it as hard to remove, and that has causes.",
  "wide-root-gap":
    "it was there before the arc. Draw the plates together and tack again; where a gap stays, the leg is laid larger by as much, as drawing and code say.",
  underflushing:
    "too much was ground away afterwards; the welding did not do it. Stop at flush and lay a straight edge across; how thin the plate may become, the governing code says.",
};
