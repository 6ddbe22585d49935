import { z } from "zod";
import { emptyRunSetup, RunSetupSchema } from "@/lib/setup";
import { imperfectionIds, patterns, places, stretches } from "@/lib/trade";
import { causeIds } from "./cause-ids";

const lengthMm = z.number().positive().max(20_000).nullable().default(null);

export const FindingSchema = z.object({
  imperfection: z.enum(imperfectionIds),
  place: z.enum(places).nullable().default(null),
  stretch: z.enum(stretches).nullable().default(null),
  patterns: z.array(z.enum(patterns)).max(patterns.length).default([]),
});

export const ShopCountsSchema = z.partialRecord(z.enum(causeIds), z.number().int().min(0).max(1_000_000));
/** Cases this shop confirmed, by cause. {} is a shop that has confirmed nothing, and the way to reset. */
export type ShopCounts = z.infer<typeof ShopCountsSchema>;

export const DiagnoseInputSchema = z.object({
  schemaVersion: z.literal(1).default(1),
  setup: RunSetupSchema.default(emptyRunSetup),
  /** What was marked. The same imperfection may be marked many times. */
  findings: z.array(FindingSchema).max(500).default([]),
  /** Looked for and not found. What is neither here nor marked was not looked for and says nothing. */
  lookedForAbsent: z.array(z.enum(imperfectionIds)).max(imperfectionIds.length).default([]),
  /** Question id -> answer id, as listed by `diagnoseVocabulary`. */
  answers: z.record(z.string().max(60), z.string().max(60)).default({}),
  /** Sizes measured on the bead, mm. null: not measured. */
  bead: z
    .object({ widthMm: lengthMm, legMm: lengthMm, lengthMm: lengthMm })
    .default({ widthMm: null, legMm: null, lengthMm: null }),
  shopCounts: ShopCountsSchema.default({}),
});
export type DiagnoseInput = z.infer<typeof DiagnoseInputSchema>;
