import { z } from "zod";
import { DrawingSchema, MarkSchema, PhotoPointSchema } from "@/lib/marks";
import { imperfectionIds } from "@/lib/trade";
import { calibrate } from "./calibrate";
import { measureAngle } from "./figures";
import { filletViews, legFromWidth, type FilletFromAbove } from "./fillet";
import { measureDrawing, measureWeldLine } from "./measure-mark";
import { defaultMeasureOptions } from "./options";
import { measureRipples, type RippleMeasures } from "./ripples";
import { measureToes, type ToeMeasures } from "./toes";
import type { MeasuredMark, MeasureIssue, MeasureOptions, Quantity } from "./types";
import { WindowAskedSchema, worstInWindow, type WindowFound } from "./worst-in-window";

/** A drawing as a person writes it by hand: of a mark, only what is measured must be said. */
const WrittenDrawingSchema = DrawingSchema.extend({
  schemaVersion: DrawingSchema.shape.schemaVersion.default(1),
  scale: DrawingSchema.shape.scale.default(null),
  weldLine: DrawingSchema.shape.weldLine.default(null).describe("from start to crater, photo pixels"),
  marks: z
    .array(
      MarkSchema.extend({
        imperfection: z.enum(imperfectionIds),
        place: MarkSchema.shape.place.default(null),
        stretch: MarkSchema.shape.stretch.default(null),
        patterns: MarkSchema.shape.patterns.default([]),
        gauge: MarkSchema.shape.gauge.default([]),
        note: MarkSchema.shape.note.default(""),
      }),
    )
    .max(500)
    .default([]),
});

/** Nobody picks a toe in more places, and each is displaced four times for each of four figures. */
const line = z.array(PhotoPointSchema).min(3).max(200);

/** A drawing and what is known of the camera: what the measuring door takes. */
export const MeasureCaseSchema = z.object({
  drawing: WrittenDrawingSchema,
  toes: z
    .tuple([line, line])
    .nullable()
    .default(null)
    .describe(
      "both toes of the bead, each as a line of three or more points: width, its variation, straightness",
    ),
  ripples: z
    .array(PhotoPointSchema)
    .min(4)
    .max(200)
    .nullable()
    .default(null)
    .describe("one point on each of four or more neighbouring ripples: spacing and its evenness"),
  filletSeen: z
    .enum(filletViews)
    .nullable()
    .default(null)
    .describe("how a fillet between these toes was seen from above: its leg from the width, foreshortened"),
  angles: z
    .array(z.object({ a: PhotoPointSchema, apex: PhotoPointSchema, b: PhotoPointSchema }))
    .max(50)
    .default([])
    .describe("angles at an apex, as on a photo of a section or a gauge, degrees"),
  windows: z
    .array(WindowAskedSchema)
    .max(50)
    .default([])
    .describe("the worst stretch of a given length: sum of lengths or diameters, or the count"),
  options: z
    .object({
      pickSigmaPx: z.number().min(0).max(100),
      photoPxPerViewPx: z.number().positive().max(1000),
      photo: z.object({ widthPx: z.number().positive(), heightPx: z.number().positive() }).nullable(),
      statedLengthRelativeU: z.number().min(0).max(1),
      heightHalfWidthMm: z.number().min(0).max(1000),
      cameraDistanceMm: z.number().positive().nullable(),
      tiltSigmaDeg: z.number().min(0).max(60),
      lensCornerRelativeU: z.number().min(0).max(0.5),
    })
    .partial()
    .default({}),
});
export type MeasureCase = z.infer<typeof MeasureCaseSchema>;

export interface MeasureReport {
  readonly scaleIssues: readonly MeasureIssue[];
  readonly mmPerPx: number | null;
  readonly tiltDeg: number | null;
  readonly weldLengthMm: Quantity | null;
  readonly marks: readonly MeasuredMark[];
  /** Null: not asked for, without a scale, or the toes do not face each other. */
  readonly toes: ToeMeasures | null;
  readonly ripples: RippleMeasures | null;
  /** From the toes and the way the fillet was seen; null: not asked for, or no toes. No substitute for a gauge. */
  readonly leg: FilletFromAbove | null;
  /** In the order asked for; null without a scale. */
  readonly angles: readonly (Quantity | null)[];
  /** In the order asked for. */
  readonly windows: readonly WindowFound[];
  readonly options: MeasureOptions;
}

/** Everything measurable of one drawing, with the options as they were applied. */
export function measureCase(asked: MeasureCase): MeasureReport {
  const { drawing, toes, ripples, filletSeen, angles, windows, options } = asked;
  const given = Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined));
  const applied: MeasureOptions = { ...defaultMeasureOptions, ...given };
  const calibration = calibrate(drawing.scale, applied);
  const marks = measureDrawing(drawing, calibration);
  const bead = toes === null || !calibration.ok ? null : measureToes(calibration.value, toes[0], toes[1]);
  return {
    scaleIssues: calibration.ok ? [] : calibration.issues,
    mmPerPx: calibration.ok ? calibration.value.mmPerPx : null,
    tiltDeg: calibration.ok ? calibration.value.tiltDeg : null,
    weldLengthMm: measureWeldLine(drawing, calibration),
    marks,
    toes: bead?.ok ? bead.value : null,
    ripples: ripples === null || !calibration.ok ? null : measureRipples(calibration.value, ripples),
    leg: bead?.ok && filletSeen !== null ? legFromWidth(bead.value.width, filletSeen) : null,
    angles: angles.map(({ a, apex, b }) =>
      calibration.ok ? measureAngle(calibration.value, a, apex, b) : null,
    ),
    windows: windows.map((window) => worstInWindow(marks, window)),
    options: applied,
  };
}
