/**
 * The reader's weights and what was found about them on pictures kept back from training for that; their lineage and card
 * lie beside them. All widths are the bead's own.
 */
export const reader = {
  version: "1",
  file: "reader-1.onnx",
  sha256: "882b70e815cac6cf8017089fd395a6738037a8284c1d452f7b99c26dc3975f01",
  /** About the line within which an answer counts as being for it. */
  reachWidths: 0.08,
  /** Factor on the spread, the least there is, and what an answer that is in doubt adds. */
  sigmaFactor: 1,
  leastSigmaWidths: 0.004,
  doubtWidths: 0.2,
  /** Stations this near an end are in no figure. */
  endWidths: 0.75,
  /**
   * What all widths of one picture have wrong together. Pictures kept for this show half as much; joints it was never
   * trained on, and slag along a toe, more. Own estimate.
   */
  commonWidthSigma: 0.05,
  /** A toe is drawn solid from here up. */
  solidFrom: 0.6,
  /** Of 100 pictures kept for this, 99 have a median above it: below, the whole is a guess. */
  usualSure: 0.965,
} as const;
