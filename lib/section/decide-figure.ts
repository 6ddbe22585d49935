import { decide, spreadOf } from "@/lib/accept";
import type { SectionTest } from "./criteria";
import { openFinding, type Finding } from "./finding";
import type { SectionGiven, SectionMissing } from "./judgement";
import { limitRange } from "./limit-range";
import type { SectionFigureId, SectionFigures } from "./types";

type FigureTest = Extract<SectionTest, { test: "figure" }>;

/** Every figure of the test on its own; the row has the worst of their results, and the figure with the least room. */
export function decideFigure(test: FigureTest, figures: SectionFigures, given: SectionGiven): Finding {
  const each = test.figures.map((id) => decideOne(test, id, figures, given));
  const order = ["fails", "open", "meets"] as const;
  const worst = order.find((result) => each.some((one) => one.result === result)) ?? "open";
  const candidates = each.filter(({ result }) => result === worst);
  const room = ({ value, limit }: Finding): number => {
    if (value === null || limit === null) return -Infinity;
    return limit.comparison === "<=" ? limit.value - value : value - limit.value;
  };
  const shown = [...candidates].sort((a, b) => room(a) - room(b))[0] ?? openFinding;
  // Told once what is missing for any of them: the other figure may be missing too.
  const missing = worst === "open" ? unique(each.flatMap((one) => one.missing)) : [];
  return { ...shown, missing };
}

function decideOne(
  test: FigureTest,
  id: SectionFigureId,
  figures: SectionFigures,
  given: SectionGiven,
): Finding {
  const quantity = figures[id];
  const stated = test.less === null ? 0 : given.specifiedThroatMm;
  const { range, missing } = limitRange(test.limit, given, figures["face-width"]);
  const limit =
    range.low === range.high && missing.length === 0
      ? { comparison: test.comparison, value: range.low }
      : null;
  const lacks: SectionMissing[] = [
    ...(quantity === null ? [{ kind: "figure" as const, figure: id }] : []),
    ...(stated === null ? [{ kind: "stated" as const, what: "specified-throat" as const }] : []),
    ...missing.map((what) =>
      what === "face-width"
        ? { kind: "figure" as const, figure: "face-width" as const }
        : { kind: "stated" as const, what },
    ),
  ];
  const value = quantity === null || stated === null ? null : quantity.value - stated;
  const shown = {
    ...openFinding,
    figure: id,
    value,
    expandedUncertainty: value === null ? null : (quantity?.expandedUncertainty ?? null),
    limit,
  };
  if (quantity === null || value === null) return { ...shown, missing: unique(lacks) };
  const { result } = decide(
    { low: value, high: value, spread: spreadOf(quantity, "as-read") },
    test.comparison,
    range,
  );
  if (result !== "open") return { ...shown, result };
  return { ...shown, missing: lacks.length > 0 ? unique(lacks) : [{ kind: "closer", figure: id }] };
}

export function unique(list: readonly SectionMissing[]): readonly SectionMissing[] {
  const seen = new Set<string>();
  return list.filter((one) => {
    const key = JSON.stringify(one);
    return seen.has(key) ? false : (seen.add(key), true);
  });
}
