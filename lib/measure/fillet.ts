import { issue } from "@/lib/base";
import type { MeasureIssue, Quantity } from "./types";

/** How a camera looks at a fillet from above. */
export const filletViews = ["along-bisector", "square-to-plate"] as const;
export type FilletView = (typeof filletViews)[number];

export interface FilletFromAbove {
  readonly leg: Quantity;
  /** Always there: a leg off a plan view is foreshortened and no substitute for a gauge. */
  readonly issues: readonly MeasureIssue[];
}

/** How unequal two legs may be without a plan view showing it. Own estimate, relative, k = 1. */
const UNEQUAL_LEGS = 0.1;

/**
 * Leg of a fillet from its toe-to-toe width. Seen along the bisector of a 90 degree joint with equal legs the width is
 * sqrt(2) z. Seen square to one plate, the width is the leg on that plate and the other leg does not show at all.
 */
export function legFromWidth(width: Quantity, view: FilletView): FilletFromAbove {
  const share = view === "along-bisector" ? Math.SQRT1_2 : 1;
  const assumed = view === "along-bisector" ? UNEQUAL_LEGS * width.value * share : 0;
  return {
    leg: {
      ...width,
      value: width.value * share,
      expandedUncertainty: Math.hypot(width.expandedUncertainty * share, 2 * assumed),
      budget: [
        ...width.budget.map((entry) => ({ ...entry, u: entry.u * share })),
        ...(assumed > 0 ? [{ part: "tilt" as const, u: assumed }] : []),
      ],
    },
    issues: [issue("foreshortened")],
  };
}
