import { commonPractice, type Joint, thicknessLimits } from "@/lib/trade";
import { isPositionOut } from "./position";
import { finding, inOrder, type SetupRule } from "./finding";
import { prequalifiedGrooves } from "./sources";
import { electrodeOf } from "./window-for";

const openRoots: readonly Joint[] = ["butt-open", "groove-open"];
const backedRoots: readonly Joint[] = ["butt-backed", "groove-backed"];

/** A fillet's plates should touch; up to this a pass bridges it, mm. D1.1 takes the rest off the leg from 1/16 in on. */
const FILLET_GAP_MM = 1.6;
/** An open root is wide from here on, mm; in sheet as soon as it is wider than the sheet is thick. Memory. */
const OPEN_ROOT_MM = 4;
/** A backed root is opened on purpose: 1/4 in is a prequalified opening, with the tolerance above it. */
const BACKED_ROOT_MM = 8;
/** Below this the arc cannot reach the edges of a root that is meant to be open, mm. Memory. */
const TIGHT_ROOT_MM = 1;
/** A backed groove is tight below this, mm: the prequalified openings begin at 3/16 in, with 1/16 in below. */
const TIGHT_BACKED_MM = 3.2;

/** For the seal over the tables. */
export const gapLimits = {
  FILLET_GAP_MM,
  OPEN_ROOT_MM,
  BACKED_ROOT_MM,
  TIGHT_ROOT_MM,
  TIGHT_BACKED_MM,
} as const;

/** The widest gap this joint is run with, mm. */
export function widestGapMm(joint: Joint, thicknessMm: number | null): number {
  if (backedRoots.includes(joint)) return BACKED_ROOT_MM;
  return openRoots.includes(joint) ? Math.min(OPEN_ROOT_MM, thicknessMm ?? OPEN_ROOT_MM) : FILLET_GAP_MM;
}

export const gapAgainstJoint: SetupRule = ({ fitUpGapMm, joint, thicknessMm }) => {
  if (fitUpGapMm === null || joint === null) return [];
  const limit = widestGapMm(joint, thicknessMm);
  const said = {
    data: { value: fitUpGapMm, limit, times: fitUpGapMm / limit },
    source: backedRoots.includes(joint) ? prequalifiedGrooves : commonPractice,
  };
  const fields = ["fitUpGapMm", "joint"] as const;
  const tightBelow = backedRoots.includes(joint)
    ? TIGHT_BACKED_MM
    : openRoots.includes(joint)
      ? TIGHT_ROOT_MM
      : 0;
  return [
    fitUpGapMm > limit
      ? finding("gap-wide", "note", [...fields], said)
      : inOrder("gap-wide", [...fields], said),
    ...(fitUpGapMm < tightBelow
      ? [
          finding("root-tight", "note", [...fields], {
            ...said,
            data: { value: fitUpGapMm, limit: tightBelow },
          }),
        ]
      : []),
  ];
};

/** A rod thicker than the plate cannot be aimed into its corner. Own estimate. */
export const rodAgainstPlate: SetupRule = ({ process, electrodeDiameterMm, thicknessMm }) => {
  if (process !== "SMAW" || electrodeDiameterMm === null || thicknessMm === null) return [];
  const said = { data: { value: electrodeDiameterMm, plate: thicknessMm }, source: commonPractice };
  const fields = ["electrodeDiameterMm", "thicknessMm"] as const;
  if (electrodeDiameterMm > thicknessMm) return [finding("rod-against-plate", "note", [...fields], said)];
  return electrodeDiameterMm < 0.6 * thicknessMm ? [inOrder("rod-against-plate", [...fields], said)] : [];
};

/**
 * Short-circuit transfer is cold: on plate thicker than this it lies on without fusing. Thin sheet is what it is made
 * for; D1.1 does not prequalify it for structural work at all.
 */
export const SHORT_ARC_PLATE_MM = 6.4;

export const transferAgainstPlate: SetupRule = ({ process, transfer, thicknessMm }) => {
  if (process !== "GMAW" || transfer !== "short-circuit" || thicknessMm === null) return [];
  const said = { data: { value: thicknessMm, limit: SHORT_ARC_PLATE_MM }, source: commonPractice };
  const fields = ["thicknessMm", "transfer"] as const;
  return thicknessMm > SHORT_ARC_PLATE_MM + 0.1
    ? [finding("transfer-beyond-plate", "warn", [...fields], said)]
    : [inOrder("transfer-beyond-plate", [...fields], said)];
};

/** A spray pool is too big and too thin to stay up: flat and horizontal fillets only. */
export const sprayOutOfPosition: SetupRule = (setup) => {
  const { process, transfer, position } = setup;
  if (process !== "GMAW" || transfer !== "spray" || position === null || !isPositionOut(setup)) return [];
  return [
    finding("spray-out-of-position", "warn", ["position", "transfer"], {
      data: { position },
      source: commonPractice,
    }),
  ];
};

export const plateAgainstWire: SetupRule = (setup) => {
  const electrode = electrodeOf(setup);
  const thicknessMm = setup.thicknessMm;
  if (electrode === null || thicknessMm === null) return [];
  return thicknessLimits(electrode, setup.electrodeDiameterMm, setup.position).flatMap((limit) => {
    const past = limit.kind === "floor" ? limit.mm - thicknessMm : thicknessMm - limit.mm;
    // Plate is sold to about a tenth of a millimetre; 8 mm plate is the cap of 7.94 mm.
    if (past <= 0.1) return [];
    const code = limit.kind === "floor" ? "plate-below-floor" : "plate-above-cap";
    const data = { electrode: electrode.id, value: thicknessMm, limit: limit.mm };
    return [finding(code, "warn", ["thicknessMm", "electrodeClass"], { data, source: limit.source })];
  });
};
