import { z } from "zod";
import { imperfectionIds } from "@/lib/trade";

/** Bump when the stored shape changes, and teach the parser the older one. */
export const SHOP_CRITERIA_VERSION = 1;

export const shopQuantities = [
  "none-allowed",
  "depth",
  "height",
  "diameter",
  "length",
  "total-length",
  "total-diameter",
  "count",
  "leg-shortfall",
  "leg-difference",
  "throat-shortfall",
  "convexity",
  "reinforcement",
  "width",
] as const;
export type ShopQuantity = (typeof shopQuantities)[number];

/** One clause of a code, as its verdicts name it. */
const ClauseNameSchema = z.object({
  clause: z.string().trim().min(1).max(200),
  title: z.string().trim().min(1).max(200),
});

/** One limit of the shop's own. `windowMm` makes totals and counts hold for the worst stretch of that length. */
export const ShopRowSchema = z
  .object({
    id: z
      .string()
      .trim()
      .regex(/^[a-z0-9][a-z0-9-]{0,39}$/),
    title: z.string().trim().min(1).max(120),
    /** Empty only for the readings of the whole bead. */
    imperfections: z.array(z.enum(imperfectionIds)).max(imperfectionIds.length),
    quantity: z.enum(shopQuantities),
    /** mm (a number for "count"); null for "none-allowed", and where `ofThickness` alone limits. */
    limit: z.number().min(0).max(10_000).nullable(),
    /** Limit as a part of the thickness of the plate (0.1: a tenth of it); with `limit` too, the smaller of both. */
    ofThickness: z.number().positive().max(10).nullable().default(null),
    windowMm: z.number().positive().max(10_000).nullable().default(null),
    note: z.string().max(500).default(""),
    /** The clause it was copied from; absent: written by hand, or copied before this was kept. */
    carries: ClauseNameSchema.optional(),
  })
  .superRefine((row, context) => {
    const total = ["total-length", "total-diameter", "count"].includes(row.quantity);
    const bead = [
      "leg-shortfall",
      "leg-difference",
      "throat-shortfall",
      "convexity",
      "reinforcement",
      "width",
    ].includes(row.quantity);
    const none = row.quantity === "none-allowed";
    if (none ? row.limit !== null : row.limit === null && row.ofThickness === null)
      context.addIssue({ code: "custom", path: ["limit"], message: "limit-needed" });
    if (row.ofThickness !== null && (none || row.quantity === "count"))
      context.addIssue({ code: "custom", path: ["ofThickness"], message: "thickness-only-for-lengths" });
    if (row.windowMm !== null && !total)
      context.addIssue({ code: "custom", path: ["windowMm"], message: "window-only-for-totals" });
    if (!bead && row.imperfections.length === 0)
      context.addIssue({ code: "custom", path: ["imperfections"], message: "imperfection-needed" });
  });
export type ShopRow = z.infer<typeof ShopRowSchema>;

/**
 * The clauses of the code a set was started from that none of its rows carries, and why. A set without it (written
 * from nothing, or saved before this was kept) claims nothing.
 */
export const NotCarriedSchema = z.object({
  from: z.string().trim().min(1).max(200),
  clauses: z.array(ClauseNameSchema.extend({ why: z.string().max(200) })).max(300),
});
export type NotCarried = z.infer<typeof NotCarriedSchema>;

export const ShopKeySchema = z
  .string()
  .trim()
  .regex(/^shop-[a-z0-9][a-z0-9-]{0,40}$/);

/** Limits an instructor or engineer writes for an exercise or a contract. A changed set gets a new version. `id` is
 * the key its versions share; one version is named by `shopSetId`. */
export const ShopCriteriaSchema = z
  .object({
    schemaVersion: z.literal(SHOP_CRITERIA_VERSION).default(SHOP_CRITERIA_VERSION),
    id: ShopKeySchema,
    title: z.string().trim().min(1).max(120),
    /** Counts up with every change; a record keeps the version it was judged by. */
    version: z.number().int().min(1).max(100_000),
    author: z.string().trim().min(1).max(80),
    rows: z.array(ShopRowSchema).min(1).max(100),
    note: z.string().max(2000).default(""),
    notCarried: NotCarriedSchema.optional(),
  })
  .superRefine((set, context) => {
    const seen = new Set<string>();
    set.rows.forEach((row, index) => {
      if (seen.has(row.id))
        context.addIssue({ code: "custom", path: ["rows", index, "id"], message: "id-twice" });
      seen.add(row.id);
    });
  });
export type ShopCriteria = z.infer<typeof ShopCriteriaSchema>;

/** What a bead, exercise or job names one version by: "KEY@VERSION". It never means another version. */
export function shopSetId({ id, version }: Pick<ShopCriteria, "id" | "version">): string {
  return `${id}@${version}`;
}

/** "shop-x@2" taken apart; null for the id of a built-in set. */
export function readShopSetId(id: string): { readonly key: string; readonly version: number } | null {
  const [, key, version] = /^(shop-[a-z0-9-]+)@([1-9]\d{0,5})$/.exec(id) ?? [];
  return key !== undefined && version !== undefined ? { key, version: Number(version) } : null;
}
