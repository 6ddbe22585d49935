import type { Joint } from "@/lib/trade";
import { shapeFactors } from "./tables/shape-factors";

/** What the time from 800 to 500 °C is worked out from. */
export interface Cooling {
  /** Heat input with its thermal efficiency, kJ/mm. */
  readonly heatKJPerMm: number;
  /** Of the plate when the run begins, °C. */
  readonly startC: number;
  readonly thicknessMm: number;
  readonly joint: Joint;
}

export interface CoolingTime {
  /** s */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Thick plate cools into its depth, thin plate along its plane only. */
  readonly flow: "thick" | "thin";
  /** The thickness at which one goes over into the other, mm. */
  readonly transitionMm: number;
}

const gap = (startC: number, power: 1 | 2): number =>
  1 / (500 - startC) ** power - 1 / (800 - startC) ** power;

/** Thick plate, s; the factor is that of the joint. EN 1011-2, annex D. */
export function thickPlateS(heatKJPerMm: number, startC: number, factor = 1): number {
  return (6700 - 5 * startC) * heatKJPerMm * gap(startC, 1) * factor;
}

/** Thin plate, s. EN 1011-2, annex D. */
export function thinPlateS(heatKJPerMm: number, startC: number, thicknessMm: number, factor = 1): number {
  return (4300 - 4.3 * startC) * 1e5 * (heatKJPerMm / thicknessMm) ** 2 * gap(startC, 2) * factor;
}

/** The thickness at which both formulas say the same, mm. */
export function transitionThicknessMm(heatKJPerMm: number, startC: number, thin = 1, thick = 1): number {
  return Math.sqrt(thinPlateS(heatKJPerMm, startC, 1, thin) / thickPlateS(heatKJPerMm, startC, thick));
}

/**
 * Cooling time t8/5 of an unalloyed or low-alloy steel. Both formulas are worked out and the longer time holds; low and
 * high by the joint's factors. null outside 0 to 500 °C or without heat.
 */
export function coolingTime({ heatKJPerMm, startC, thicknessMm, joint }: Cooling): CoolingTime | null {
  if (!(heatKJPerMm > 0) || !(thicknessMm > 0) || !(startC >= 0) || !(startC < 500)) return null;
  const { thin, thick } = shapeFactors[joint];
  const times = ([f2, f3]: readonly [number, number]) =>
    [thinPlateS(heatKJPerMm, startC, thicknessMm, f2), thickPlateS(heatKJPerMm, startC, f3)] as const;
  const [inPlane, inDepth] = times([middle(thin), middle(thick)]);
  return {
    value: Math.max(inPlane, inDepth),
    low: Math.max(...times([thin[0], thick[0]])),
    high: Math.max(...times([thin[1], thick[1]])),
    flow: inPlane > inDepth ? "thin" : "thick",
    transitionMm: transitionThicknessMm(heatKJPerMm, startC, middle(thin), middle(thick)),
  };
}

const middle = ([low, high]: readonly [number, number]): number => (low + high) / 2;
