import { z } from "zod";
import type { Point } from "@/lib/geometry";
import { imperfectionIds, patterns, places, stretches } from "@/lib/trade";

/** Stored as JSON with each photo: bump when the shape changes, and teach the parser the older one. */
export const DRAWING_VERSION = 1;

/** More marks than this on one photo is no inspection any more. */
export const MOST_MARKS = 500;

/** Photo pixels of the upright original: x right, y down, (0, 0) the top left corner of the top left pixel. */
const coordinate = z.number().min(-100_000).max(100_000);
const picked = z.object({
  x: coordinate,
  y: coordinate,
  /**
   * Photo pixels that one CSS pixel covered when this point was placed, the grain of the hand: 4 for a 4000 px photo
   * viewed 1000 px wide. It stays with the point, so that a point set again after zooming in counts for more. Left out
   * where nobody kept it.
   */
  grainPx: z.number().positive().max(10_000).optional(),
});
export type PhotoPoint = Point<"photo"> & { readonly grainPx?: number | undefined };

/** What is read here is in photo pixels from now on: the compiler keeps it from millimetres. */
export const PhotoPointSchema: z.ZodType<PhotoPoint, PhotoPoint> = picked;
/** The same without grain, for what nothing is measured on. */
export const PhotoPlaceSchema: z.ZodType<Point<"photo">, Point<"photo">> = picked.omit({ grainPx: true });
/** A corner of the printed strip with its place on the strip, mm. */
type StripCorner = PhotoPoint & { readonly xMm: number; readonly yMm: number };
const StripCornerSchema: z.ZodType<StripCorner, StripCorner> = picked.extend({
  xMm: z.number().min(-10_000).max(10_000),
  yMm: z.number().min(-10_000).max(10_000),
});

export const MarkShapeSchema = z.discriminatedUnion("kind", [
  /** A spot; with a radius (photo pixels) when its size was drawn, as for a pore. */
  z.object({
    kind: z.literal("point"),
    at: PhotoPointSchema,
    radius: z.number().positive().max(100_000).nullable(),
  }),
  z.object({ kind: z.literal("line"), points: z.array(PhotoPointSchema).min(2).max(500) }),
  z.object({ kind: z.literal("outline"), points: z.array(PhotoPointSchema).min(3).max(500) }),
]);
export type MarkShapeData = z.infer<typeof MarkShapeSchema>;

export const gaugeQuantities = ["depth", "height", "diameter", "length"] as const;
export type GaugeQuantity = (typeof gaugeQuantities)[number];

/**
 * What a study of the gauge says of a reading, as it was known when the reading was taken: standard uncertainty in the
 * reading's unit, how many of them hold about 95 %, and the day of the study.
 */
export const ReadingStudySchema = z.object({
  on: z.string().regex(/^\d{4}-\d{2}-\d{2}$/),
  u: z.number().positive().max(100),
  k: z.number().min(2).max(20),
});

/** A reading taken with an instrument on this imperfection. It outranks whatever the photo says. */
export const GaugeReadingSchema = z.object({
  quantity: z.enum(gaugeQuantities),
  valueMm: z.number().min(0).max(1000),
  instrument: z.string().trim().min(1).max(80),
  resolutionMm: z.number().positive().max(10),
  /** Left out where the gauge had no study then. */
  study: ReadingStudySchema.optional(),
});
export type GaugeReading = z.infer<typeof GaugeReadingSchema>;

export const MarkSchema = z.object({
  id: z.string().min(1).max(40),
  imperfection: z.enum(imperfectionIds),
  shape: MarkShapeSchema,
  place: z.enum(places).nullable(),
  stretch: z.enum(stretches).nullable(),
  patterns: z.array(z.enum(patterns)).max(patterns.length),
  gauge: z.array(GaugeReadingSchema).max(10),
  note: z.string().max(500),
  /** About how many lie in a patch that is one mark: somebody's estimate by eye. Left out where nobody said. */
  aboutCount: z.number().int().min(2).max(10_000).optional(),
  /** Suggested by the reader and made a mark by a person, whose it is since. Left out where a person found it. */
  origin: z.literal("suggested").optional(),
});
export type Mark = z.infer<typeof MarkSchema>;

