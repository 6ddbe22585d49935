import { paintLackOfFusion, type LackOfFusionOptions } from "./lack-of-fusion";
import {
  paintArcStrike,
  paintClampMark,
  paintWireStub,
  type ArcStrikeOptions,
  type ClampMarkOptions,
  type WireStubOptions,
} from "./marks-on-plate";
import { paintBurnback, type BurnbackOptions } from "./burnback";
import { paintBurnThrough, type BurnThroughOptions } from "./burn-through";
import {
  paintCraterCrack,
  paintLongitudinalCrack,
  paintTransverseCrack,
  type CraterCrackOptions,
  type LongitudinalCrackOptions,
  type TransverseCrackOptions,
} from "./crack";
import {
  paintBranchingCrack,
  paintCrackGroup,
  paintRadiatingCrack,
  paintToeCrack,
  type BranchingCrackOptions,
  type CrackGroupOptions,
  type RadiatingCrackOptions,
  type ToeCrackOptions,
} from "./crack-kinds";
import type { SceneDraft } from "./draft";
import { paintInclusion, type InclusionOptions } from "./inclusions";
import { paintIrregularSurface, type IrregularSurfaceOptions } from "./irregular-surface";
import { paintMissingLength, type MissingLengthOptions } from "./missing-length";
import { paintOverlap, type OverlapOptions } from "./overlap";
import { paintCraterPipe, paintPorosity, type PorosityOptions } from "./pore";
import { paintSagging, type SaggingOptions } from "./sagging";
import { paintIsland, paintSlagLine, paintStuckSlag, type IslandOptions, type SlagLineOptions } from "./slag";
import { recordOpenCrater, recordPoorStart, recordRootStretch, type RootStretch } from "./shape-faults";
import { paintSoot, type SootOptions } from "./soot";
import { paintSpatter, type SpatterOptions } from "./spatter";
import { paintSteepToe, type SteepToeOptions } from "./steep-toe";
import { recordTemperColour } from "./temper-colour";
import {
  paintChippingMarks,
  paintGrindingMark,
  type ChippingMarksOptions,
  type GrindingMarkOptions,
} from "./tool-marks";
import { paintTornSurface, type TornSurfaceOptions } from "./torn-surface";
import { paintUnderflushing, type UnderflushingOptions } from "./underflushing";
import { paintUndercut, type UndercutOptions } from "./undercut";
import { recordWholeBead, type WholeBead } from "./whole-bead";
import { paintWideRootGap, type WideRootGapOptions } from "./wide-root-gap";
import { paintGasMarks, paintWormholes, type GasTrackOptions } from "./wormhole";

/** What each kind needs to be told. */
interface FaultOptions {
  readonly porosity: PorosityOptions;
  readonly wormholes: GasTrackOptions;
  readonly "gas-marks": GasTrackOptions;
  readonly undercut: UndercutOptions;
  readonly overlap: OverlapOptions;
  readonly spatter: SpatterOptions;
  readonly "slag-line": SlagLineOptions;
  readonly "stuck-slag": Omit<IslandOptions, "mask">;
  readonly silicate: Omit<IslandOptions, "mask">;
  readonly "burn-through": BurnThroughOptions;
  readonly "crater-crack": CraterCrackOptions;
  readonly "longitudinal-crack": LongitudinalCrackOptions;
  readonly "transverse-crack": TransverseCrackOptions;
  readonly soot: SootOptions;
  readonly "lack-of-fusion": LackOfFusionOptions;
  readonly "arc-strike": ArcStrikeOptions;
  readonly "wire-stub": WireStubOptions;
  readonly "clamp-mark": ClampMarkOptions;
  readonly "crater-pipe": { readonly diameterMm: number; readonly seed: number };
  readonly "poor-start": { readonly at: "start" | "restart"; readonly lengthMm: number };
  readonly "root-stretch": RootStretch;
  readonly "irregular-surface": IrregularSurfaceOptions;
  readonly sagging: SaggingOptions;
  readonly "steep-toe": SteepToeOptions;
  readonly "toe-crack": ToeCrackOptions;
  readonly "radiating-crack": RadiatingCrackOptions;
  readonly "crack-group": CrackGroupOptions;
  readonly "branching-crack": BranchingCrackOptions;
  readonly "torn-surface": TornSurfaceOptions;
  readonly "grinding-mark": GrindingMarkOptions;
  readonly "chipping-marks": ChippingMarksOptions;
  readonly underflushing: UnderflushingOptions;
  readonly inclusion: InclusionOptions;
  readonly "missing-length": MissingLengthOptions;
  readonly "wide-root-gap": WideRootGapOptions;
  readonly burnback: BurnbackOptions;
  readonly "open-crater": object;
  readonly "temper-colour": object;
  readonly "bead-shape": WholeBead;
}

type Kind = keyof FaultOptions;

/** What can be put into a scene, in the order it is painted. */
export type Fault = { readonly [K in Kind]: { readonly kind: K } & FaultOptions[K] }[Kind];

const painters: { readonly [K in Kind]: (draft: SceneDraft, options: FaultOptions[K]) => void } = {
  porosity: paintPorosity,
  wormholes: paintWormholes,
  "gas-marks": paintGasMarks,
  undercut: paintUndercut,
  overlap: paintOverlap,
  spatter: paintSpatter,
  "slag-line": paintSlagLine,
  "stuck-slag": paintStuckSlag,
  silicate: (draft, options) => void paintIsland(draft, { ...options, mask: "silicate" }),
  "burn-through": paintBurnThrough,
  "crater-crack": paintCraterCrack,
  "longitudinal-crack": paintLongitudinalCrack,
  "transverse-crack": paintTransverseCrack,
  soot: paintSoot,
  "lack-of-fusion": paintLackOfFusion,
  "arc-strike": paintArcStrike,
  "wire-stub": paintWireStub,
  "clamp-mark": paintClampMark,
  "crater-pipe": (draft, { diameterMm, seed }) => paintCraterPipe(draft, diameterMm, seed),
  "poor-start": (draft, { at, lengthMm }) => recordPoorStart(draft, at, lengthMm),
  "root-stretch": recordRootStretch,
  "irregular-surface": paintIrregularSurface,
  sagging: paintSagging,
  "steep-toe": paintSteepToe,
  "toe-crack": paintToeCrack,
  "radiating-crack": paintRadiatingCrack,
  "crack-group": paintCrackGroup,
  "branching-crack": paintBranchingCrack,
  "torn-surface": paintTornSurface,
  "grinding-mark": paintGrindingMark,
  "chipping-marks": paintChippingMarks,
  underflushing: paintUnderflushing,
  inclusion: paintInclusion,
  "missing-length": paintMissingLength,
  "wide-root-gap": paintWideRootGap,
  burnback: paintBurnback,
  "open-crater": recordOpenCrater,
  "temper-colour": recordTemperColour,
  "bead-shape": recordWholeBead,
};

export function paintFault(draft: SceneDraft, fault: Fault): void {
  const paint = painters[fault.kind] as (draft: SceneDraft, options: Fault) => void;
  paint(draft, fault);
}
