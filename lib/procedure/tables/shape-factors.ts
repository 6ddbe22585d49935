import { cite, type Joint } from "@/lib/trade";

type Span = readonly [low: number, high: number];
interface Factors {
  /** F2, for thin plate. */
  readonly thin: Span;
  /** F3, for thick plate. */
  readonly thick: Span;
}

const bead: Factors = { thin: [1, 1], thick: [1, 1] };
const butt: Factors = { thin: [0.9, 0.9], thick: [0.9, 0.9] };
const corner: Factors = { thin: [0.67, 0.9], thick: [0.67, 0.67] };
const tee: Factors = { thin: [0.45, 0.67], thick: [0.67, 0.67] };

/** How a joint draws heat off, against a bead on plate. A lap is taken to lie anywhere between the fillets. */
export const shapeFactors: Readonly<Record<Joint, Factors>> = {
  "bead-on-plate": bead,
  "stringer-pad": bead,
  lap: { thin: [tee.thin[0], corner.thin[1]], thick: tee.thick },
  tee,
  "outside-corner": corner,
  "butt-open": butt,
  "butt-backed": butt,
  "groove-open": butt,
  "groove-backed": butt,
};

export const coolingSource = cite("en-1011-2", "memory", {
  clause: "annex D",
  note: "formulas read in a steelmaker's handbook, joint factors from memory; check your copy",
});
