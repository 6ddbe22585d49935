export const finishes = ["mill-scale", "ground", "brushed", "stainless"] as const;
export type Finish = (typeof finishes)[number];

/** What a plate looks like before anything is welded on it. */
export interface PlateLook {
  readonly finish: Finish;
  readonly seed: number;
  /** Width of the heat band beside the weld, mm. */
  readonly heatBandMm: number;
  /** 0 a clean shop, 1 a plate that lay outside. */
  readonly rust: number;
  /** Half-width of a strip ground bright along the joint, mm; 0 none. */
  readonly groundStripMm: number;
}
