import type { BeadProfile } from "@/lib/trace";

/** The figures of an accepted profile as numbers, for tables and machines: mm and shares, U with k = 2; null: not read. */
export interface ProfileFigures {
  readonly meanWidthMm: number;
  readonly meanWidthUMm: number;
  /** Standard deviation of the width over its mean; the reading's own scatter is in it. */
  readonly widthSpread: number;
  /** Greatest difference of the width within 25 mm, and what the reading's own scatter may make of an even bead. */
  readonly worst25Mm: number | null;
  readonly worst25DoubtMm: number | null;
  readonly offStraightMm: number;
  readonly offStraightUMm: number;
  /** Share of the length on which both toes are sure. */
  readonly sureShare: number;
}

const thousandths = (value: number): number => Math.round(1000 * value) / 1000;

export function profileFigures(profile: BeadProfile): ProfileFigures {
  const { mean, spread, worst25, offStraight, sureShare } = profile;
  return {
    meanWidthMm: thousandths(mean.value),
    meanWidthUMm: thousandths(mean.expandedUncertainty),
    widthSpread: thousandths(spread),
    worst25Mm: worst25 && thousandths(worst25.differenceMm),
    worst25DoubtMm: worst25 && thousandths(worst25.doubtMm),
    offStraightMm: thousandths(offStraight.value),
    offStraightUMm: thousandths(offStraight.expandedUncertainty),
    sureShare: thousandths(sureShare),
  };
}
