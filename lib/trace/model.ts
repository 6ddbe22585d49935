/**
 * The reader's weights and what was found about them on pictures kept back from training for that; their lineage and card
 * lie beside them. All widths are the bead's own.
 */
export const reader = {
  version: "1",
  file: "reader-1.onnx",
  sha256: "",
  /** About the line within which an answer counts as being for it. */
  reachWidths: 0.08,
  /** Factor on the spread, and what an answer that is in doubt adds. */
  sigmaFactor: 1,
  leastSigmaWidths: 0.004,
  doubtWidths: 0.2,
  /** Stations this near an end are in no figure. */
  endWidths: 0.75,
  /** A toe is drawn solid from here up. */
  solidFrom: 0.6,
  /** Standard deviation of the mean width about the true one, from picture to picture. */
  meanWidthSigma: 0.01,
} as const;
