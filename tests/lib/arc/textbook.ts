import { depositAreaMm2, depositOf } from "@/lib/arc/deposition";
import { ranged, type Ranged } from "@/lib/arc/ranged";
import type { BurnOff } from "@/lib/arc/burn-off";
import type { Wire } from "@/lib/arc";

/** Formulas of the textbooks that the house itself does not need: the other side of its checks. */

export const LB = 0.45359237;
const IN = 25.4;

/** Density of weld steel as printed in the handbooks, and the same in kg/mm³. */
export const STEEL_LB_PER_IN3 = 0.283;
export const STEEL_KG_PER_MM3 = (STEEL_LB_PER_IN3 * LB) / IN ** 3;

/** Mass per length of solid wire, kg/m. */
export function linearMassKgPerM(diameterMm: number, densityKgPerMm3 = STEEL_KG_PER_MM3): number {
  return ((Math.PI * diameterMm ** 2) / 4) * densityKgPerMm3 * 1000;
}

/** Wire melted per hour, kg/h, from feed in m/min. */
export function meltOffKgPerH(feedMPerMin: number, massKgPerM: number): number {
  return feedMPerMin * 60 * massKgPerM;
}

/** Deposition rate, kg/h, by the house's deposit: the cross-section left at 1 mm/s, weighed. */
export function depositionKgPerH(wire: Wire, feedMPerMin: number): Ranged {
  const deposit = depositOf(wire, feedMPerMin);
  return ranged(depositAreaMm2(deposit, 1) * STEEL_KG_PER_MM3 * 3600, deposit.areaRelativeError);
}

/** Area of a cap of given width and height, mm²: a parabola, 2/3·w·h. */
export function parabolicCapMm2(widthMm: number, heightMm: number): number {
  return (2 / 3) * widthMm * heightMm;
}

/** Area of a circular cap of given width and height, mm². NaN where it is higher than half its width. */
export function circularCapMm2(widthMm: number, heightMm: number): number {
  if (!(heightMm > 0) || heightMm > widthMm / 2) return NaN;
  const radius = (widthMm ** 2 / 4 + heightMm ** 2) / (2 * heightMm);
  const half = Math.asin(widthMm / (2 * radius));
  return radius ** 2 * (half - Math.sin(half) * Math.cos(half));
}

/** Change of current per mm of extension at fixed feed, A/mm, by differentiating Lesnewich's relation. */
export function currentPerExtension({ a, b }: BurnOff, currentA: number, extensionMm: number): number {
  return (-b * currentA ** 2) / (a + 2 * b * extensionMm * currentA);
}
