import { z } from "zod";
import {
  baseMetals,
  gases,
  inputPowers,
  joints,
  polarities,
  positions,
  processes,
  progressions,
  surfaces,
  transfers,
  travelDirections,
} from "@/lib/trade";

/** Bump when the stored shape changes, and teach `parseRunSetup` the older one. */
export const RUN_SETUP_VERSION = 1;

const reading = (max: number) => z.number().positive().max(max).nullable().default(null);

/**
 * How a bead was run. Every field may be null: null is "not known", never a value and never evidence.
 * All numbers are in the one unit their name ends in; the person's units exist only on the screen.
 * Upper bounds are absurdity bounds (no welding machine reaches them), not process windows.
 */
export const RunSetupSchema = z.object({
  schemaVersion: z.literal(RUN_SETUP_VERSION).default(RUN_SETUP_VERSION),
  process: z.enum(processes).nullable().default(null),
  transfer: z.enum(transfers).nullable().default(null),
  /** AWS classification such as "E71T-11" or "E308LT0-3"; free text is kept, only known ones are checked. */
  electrodeClass: z.string().trim().min(1).max(40).nullable().default(null),
  electrodeDiameterMm: reading(10),
  polarity: z.enum(polarities).nullable().default(null),
  gas: z.enum(gases).nullable().default(null),
  gasFlowLPerMin: z.number().min(0).max(100).nullable().default(null),
  wireFeedMPerMin: reading(40),
  volts: reading(100),
  amps: reading(1500),
  /** Contact tip to work, with the gun held as when welding. */
  ctwdMm: reading(150),
  travelDirection: z.enum(travelDirections).nullable().default(null),
  /** Angle of the gun off perpendicular in the direction of travel, 0 = square. */
  travelAngleDeg: z.number().min(0).max(90).nullable().default(null),
  /** Angle of the gun from the first plate, seen along the weld; 45 bisects a T-joint, 90 is square on a flat plate. */
  workAngleDeg: z.number().min(0).max(180).nullable().default(null),
  travelSpeedMmPerMin: reading(5000),
  weldLengthMm: reading(20000),
  arcTimeS: reading(36000),
  joint: z.enum(joints).nullable().default(null),
  position: z.enum(positions).nullable().default(null),
  progression: z.enum(progressions).nullable().default(null),
  baseMetal: z.enum(baseMetals).nullable().default(null),
  /** The thinner part. */
  thicknessMm: reading(500),
  fitUpGapMm: z.number().min(0).max(50).nullable().default(null),
  surface: z.enum(surfaces).nullable().default(null),
  inputPower: z.enum(inputPowers).nullable().default(null),
  outdoors: z.boolean().nullable().default(null),
  /** Layers in this joint so far, this one included. */
  passCount: z.number().int().min(1).max(200).nullable().default(null),
  /** Fillet leg asked for, null when none was. */
  targetLegMm: reading(100),
});
export type RunSetup = z.infer<typeof RunSetupSchema>;

export const emptyRunSetup: RunSetup = RunSetupSchema.parse({});
