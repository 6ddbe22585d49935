import { decide, spreadOf } from "@/lib/accept";
import type { Quantity } from "@/lib/measure";
import type { ImperfectionId } from "@/lib/trade";
import type { SectionTest } from "./criteria";
import { unique } from "./decide-figure";
import { openFinding, type Finding } from "./finding";
import type { SectionGiven, SectionMissing } from "./judgement";
import { limitRange } from "./limit-range";
import type { SectionFigures } from "./types";

/** Marked: fails. Neither marked nor looked for: open. */
export function decideNone(imperfections: readonly ImperfectionId[], given: SectionGiven): Finding {
  const marked = given.marks.filter(({ imperfection }) => imperfections.includes(imperfection));
  if (marked.length > 0) return { ...openFinding, result: "fails", markIds: marked.map(({ id }) => id) };
  const unseen = imperfections.filter((id) => !given.lookedFor.includes(id));
  return unseen.length === 0
    ? { ...openFinding, result: "meets" }
    : { ...openFinding, missing: [{ kind: "look", imperfections: unseen }] };
}

/**
 * Fusion is shown by metal melted on both sides, and by nobody's finding a place without it. The figures alone never fail
 * the row: an edge that was melted and not eaten into is drawn on the old edge just like one that was not melted.
 */
export function decideFused(figures: SectionFigures, given: SectionGiven): Finding {
  const looked = decideNone(["lack-of-fusion"], given);
  if (looked.result === "fails") return looked;
  const missing: SectionMissing[] = [...looked.missing];
  for (const figure of ["fusion-1-least", "fusion-2-least"] as const) {
    const quantity = figures[figure];
    if (quantity === null) missing.push({ kind: "figure", figure });
    else if (!(quantity.value > spreadOf(quantity, "as-read"))) missing.push({ kind: "closer", figure });
  }
  const sides = [figures["fusion-1-least"], figures["fusion-2-least"]];
  const least = sides.some((side) => side === null)
    ? null
    : sides.reduce((a, b) => (a!.value <= b!.value ? a : b))!;
  return {
    ...openFinding,
    result: missing.length === 0 ? "meets" : "open",
    figure: least === null ? null : least === sides[0] ? "fusion-1-least" : "fusion-2-least",
    value: least?.value ?? null,
    expandedUncertainty: least?.expandedUncertainty ?? null,
    missing,
  };
}

/** The greatest that is known of a mark's size in the section. */
function sizeOf({ lengthMm, diameterMm, depthMm }: SectionGiven["marks"][number]): Quantity | null {
  if (depthMm !== null) return depthMm;
  const sizes = [lengthMm, diameterMm].filter((one) => one !== null);
  return sizes.length === 0 ? null : sizes.reduce((a, b) => (a.value >= b.value ? a : b));
}

/** Each mark against the limit; the worst decides. */
export function decideMarks(
  test: Extract<SectionTest, { test: "each" }>,
  figures: SectionFigures,
  given: SectionGiven,
): Finding {
  const marked = given.marks.filter(({ imperfection }) => test.imperfections.includes(imperfection));
  if (marked.length === 0) return decideNone(test.imperfections, given);
  const { range, missing } = limitRange(test.limit, given, figures["face-width"]);
  const limit =
    range.low === range.high && missing.length === 0 ? { comparison: "<=" as const, value: range.low } : null;
  const stated = missing.map((what): SectionMissing => ({ kind: "stated", what }));
  const each = marked.map((mark): Finding => {
    const size = sizeOf(mark);
    const shown = {
      ...openFinding,
      value: size?.value ?? null,
      expandedUncertainty: size?.expandedUncertainty ?? null,
      limit,
      markIds: [mark.id],
    };
    if (size === null) return { ...shown, missing: [{ kind: "size", markId: mark.id }, ...stated] };
    const figure = { low: size.value, high: size.value, spread: spreadOf(size, "as-read") };
    const { result } = decide(figure, "<=", range);
    if (result === "meets" && onlyShort(test, given))
      return { ...shown, missing: [{ kind: "length-along" }] };
    if (result !== "open") return { ...shown, result };
    return { ...shown, missing: stated.length > 0 ? stated : [{ kind: "closer", figure: null }] };
  });
  const worst = (["fails", "open"] as const).find((result) => each.some((one) => one.result === result));
  const result = worst ?? "meets";
  const those = each.filter((one) => one.result === result);
  const shown = [...those].sort((a, b) => (b.value ?? Infinity) - (a.value ?? Infinity))[0]!;
  return {
    ...shown,
    markIds: those.flatMap(({ markIds }) => markIds),
    missing: unique(those.flatMap((one) => one.missing)),
  };
}

/** In plate this thin, or of unknown thickness, the code allows it in short stretches only. */
function onlyShort(
  { onlyShortUpToMm }: Extract<SectionTest, { test: "each" }>,
  { plateThicknessMm }: SectionGiven,
): boolean {
  return onlyShortUpToMm !== null && (plateThicknessMm === null || plateThicknessMm <= onlyShortUpToMm);
}
