import { z } from "zod";
import { imperfectionIds, joints, places } from "@/lib/trade";

/** How hard a bead is to look at: as it was chipped and brushed, or met anywhere, with dirt and look-alikes. */
export const eyeLooks = ["plain", "street"] as const;
export type EyeLook = (typeof eyeLooks)[number];

const mm = z.number().min(0).max(20_000);

/** One thing that is on a drawn bead, with its place in the picture and its sizes as it was drawn. */
export const EyeFaultSchema = z.object({
  kind: z.enum(imperfectionIds),
  place: z.enum(places).nullable(),
  /** Along the whole bead: its shape, not a spot on it. */
  whole: z.boolean(),
  /** Closed, picture pixels. */
  outlinePx: z
    .array(z.tuple([z.number(), z.number()]))
    .min(1)
    .max(80),
  sizes: z.record(z.string().max(40), mm),
  alongMm: z.tuple([z.number(), z.number()]),
});
export type EyeFault = z.infer<typeof EyeFaultSchema>;

/** A drawn bead of which everything is known. */
export const EyeBeadSchema = z.object({
  /** "street-1x9f3": says nothing of what is on it. */
  id: z.string().regex(/^[a-z0-9-]{3,60}$/),
  /** What it was drawn from. */
  scenario: z.string().max(60),
  look: z.enum(eyeLooks),
  widthPx: z.int().min(1).max(10_000),
  heightPx: z.int().min(1).max(10_000),
  joint: z.enum(joints).nullable(),
  thicknessMm: mm.nullable(),
  lengthMm: mm,
  faults: z.array(EyeFaultSchema).max(400),
});
export type EyeBead = z.infer<typeof EyeBeadSchema>;

/** Millimetres: what is smaller in every direction is neither asked for nor held against anybody. Own estimate. */
export const SMALLEST_MM = 0.8;

/** The size somebody would give it: length, else diameter, else width; null where it has none in millimetres. */
export const sizeMm = ({ sizes }: EyeFault): number | null =>
  sizes["lengthMm"] ?? sizes["diameterMm"] ?? sizes["widthMm"] ?? null;

/** Large enough to be asked for. A fault without a size in millimetres covers an area and is. */
export const isAskedFor = (fault: EyeFault): boolean => (sizeMm(fault) ?? SMALLEST_MM) >= SMALLEST_MM;
