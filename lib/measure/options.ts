import type { MeasureOptions } from "./types";

/**
 * What is assumed when nothing is said. Own estimates, each open to replacement by the caller; the coverage study
 * (`npm run -s study`) says how they hold up on rendered photographs.
 */
export const defaultMeasureOptions: MeasureOptions = {
  /** A careful finger or mouse on a sharp edge, after zooming in. */
  pickSigmaPx: 1.5,
  photoPxPerViewPx: 1,
  photo: null,
  /** 0.2 mm on 100 mm: a steel rule, an ID-1 card or a coin in circulation. */
  statedLengthRelativeU: 0.002,
  /** The scale lies on the plate, the mark on the face of the bead. */
  heightHalfWidthMm: 2,
  cameraDistanceMm: null,
  /** Held square to the plate by eye. */
  tiltSigmaDeg: 5,
  /** What is left after a phone has straightened its own picture. */
  lensCornerRelativeU: 0.003,
};

/**
 * However far the view is zoomed in, the picture itself shows an edge no finer than this many photo pixels per pixel of
 * error: with the stated 1.5, half a photo pixel. Own estimate.
 */
export const finestGrainPx = 1 / 3;

/** Focal length of an ordinary phone's main camera as a share of the picture's long side: 26 mm on a 36 mm frame. Common practice, no source. */
export const phoneFocalShare = 26 / 36;

/** How well that is known: main cameras run from about 23 to 29 mm. Relative, k = 1; own estimate. */
export const focalRelativeU = 0.1;

/** Camera to weld when neither a distance nor the photo's size is known. */
export const usualCameraDistanceMm = 250;

/** A scale less certain than this (relative, k = 1) is refused: the figures would be no better than a guess by eye. */
export const worstScaleRelativeU = 0.1;
