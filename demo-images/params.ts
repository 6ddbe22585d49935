import { z } from "zod";
import { benches } from "./materials/bench";
import { lightings } from "./light/lamp";
import { scaleObjectKinds } from "./scale-objects/scale-object";
import { scenarioNames } from "./scenarios";

/** What may be asked of a picture. Left out means: as the scenario has it. */
const fields = z.strictObject({
  scenario: z.enum(scenarioNames),
  seed: z.number().int().min(0).max(2147483647).default(1),
  megapixels: z.number().min(0.1).max(48).default(2.6),
  /** "exact-draft": the same geometry, one ray per pixel on a coarser grid, no lens or sensor. */
  quality: z.enum(["photo", "exact-draft"]).default("photo"),
  tiltDeg: z.number().min(0).max(60).optional(),
  azimuthDeg: z.number().min(-360).max(360).optional(),
  rollDeg: z.number().min(-180).max(180).optional(),
  distanceMm: z.number().min(80).max(1500).optional(),
  fieldWidthMm: z.number().min(20).max(600).optional(),
  distortion: z.number().min(-0.15).max(0.15).default(0.02),
  lighting: z.enum(lightings).optional(),
  bench: z.enum(benches).optional(),
  scaleObject: z.enum([...scaleObjectKinds, "none"]).optional(),
  /** Graduated length of a rule or diameter of a disc. */
  scaleObjectMm: z.number().min(10).max(300).optional(),
  exposureEv: z.number().min(-3).max(3).optional(),
  warmth: z.number().min(-0.4).max(0.4).default(0.02),
  noise: z.number().min(0).max(20).default(2.2),
  motionPx: z.number().min(0).max(30).default(0),
  defocus: z.number().min(0).max(3).default(0.5),
  jpegQuality: z.number().int().min(20).max(100).default(84),
  /** EXIF orientation the file is stored with; the truth is in upright pixels. */
  orientation: z.union([z.literal(1), z.literal(3), z.literal(6), z.literal(8)]).default(1),
});
const sizedObjects = ["rule", "disc"];

/** Says what two parameters cannot be asked for together, or null. */
function contradiction(
  p: z.infer<typeof fields>,
): { readonly path: string; readonly message: string } | null {
  if (p.scaleObjectMm !== undefined && p.scaleObject !== undefined && !sizedObjects.includes(p.scaleObject))
    return {
      path: "scaleObjectMm",
      message: `only a rule or a disc has a size to choose, not "${p.scaleObject}"`,
    };
  if (p.quality === "exact-draft" && p.motionPx > 0)
    return {
      path: "motionPx",
      message: "an exact draft has no lens, so nothing in it can be blurred by motion",
    };
  if (p.distanceMm !== undefined && p.fieldWidthMm !== undefined && p.fieldWidthMm > 2 * p.distanceMm)
    return { path: "fieldWidthMm", message: "no phone sees a field wider than twice its distance" };
  return null;
}

export const RenderParamsSchema = fields.superRefine((params, context) => {
  const found = contradiction(params);
  if (found !== null) context.addIssue({ code: "custom", path: [found.path], message: found.message });
});
export const renderParamNames = Object.keys(fields.shape);
export type RenderParams = z.infer<typeof RenderParamsSchema>;
export type RenderParamsInput = z.input<typeof RenderParamsSchema>;
