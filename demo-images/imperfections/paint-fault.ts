import { paintLackOfFusion, type LackOfFusionOptions } from "./lack-of-fusion";
import { paintArcStrike, paintWireStub, type ArcStrikeOptions, type WireStubOptions } from "./marks-on-plate";
import { paintBurnThrough, type BurnThroughOptions } from "./burn-through";
import { paintCraterCrack, paintLongitudinalCrack, paintTransverseCrack } from "./crack";
import type { ImperfectionId } from "@/lib/trade";
import type { PlanPoint, SceneDraft } from "./draft";
import { paintOverlap, type OverlapOptions } from "./overlap";
import { paintCraterPipe, paintPorosity, type PorosityOptions } from "./pore";
import { paintIsland, paintSlagLine, paintStuckSlag, type IslandOptions } from "./slag";
import {
  recordBand,
  recordOpenCrater,
  recordPoorStart,
  recordRootStretch,
  type RootStretch,
  recordTemperColour,
} from "./shape-faults";
import { paintSoot, type SootOptions } from "./soot";
import { paintSpatter, type SpatterOptions } from "./spatter";
import { paintUndercut, type UndercutOptions } from "./undercut";
import { paintGasMarks, paintWormholes, type GasTrackOptions } from "./wormhole";

/** What can be put into a scene, in the order it is painted. */
export type Fault =
  | ({ readonly kind: "porosity" } & PorosityOptions)
  | ({ readonly kind: "wormholes" } & GasTrackOptions)
  | ({ readonly kind: "gas-marks" } & GasTrackOptions)
  | ({ readonly kind: "undercut" } & UndercutOptions)
  | ({ readonly kind: "overlap" } & OverlapOptions)
  | ({ readonly kind: "spatter" } & SpatterOptions)
  | {
      readonly kind: "slag-line";
      readonly path: readonly PlanPoint[];
      readonly widthMm: number;
      readonly seed: number;
    }
  | ({ readonly kind: "stuck-slag" } & Omit<IslandOptions, "mask">)
  | ({ readonly kind: "silicate" } & Omit<IslandOptions, "mask">)
  | ({ readonly kind: "burn-through" } & BurnThroughOptions)
  | {
      readonly kind: "crater-crack";
      readonly arms: number;
      readonly lengthMm: number;
      readonly widthMm: number;
      readonly seed: number;
    }
  | {
      readonly kind: "longitudinal-crack";
      readonly fromMm: number;
      readonly toMm: number;
      readonly widthMm: number;
      readonly seed: number;
    }
  | {
      readonly kind: "transverse-crack";
      readonly xMm: number;
      readonly widthMm: number;
      readonly seed: number;
    }
  | ({ readonly kind: "soot" } & SootOptions)
  | ({ readonly kind: "lack-of-fusion" } & LackOfFusionOptions)
  | ({ readonly kind: "arc-strike" } & ArcStrikeOptions)
  | ({ readonly kind: "wire-stub" } & WireStubOptions)
  | { readonly kind: "crater-pipe"; readonly diameterMm: number; readonly seed: number }
  | { readonly kind: "poor-start"; readonly lengthMm: number }
  | ({ readonly kind: "root-stretch" } & RootStretch)
  | { readonly kind: "open-crater" }
  | { readonly kind: "temper-colour"; readonly reachMm: number; readonly seed: number }
  | {
      readonly kind: "bead-shape";
      readonly id: ImperfectionId;
      readonly sizes: Record<string, number>;
      readonly fromMm?: number;
      readonly toMm?: number;
    };

export function paintFault(draft: SceneDraft, fault: Fault): void {
  switch (fault.kind) {
    case "porosity":
      return paintPorosity(draft, fault);
    case "wormholes":
      return paintWormholes(draft, fault);
    case "gas-marks":
      return paintGasMarks(draft, fault);
    case "undercut":
      return paintUndercut(draft, fault);
    case "overlap":
      return paintOverlap(draft, fault);
    case "spatter":
      return paintSpatter(draft, fault);
    case "slag-line":
      return paintSlagLine(draft, fault);
    case "stuck-slag":
      return paintStuckSlag(draft, fault);
    case "silicate":
      paintIsland(draft, { ...fault, mask: "silicate" });
      return;
    case "burn-through":
      return paintBurnThrough(draft, fault);
    case "crater-crack":
      return paintCraterCrack(draft, fault);
    case "longitudinal-crack":
      return paintLongitudinalCrack(draft, fault);
    case "transverse-crack":
      return paintTransverseCrack(draft, fault);
    case "soot":
      return paintSoot(draft, fault);
    case "lack-of-fusion":
      return paintLackOfFusion(draft, fault);
    case "arc-strike":
      return paintArcStrike(draft, fault);
    case "wire-stub":
      return paintWireStub(draft, fault);
    case "crater-pipe":
      return paintCraterPipe(draft, fault.diameterMm, fault.seed);
    case "poor-start":
      return recordPoorStart(draft, fault.lengthMm);
    case "root-stretch":
      return recordRootStretch(draft, fault);
    case "open-crater":
      return recordOpenCrater(draft);
    case "temper-colour":
      return recordTemperColour(draft, fault.reachMm);
    case "bead-shape":
      return recordBand(draft, fault.id, 0, fault.sizes, fault);
  }
}
