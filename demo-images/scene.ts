import type { RunSetup } from "@/lib/setup";
import type { Bench } from "./materials/bench";
import type { PlateLook } from "./materials/plate-look";
import type { WeldLook } from "./materials/weld-material";
import type { Lighting } from "./light/lamp";
import type { BeadShape } from "./geometry/bead";
import type { Profile } from "./geometry/profile";
import type { GridArea } from "./field/height-grid";
import type { Fault } from "./imperfections/paint-fault";
import type { Placement } from "./scale-objects/place-object";
import type { ScaleObjectKind } from "./scale-objects/scale-object";
import type { StreetLook } from "./street/street-look";

export interface ScenePose {
  readonly target: readonly [number, number];
  readonly distanceMm: number;
  readonly fieldWidthMm: number;
  readonly tiltDeg: number;
  readonly azimuthDeg: number;
  readonly rollDeg: number;
  /** Width to height of the picture. */
  readonly aspect: number;
}

export interface SceneSpec {
  readonly title: string;
  readonly setup: RunSetup;
  readonly profile: Profile;
  /** Extent of the plates in the plan frame, mm. */
  readonly area: GridArea;
  readonly thicknessMm: number;
  readonly plate: PlateLook;
  readonly weld: WeldLook;
  readonly beads: readonly BeadShape[];
  readonly faults: readonly Fault[];
  readonly bench: Bench;
  readonly lighting: Lighting;
  readonly lightTurnDeg: number;
  readonly scaleObject: {
    readonly kind: ScaleObjectKind;
    /** Which plate it lies on: the one towards -y or +y. */
    readonly side: "left" | "right";
    readonly placement: Placement;
    /** Graduated length of a rule or diameter of a disc, mm; ignored by the others. */
    readonly sizeMm: number;
  } | null;
  readonly pose: ScenePose;
  readonly exposureEv: number;
  /** What a training scene has besides; the demo set has none of it. */
  readonly street?: StreetLook;
}
