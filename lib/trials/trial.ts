import { z } from "zod";
import { RunSetupSchema } from "@/lib/setup";

/** The dials a trial may vary, in the order they are set. */
export const trialKnobs = [
  "wireFeedMPerMin",
  "volts",
  "ctwdMm",
  "travelSpeedMmPerMin",
  "travelAngleDeg",
] as const;
export type TrialKnob = (typeof trialKnobs)[number];

/** What is read off each bead of a trial. */
export const responseNames = ["width", "leg", "convexity", "evenness", "marks"] as const;
export type ResponseName = (typeof responseNames)[number];

/** "factorial": both ends of every knob and the middle; "surface": bent courses too; "seek": each bead by the ones before. */
export const ways = ["factorial", "surface", "seek"] as const;
export type Way = (typeof ways)[number];

export const MOST_BEADS = 30;

/** What is wanted of the response; `target` in its unit, for "target" alone. */
export const AimSchema = z
  .object({
    response: z.enum(responseNames),
    want: z.enum(["least", "most", "target"]),
    target: z.number().min(0).max(1000).nullable().default(null),
  })
  .refine(({ want, target }) => (want === "target") === (target !== null));
export type Aim = z.infer<typeof AimSchema>;

const setting = z.number().min(0).max(10_000);

/** A knob and how far it is turned, in the unit of the set-up's field. */
export const TrialRangeSchema = z
  .object({ field: z.enum(trialKnobs), low: setting, high: setting })
  .refine(({ low, high }) => low < high);
export type TrialRange = z.infer<typeof TrialRangeSchema>;

/**
 * A series of beads that vary one knob or two on purpose. `points` are the settings of its beads in the order they are
 * run, one number a knob; a trial that seeks adds to them.
 */
export const TrialSchema = z
  .object({
    schemaVersion: z.literal(1).default(1),
    title: z.string().trim().min(1).max(120),
    /** What stays the same for all beads; its own values of the knobs are where the trial began. */
    base: RunSetupSchema,
    knobs: z.array(TrialRangeSchema).min(1).max(2),
    way: z.enum(ways),
    /** Beads it may cost. */
    budget: z.int().min(3).max(MOST_BEADS),
    /** Whose dials: points are whole steps of them. */
    dials: z.enum(["metric", "inch"]).default("metric"),
    /** Of the random order. */
    seed: z
      .int()
      .min(0)
      .max(2 ** 31),
    aim: AimSchema,
    /** Standard deviation from one bead to the next at the same settings, in the unit of the response. */
    noise: z.number().positive().max(1000),
    points: z.array(z.array(setting).max(2)).max(MOST_BEADS),
  })
  .refine(({ knobs }) => new Set(knobs.map(({ field }) => field)).size === knobs.length)
  .refine(({ knobs, points }) => points.every((point) => point.length === knobs.length));
export type Trial = z.infer<typeof TrialSchema>;

/** One bead of a trial, as far as it was read. `at` in the units of the knobs. */
export interface Observation {
  readonly at: readonly number[];
  readonly value: number;
}
