import { z } from "zod";
import { benches } from "./materials/bench";
import { lightings } from "./light/lamp";
import { scaleObjectKinds } from "./scale-objects/scale-object";
import { scenarioNames, scenarios } from "./scenarios";

/* Every message goes on after the option's name: "--seed must be ...". */
const among = (low: number, high: number): z.ZodNumber => {
  const error = `must be a number from ${low} to ${high}`;
  return z.number({ error }).min(low, { error }).max(high, { error });
};
const whole = (low: number, high: number): z.ZodNumber => {
  const error = `must be a whole number from ${low} to ${high}`;
  return z.number({ error }).int({ error }).min(low, { error }).max(high, { error });
};
const oneOf = <const T extends readonly string[]>(names: T): z.ZodEnum<{ [K in T[number]]: K }> =>
  z.enum(names, { error: `must be one of ${names.join(", ")}` });

const usual = { noise: 2.2, defocus: 0.5 } as const;

/** What may be asked of a picture. Left out means: as the scenario has it. */
const fields = z.strictObject({
  scenario: z.enum(scenarioNames),
  seed: whole(0, 2147483647).default(1),
  megapixels: among(0.1, 48).default(2.6),
  /** "exact-draft": the same geometry, one ray per pixel on a coarser grid, no lens or sensor. */
  quality: oneOf(["photo", "exact-draft"]).default("photo"),
  tiltDeg: among(0, 60).optional(),
  azimuthDeg: among(-360, 360).optional(),
  rollDeg: among(-180, 180).optional(),
  distanceMm: among(80, 1500).optional(),
  fieldWidthMm: among(20, 600).optional(),
  distortion: among(-0.15, 0.15).default(0.02),
  lighting: oneOf(lightings).optional(),
  bench: oneOf(benches).optional(),
  scaleObject: oneOf([...scaleObjectKinds, "none"]).optional(),
  /** Graduated length of a rule or diameter of a disc. */
  scaleObjectMm: among(10, 300).optional(),
  exposureEv: among(-3, 3).optional(),
  warmth: among(-0.4, 0.4).default(0.02),
  noise: among(0, 20).default(usual.noise),
  motionPx: among(0, 30).default(0),
  defocus: among(0, 3).default(usual.defocus),
  jpegQuality: whole(20, 100).default(84),
  /** EXIF orientation the file is stored with; the truth is in upright pixels. */
  orientation: z.literal([1, 3, 6, 8], { error: "must be 1, 3, 6 or 8" }).default(1),
});

type Fields = z.infer<typeof fields>;
type Contradiction = { readonly path: keyof Fields; readonly message: string };

/** What an exact draft, which has no lens and no sensor, cannot be given. */
function draftContradiction(p: Fields): Contradiction | null {
  if (p.quality !== "exact-draft") return null;
  const wrong = (path: keyof Fields): Contradiction => ({
    path,
    message: "cannot be given with --quality exact-draft, which has no lens and no sensor",
  });
  if (p.motionPx > 0) return wrong("motionPx");
  if (p.noise > 0 && p.noise !== usual.noise) return wrong("noise");
  return p.defocus > 0 && p.defocus !== usual.defocus ? wrong("defocus") : null;
}

/** How far a disc must stay off the joint, so that it lies beside the weld and not on it, mm. */
const CLEAR_OF_WELD_MM = 9;

function sizeContradiction(p: Fields): Contradiction | null {
  const { scaleObjectMm: size } = p;
  if (size === undefined) return null;
  const placed = scenarios[p.scenario](1).scaleObject;
  const kind = p.scaleObject ?? placed?.kind ?? "none";
  const wrong = (message: string): Contradiction => ({ path: "scaleObjectMm", message });
  if (kind === "none" || placed === null) return wrong("needs a scale object in the picture");
  if (kind === "card" || kind === "strip")
    return wrong(`is for a rule or a disc; the ${kind} in this picture has one size only`);
  const most = 2 * (Math.abs(placed.placement.vMm) - CLEAR_OF_WELD_MM);
  return kind === "disc" && size > most
    ? wrong(`must be ${most} or less here, or the disc would lie on the weld`)
    : null;
}

/** Says what two parameters cannot be asked for together, or null. */
function contradiction(p: Fields): Contradiction | null {
  const { pose } = scenarios[p.scenario](1);
  const distance = p.distanceMm ?? pose.distanceMm;
  const width = p.fieldWidthMm ?? pose.fieldWidthMm;
  if (width > 2 * distance)
    return {
      path: p.fieldWidthMm === undefined ? "distanceMm" : "fieldWidthMm",
      message: `asks for a field of ${width} mm from ${distance} mm away; no phone sees wider than twice its distance`,
    };
  return draftContradiction(p) ?? sizeContradiction(p);
}

export const RenderParamsSchema = fields.superRefine((params, context) => {
  const found = contradiction(params);
  if (found !== null) context.addIssue({ code: "custom", path: [found.path], message: found.message });
});
export const renderParamNames = Object.keys(fields.shape);
export type RenderParams = z.infer<typeof RenderParamsSchema>;
export type RenderParamsInput = z.input<typeof RenderParamsSchema>;
