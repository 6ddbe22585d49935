import { z } from "zod";
import { DrawingSchema } from "@/lib/marks";
import { calibrate } from "./calibrate";
import { measureDrawing, measureWeldLine } from "./measure-mark";
import { defaultMeasureOptions } from "./options";
import type { MeasuredMark, MeasureIssue, MeasureOptions, Quantity } from "./types";

/** A drawing and what is known of the camera: what the measuring door takes. */
export const MeasureCaseSchema = z.object({
  drawing: DrawingSchema,
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
  readonly options: MeasureOptions;
}

/** Everything measurable of one drawing, with the options as they were applied. */
export function measureCase({ drawing, options }: MeasureCase): MeasureReport {
  const given = Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined));
  const applied: MeasureOptions = { ...defaultMeasureOptions, ...given };
  const calibration = calibrate(drawing.scale, applied);
  return {
    scaleIssues: calibration.ok ? [] : calibration.issues,
    mmPerPx: calibration.ok ? calibration.value.mmPerPx : null,
    tiltDeg: calibration.ok ? calibration.value.tiltDeg : null,
    weldLengthMm: measureWeldLine(drawing, applied),
    marks: measureDrawing(drawing, applied),
    options: applied,
  };
}
