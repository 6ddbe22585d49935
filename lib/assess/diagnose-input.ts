import { answersTo, type DiagnoseInput, type ShopCounts } from "@/lib/diagnose";
import type { BeadQuantity } from "@/lib/measure";
import { marksAcrossPhotos, weldLengthMm, type PhotoMeasures } from "./across-photos";
import type { BeadContent } from "./bead";

/** What was recorded, as the diagnosis' own kind of evidence. Sizes come from gauges only; a plan view shows no leg. */
export function diagnoseInput(
  content: BeadContent,
  measured: readonly PhotoMeasures[],
  shopCounts: ShopCounts,
): DiagnoseInput {
  const marked = new Set(marksAcrossPhotos(content, measured).map(({ mark }) => mark.imperfection));
  return {
    schemaVersion: 1,
    setup: content.setup,
    findings: marksAcrossPhotos(content, measured).map(({ mark }) => ({
      imperfection: mark.imperfection,
      place: mark.place,
      stretch: mark.stretch,
      patterns: mark.patterns,
    })),
    // A tick that was right before the mark was drawn must not contradict it.
    lookedForAbsent: content.judgement.lookedFor.filter((id) => !marked.has(id)),
    answers: understoodAnswers(content.judgement.answers),
    bead: {
      widthMm: gaugeMean(content, ["width"]),
      legMm: gaugeMean(content, ["leg-1", "leg-2"]),
      lengthMm: weldLengthMm(content, measured),
    },
    shopCounts,
  };
}

/** An answer given under older tables, to a question that is not asked any more, says nothing and must not block the rest. */
function understoodAnswers(answers: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(answers).filter(([id, answer]) => answersTo(id)?.includes(answer)),
  );
}

function gaugeMean(content: BeadContent, quantities: readonly BeadQuantity[]): number | null {
  const values = content.judgement.readings
    .filter((reading) => quantities.includes(reading.quantity))
    .map(({ value }) => value);
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}
