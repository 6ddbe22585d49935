import { z } from "zod";
import { SteelSchema } from "@/lib/procedure";
import { RunSetupSchema } from "@/lib/setup";

/** The dials a card gives ranges for, in the order they are set. */
export const cardFields = [
  "wireFeedMPerMin",
  "volts",
  "amps",
  "ctwdMm",
  "travelSpeedMmPerMin",
  "travelAngleDeg",
  "workAngleDeg",
  "gasFlowLPerMin",
] as const;
export type CardField = (typeof cardFields)[number];

const setting = z.number().min(0).max(10_000);

/** How far one dial may stand, in the unit of the set-up's field. */
export const CardRangeSchema = z
  .object({ field: z.enum(cardFields), low: setting, high: setting })
  .refine(({ low, high }) => low <= high);
export type CardRange = z.infer<typeof CardRangeSchema>;

/** Whose list of essential variables stands on the card as a checklist. */
export const cardCodes = ["aws-d1-1", "iso-15614-1"] as const;
export type CardCode = (typeof cardCodes)[number];

/** A shop's own card of how a run is made: no qualified procedure. */
export const CardSchema = z
  .object({
    schemaVersion: z.literal(1).default(1),
    title: z.string().trim().min(1).max(120),
    /** What the card was made from, and what stays the same. */
    setup: RunSetupSchema,
    ranges: z.array(CardRangeSchema).max(cardFields.length),
    code: z.enum(cardCodes),
    /** By its certificate; null: no carbon equivalent, no preheat. */
    steel: SteelSchema.nullable().default(null),
    /** Number of the bead or trial it was made from, as people call it. */
    from: z
      .object({ kind: z.enum(["bead", "trial"]), number: z.int().min(1).max(2_000_000_000) })
      .nullable()
      .default(null),
    note: z.string().max(2000).default(""),
  })
  .refine(({ ranges }) => new Set(ranges.map(({ field }) => field)).size === ranges.length);
export type Card = z.infer<typeof CardSchema>;
