import type { ImperfectionId } from "@/lib/trade";
import type { CauseId } from "@/lib/diagnose/cause-ids";

/** Where a row of the link table differs from the document row it comes from, and why. */
export interface LinkNote {
  readonly imperfection: ImperfectionId;
  readonly causes: readonly CauseId[];
  readonly kind: "split" | "re-weighted" | "left out";
  readonly reason: string;
}

export const linkNotes: readonly LinkNote[] = [
  {
    imperfection: "surface-porosity",
    causes: ["contam"],
    kind: "split",
    reason:
      "Self-shielded wire bears light rust and scale that ruin a gas-shielded bead, so it has a weaker row.",
  },
  {
    imperfection: "surface-porosity",
    causes: ["damp-consumable"],
    kind: "split",
    reason:
      "The documents put damp first for covered electrodes only; for wires they name it without a rank.",
  },
  {
    imperfection: "surface-porosity",
    causes: ["no-preflow"],
    kind: "re-weighted",
    reason:
      "It makes pores at the start only, so without that look it is weak; the look at the start brings it forward.",
  },
  {
    imperfection: "surface-porosity",
    causes: ["travel-fast"],
    kind: "re-weighted",
    reason: "Judged: its best document speaks of another process by analogy, and the others of solid wire.",
  },
  {
    imperfection: "wormhole",
    causes: ["contam", "coating"],
    kind: "split",
    reason: "Named together by three documents, each alone by two: judged instead of strong by count.",
  },
  {
    imperfection: "gas-mark",
    causes: ["slag-hot"],
    kind: "left out",
    reason: "One practitioner's remark, doubtful by its own wording, and nothing else bears it out.",
  },
  {
    imperfection: "undercut",
    causes: ["work-angle", "placement"],
    kind: "split",
    reason: "Named together; the documents speak of the angle more often than of the place.",
  },
  {
    imperfection: "undercut",
    causes: ["travel-slow"],
    kind: "re-weighted",
    reason: "Contested: three documents name it, most name the opposite. Weak, for wide sagging beads.",
  },
  {
    imperfection: "lack-of-fusion",
    causes: ["pool-ahead", "travel-slow"],
    kind: "split",
    reason: "The pool ahead is the mechanism; slow travel is one way to it.",
  },
  {
    imperfection: "trapped-slag",
    causes: ["travel-fast"],
    kind: "re-weighted",
    reason: "Contested: slow travel is the stronger cause in all slag processes read about.",
  },
  {
    imperfection: "spatter",
    causes: ["polarity"],
    kind: "re-weighted",
    reason: "Taken for every process: the wrong pole drives drops off whatever the shield.",
  },
  {
    imperfection: "burn-through",
    causes: ["work-angle", "drag-excess"],
    kind: "split",
    reason: "The document says gun angle without saying which; the work angle is the likelier reading.",
  },
  {
    imperfection: "burn-through",
    causes: ["volt-high", "volt-low"],
    kind: "left out",
    reason: "Contested in direction: volts set the width of a bead, and are no lever on penetration.",
  },
  {
    imperfection: "convex-bead",
    causes: ["input-power", "base-cold-thick", "work-lead"],
    kind: "re-weighted",
    reason: "Documented for a cold bead in general, which shows most plainly as a convex one.",
  },
  {
    imperfection: "underfill",
    causes: ["travel-fast", "wfs-low"],
    kind: "re-weighted",
    reason: "Too few passes is not a fault of one bead; too little metal for its length is.",
  },
  {
    imperfection: "temper-colour",
    causes: ["gas-low", "draft", "ctwd-long", "travel-fast"],
    kind: "split",
    reason: "Named together as lost cover; low gas is the one all documents have in mind.",
  },
  {
    imperfection: "longitudinal-crack",
    causes: ["bead-shape"],
    kind: "re-weighted",
    reason:
      "Both concave and over-convex faces are blamed; concave is better supported and has its own causes.",
  },
];
