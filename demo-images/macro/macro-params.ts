import { z } from "zod";
import { macroNames } from "./macro-scenarios";

const among = (low: number, high: number): z.ZodNumber => {
  const error = `must be a number from ${low} to ${high}`;
  return z.number({ error }).min(low, { error }).max(high, { error });
};
const whole = (low: number, high: number): z.ZodNumber => {
  const error = `must be a whole number from ${low} to ${high}`;
  return z.number({ error }).int({ error }).min(low, { error }).max(high, { error });
};

export const macroObjects = ["rule", "card", "strip", "none"] as const;

/** What may be asked of a picture of a section. The names are those of the other pictures. */
export const MacroParamsSchema = z.strictObject({
  scenario: z.enum(macroNames),
  seed: whole(0, 2147483647).default(1),
  megapixels: among(0.1, 48).default(2.6),
  tiltDeg: among(0, 45).default(4),
  azimuthDeg: among(-360, 360).default(30),
  rollDeg: among(-180, 180).default(1.5),
  distanceMm: among(40, 600).default(110),
  fieldWidthMm: among(30, 300).default(66),
  distortion: among(-0.15, 0.15).default(0.01),
  scaleObject: z.enum(macroObjects, { error: `must be one of ${macroObjects.join(", ")}` }).default("rule"),
  /** How far the scale object lies above the etched face. */
  scaleAboveMm: among(-5, 5).default(0),
  exposureEv: among(-3, 3).default(0),
  warmth: among(-0.4, 0.4).default(0.03),
  noise: among(0, 20).default(2),
  defocus: among(0, 3).default(0.25),
  jpegQuality: whole(20, 100).default(84),
  orientation: z.literal([1, 3, 6, 8], { error: "must be 1, 3, 6 or 8" }).default(1),
});
export type MacroParams = z.infer<typeof MacroParamsSchema>;
export type MacroParamsInput = z.input<typeof MacroParamsSchema>;
export const macroParamNames = Object.keys(MacroParamsSchema.shape);
