import { z } from "zod";
import { imperfectionIds } from "@/lib/trade";
import type { MeasuredMark } from "./types";
import { leastSpacing, worstAmount, worstCount, worstLength } from "./windows";

/** What to look for along the weld. */
export const WindowAskedSchema = z.object({
  imperfections: z.array(z.enum(imperfectionIds)).min(1),
  of: z.enum(["length", "diameter", "count"]),
  windowMm: z.number().positive().max(20_000),
  closedLengthMm: z
    .number()
    .positive()
    .max(20_000)
    .nullable()
    .default(null)
    .describe("length of a weld that closes on itself; null: it does not"),
});
export type WindowAsked = z.infer<typeof WindowAskedSchema>;

export interface WindowFound extends WindowAsked {
  /** Worst sum in mm, or worst count; null when a mark has no place along the weld or no such size. */
  readonly worst: number | null;
  /** Where that window begins, mm from the start of the weld. */
  readonly fromMm: number | null;
  /** Least distance along the weld from middle to middle; null for fewer than two marks. */
  readonly leastSpacingMm: number | null;
}

/** The worst window over measured marks. Values only: what is judged goes through the criteria with its uncertainty. */
export function worstInWindow(marks: readonly MeasuredMark[], asked: WindowAsked): WindowFound {
  const mine = marks.filter(({ imperfection }) => asked.imperfections.includes(imperfection));
  const places = mine.flatMap(({ alongMm }) => (alongMm === null ? [] : [alongMm]));
  const middles = places.map(([from, to]) => (from + to) / 2);
  const nearest = leastSpacing(middles);
  const leastSpacingMm = places.length === mine.length && Number.isFinite(nearest) ? nearest : null;
  const diameters = mine.flatMap(({ diameterMm }) => (diameterMm === null ? [] : [diameterMm.value]));
  const lacks = places.length < mine.length || (asked.of === "diameter" && diameters.length < mine.length);
  if (lacks) return { ...asked, worst: null, fromMm: null, leastSpacingMm };
  const { windowMm, closedLengthMm } = asked;
  const found =
    asked.of === "length"
      ? worstLength(places, windowMm, closedLengthMm)
      : asked.of === "count"
        ? worstCount(middles, windowMm, closedLengthMm)
        : worstAmount(
            middles.map((at, i) => ({ at, amount: diameters[i]! })),
            windowMm,
            closedLengthMm,
          );
  return { ...asked, worst: found.sum, fromMm: found.from, leastSpacingMm };
}
