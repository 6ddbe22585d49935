/** What workshops and yards leave on a plate besides the weld; each is nought in the demo set. Lengths in mm. */
export interface StreetLook {
  readonly seed: number;
  /** Dark slag, soot or undercut shade along each toe. */
  readonly toeBands: readonly ToeBand[];
  /** Temper colour with hard edges, from the toe outwards, on one side each. */
  readonly heatBands: readonly HeatBand[];
  /** Depth of pits and cast skin, and the size of the coarsest of them. */
  readonly pitDepthMm: number;
  readonly pitSizeMm: number;
  /** Grains of rust and grit: share of the plate that is peppered. */
  readonly grit: number;
  /** Stains of rust, soot, chalk and worn-off scale a few millimetres across: how strong, and how large. */
  readonly mottle: number;
  readonly mottleMm: number;
  /** Things that look like spatter, slag or cracks and are none. */
  readonly specks: number;
  readonly threads: number;
  readonly stamps: number;
  /** Chalk, paint or paper lying with hard edges on the plate. */
  readonly patches: number;
}

export interface ToeBand {
  readonly side: "left" | "right";
  readonly mask: "slag" | "soot" | "crack";
  /** How far it reaches over the bead and over the plate. */
  readonly insideMm: number;
  readonly outsideMm: number;
  readonly heightMm: number;
  /** 1 unbroken, 0.2 mostly gone. */
  readonly cover: number;
  readonly strength: number;
}

export interface HeatBand {
  readonly side: "left" | "right";
  readonly colour: 0 | 1 | 2 | 3;
  readonly fromMm: number;
  readonly toMm: number;
  readonly strength: number;
}
