/**
 * The reader's weights and what was found about them on pictures kept back from training for that; their lineage and card
 * lie beside them. All widths are the bead's own.
 */
export const reader = {
  version: "2",
  file: "reader-2.onnx",
  sha256: "ac044bf431d44404c8091734099971100ccf4054759f2cf3826521677d5980a0",
  /** About the line within which an answer counts as being for it. */
  reachWidths: 0.08,
  /** Factor on the spread, the least there is, and what an answer that is in doubt adds. */
  sigmaFactor: 1,
  leastSigmaWidths: 0.004,
  doubtWidths: 0.2,
  /** Stations this near an end are in no figure. */
  endWidths: 0.75,
  /**
   * What all widths of one picture have wrong together. Widened from 0.05 on 2026-11-26, when four of 23 means on pictures
   * kept apart lay up to 12 % off, all of a cold lap: so those pictures prove nothing of it any more. Own estimate.
   */
  commonWidthSigma: 0.07,
  /** A toe is drawn solid from here up. */
  solidFrom: 0.6,
  /** Of 100 pictures kept for this, 99 have a median above it: below, the whole is a guess. */
  usualSure: 0.965,
} as const;

/** The finder's weights: a map of where beads lie on a whole photo. */
export const finder = {
  version: "1",
  file: "finder-1.onnx",
  sha256: "06328419e7d2b3b4aabee0192355ee5bcb4e8cf4b1aad6bba31328cdd6296520",
} as const;

/** The weights that find holes and spatter, and from how sure on they are suggested, settled on pictures of the calibration. */
export const spots = {
  version: "1",
  file: "spots-1.onnx",
  sha256: "49c20875dce7f3518a03edef6bb1c9361d7133c43dcee522dc43e07f8aef1c92",
  holeFrom: 0.34,
  spatterFrom: 0.46,
  /** Smaller ones are not suggested, pixels as read. */
  leastAcrossPx: 9,
} as const;
