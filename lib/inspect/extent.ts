import { MM_PER_INCH } from "@/lib/base";
import { z } from "zod";

/** The longest weld a job speaks of, mm. */
export const LONGEST_WELD_MM = 100_000;

const percent = z.number().max(100);
const lengthMm = z.number().max(LONGEST_WELD_MM);

/** How much of a weld is to be inspected: a part of its length, or so many millimetres of it. Never nothing. */
export const AskedExtentSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("percent"), percent: percent.positive() }),
  z.object({ kind: z.literal("length"), lengthMm: lengthMm.positive() }),
]);

/** How much of a weld was seen. Zero is an answer: the weld was reached and nothing of it could be seen. */
export const SeenExtentSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("percent"), percent: percent.min(0) }),
  z.object({ kind: z.literal("length"), lengthMm: lengthMm.min(0) }),
]);
export type Extent = z.infer<typeof SeenExtentSchema>;

/** The whole weld: what is asked where a job says nothing else. */
export const wholeWeld = { kind: "percent", percent: 100 } as const satisfies Extent;

const PLAIN = /^(\d{1,6}(?:[.,]\d+)?) ?(%|percent|mm|cm|m|in|inch|inches|")$/;
/** Three digits after a point or a comma may group thousands: nobody can tell. */
const GROUPED = /[.,]\d{3}$/;
const MM_PER: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
};

/**
 * An extent out of a text, where the text is plainly one number with its unit: "100 %", "300mm", "12 in". Null for
 * anything else ("both ends", "300", "60 to 80 %"): a guess at what was meant would be a statement nobody made.
 */
export function readExtentText(text: string): Extent | null {
  const [, number = "", unit = ""] = PLAIN.exec(text.trim().toLowerCase().replace(/\s+/g, " ")) ?? [];
  if (number === "" || GROUPED.test(number)) return null;
  const value = Number(number.replace(",", "."));
  const factor = MM_PER[unit];
  const extent: Extent =
    factor === undefined ? { kind: "percent", percent: value } : { kind: "length", lengthMm: value * factor };
  return SeenExtentSchema.safeParse(extent).success ? extent : null;
}

/** A row as it may have been stored before extents were numbers: with "quantity", a free text. */
export function fromQuantity(row: unknown, key: "asked" | "seen", schema: z.ZodType): unknown {
  if (typeof row !== "object" || row === null || key in row) return row;
  const { quantity = "", ...rest } = row as Readonly<Record<string, unknown>>;
  if (typeof quantity !== "string") return row;
  const extent = readExtentText(quantity);
  const taken = extent !== null && schema.safeParse(extent).success;
  return { ...rest, [key]: taken ? extent : null, [`${key}Note`]: taken ? "" : quantity };
}

/**
 * Turns the older shape of a job or a draft into the present one: its version, and the extent of each weld. Anything
 * that is not the older shape goes through untouched, for the schema to judge.
 */
export function withExtents(
  input: unknown,
  version: number,
  key: "asked" | "seen",
  schema: z.ZodType,
): unknown {
  if (typeof input !== "object" || input === null) return input;
  const { schemaVersion, welds } = input as Readonly<Record<string, unknown>>;
  const isOlder = schemaVersion === 1;
  if (!isOlder && schemaVersion !== undefined) return input;
  const speaksOld = (row: unknown): boolean =>
    isOlder || (typeof row === "object" && row !== null && "quantity" in row);
  return {
    ...input,
    schemaVersion: version,
    ...(Array.isArray(welds)
      ? { welds: welds.map((row: unknown) => (speaksOld(row) ? fromQuantity(row, key, schema) : row)) }
      : {}),
  };
}