/**
 * Where the marked surface lies above the plane of the scale object, mm, negative below, and how far that may be out to
 * either side. Left out, or the spread null: nobody measured it, and the usual allowance stands.
 */
const SurfaceSchema = z.object({
  aboveMm: z.number().min(-100).max(100),
  plusMinusMm: z.number().min(0).max(100).nullable(),
});
const surface = SurfaceSchema.optional();

/** How photo pixels become millimetres. A union, because two picked points are only the simplest way. */
export const ScaleSchema = z.discriminatedUnion("kind", [
  /** Two picked points a stated length apart, in the plane of the weld. */
  z.object({
    kind: z.literal("two-points"),
    a: PhotoPointSchema,
    b: PhotoPointSchema,
    lengthMm: z.number().positive().max(5000),
    surface,
  }),
  /** Four picked corners of a rectangle of stated size, clockwise from its top left: removes perspective. */
  z.object({
    kind: z.literal("rectangle"),
    corners: z.tuple([PhotoPointSchema, PhotoPointSchema, PhotoPointSchema, PhotoPointSchema]),
    widthMm: z.number().positive().max(5000),
    heightMm: z.number().positive().max(5000),
    surface,
  }),
  /**
   * A rectangle by its edges, two picks on the straight part of each, clockwise from the top one: so that rounded
   * corners (an ID-1 card) are never picked.
   */
  z.object({
    kind: z.literal("edges"),
    edges: z.array(z.tuple([PhotoPointSchema, PhotoPointSchema])).length(4),
    widthMm: z.number().positive().max(5000),
    heightMm: z.number().positive().max(5000),
    surface,
  }),
  /** Picks around the rim of a flat disc of stated diameter. */
  z.object({
    kind: z.literal("disc"),
    rim: z.array(PhotoPointSchema).min(5).max(100),
    diameterMm: z.number().positive().max(5000),
    surface,
  }),
  /** Corners of the printed scale strip as found in the photo, each with its place on the page in mm. */
  z.object({
    kind: z.literal("strip"),
    corners: z.array(StripCornerSchema).min(8).max(64),
    /** Standard deviation of one found corner, per axis, in photo pixels. */
    cornerSigmaPx: z.number().positive().max(20),
    /** Printed over nominal length of the check bar, as read with a rule: 1 for a true printer. */
    printFactor: z.number().min(0.5).max(2).default(1),
    surface,
  }),
]);
export type Scale = z.infer<typeof ScaleSchema>;

/** One place of a toe that was read off the photo; a person who moves it is sure of it. */
const TracedPointSchema = z.object({
  x: coordinate,
  y: coordinate,
  /** Standard deviation across the weld, photo pixels. */
  sigmaPx: z.number().min(0).max(1000),
  /** 0 a guess, 1 as good as seen. */
  sure: z.number().min(0).max(1),
});

/** Both toes of the bead as the reader proposed and a person accepted them; places of one index face each other. */
export const ToesSchema = z.object({
  origin: z.literal("traced"),
  /** Version of the reader. */
  reader: z.string().min(1).max(20),
  upper: z.array(TracedPointSchema).min(2).max(400),
  lower: z.array(TracedPointSchema).min(2).max(400),
});
export type Toes = z.infer<typeof ToesSchema>;
export type TracedPoint = z.infer<typeof TracedPointSchema>;

export const DrawingSchema = z.object({
  schemaVersion: z.literal(DRAWING_VERSION),
  scale: ScaleSchema.nullable(),
  /** The weld from start to crater along its middle: gives every mark its place along the weld. */
  weldLine: z.array(PhotoPointSchema).min(2).max(200).nullable(),
  marks: z.array(MarkSchema).max(MOST_MARKS),
  /** Left out where nobody accepted any. */
  toes: ToesSchema.optional(),
});
export type Drawing = z.infer<typeof DrawingSchema>;

export const emptyDrawing: Drawing = {
  schemaVersion: DRAWING_VERSION,
  scale: null,
  weldLine: null,
  marks: [],
};
