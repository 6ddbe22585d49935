import { flatThroat, legOfThroat, quantityNamed, throatOfLeg } from "@/lib/measure";
import { withoutDocument, type ImperfectionId } from "@/lib/trade";
import { missing, type CaseContext } from "./case-context";
import { decisionFigures } from "./decision-figures";
import { outcome } from "./outcome";
import type { CriteriaSet } from "./rule";
import { isPatch } from "./size-of";
import type { JudgeInput } from "./types";
import type { Contradiction, MissingReading, VerdictRow } from "./verdict";

/** What was given and cannot be true together. Empty for nearly every weld. */
export function contradictionsOf(
  context: CaseContext,
  rows: readonly VerdictRow[],
): readonly Contradiction[] {
  const all = [
    ...betweenGauges(context),
    ...hollowOrFull(rows),
    ...tickedAbsent(context, rows),
    ...lengthAndPlace(context),
    ...countsOfOne(context),
    ...betweenFacts(context),
  ];
  // Two rows of one clause say the same thing twice.
  return [...new Map(all.map((one) => [`${one.code} ${one.between.join()}`, one])).values()];
}

/** Nothing is accepted while readings contradict each other, whatever every row for itself says. */
export function contradictionRow(
  set: CriteriaSet,
  contradictions: readonly Contradiction[],
): readonly VerdictRow[] {
  if (contradictions.length === 0) return [];
  const readingsUsed = [...new Set(contradictions.flatMap(({ between }) => between))];
  const clause = "readings";
  const source = withoutDocument("Toeline", "own-estimate", {
    clause,
    note: "readings that cannot stand together decide nothing",
  });
  return [
    {
      ruleId: `${set.id}-readings`,
      title: "Readings that cannot stand together",
      imperfections: [],
      clause,
      edition: set.edition,
      ...outcome("open", "readings-disagree", {
        readingsUsed,
        figuresUsed: readingsUsed,
        missing: contradictions.flatMap(({ again }) => again),
      }),
      limitsPossible: [],
      notLookedFor: [],
      source,
      checkYourCopy: false,
    },
  ];
}

function betweenGauges({ section }: CaseContext): readonly Contradiction[] {
  if (section === null || section.conflict.length === 0) return [];
  const again = section.suspects.length > 0 ? section.suspects : section.conflict;
  return [
    {
      code: "fillet-readings",
      between: section.conflict,
      again: again.map((name) => missing(quantityNamed(name))),
    },
  ];
}

function hollowOrFull(rows: readonly VerdictRow[]): readonly Contradiction[] {
  const found = rows.find(({ reason }) => reason === "readings-disagree");
  return found === undefined
    ? []
    : [{ code: "hollow-or-full", between: ["throat", "convexity"], again: found.missing }];
}

/** A tick says there is none of it, a reading that it is beyond the limit. The reading counts; the tick is named. */
function tickedAbsent(context: CaseContext, rows: readonly VerdictRow[]): readonly Contradiction[] {
  const { input } = context;
  const { rootGap } = input.beadReadings;
  const ticked = (id: ImperfectionId): boolean => input.lookedFor.includes(id);
  const found: Contradiction[] = [...tickedRows(input, rows)];
  if (rootGap !== null && rootGap.value > decisionFigures.wideGapMm && ticked("wide-root-gap"))
    found.push({ code: "ticked-absent", between: ["rootGap", "wide-root-gap"], again: [] });
  // Throat or convexity made the size too small, and nothing but a look says that the face is full.
  const bySize = rows.some(
    ({ result, figuresUsed }) =>
      (result === "fails" || result === "open") &&
      figuresUsed.includes("leg1") &&
      (figuresUsed.includes("throat") || figuresUsed.includes("convexity")),
  );
  const evidence = hollowBy(context);
  if (bySize && evidence.length > 0 && ticked("concave-face"))
    found.push({ code: "ticked-absent", between: [...evidence, "concave-face"], again: [] });
  return found;
}

/** Readings that make the face hollow: a convexity below nought, a throat thinner than the legs make it. */
function hollowBy({ input }: CaseContext): readonly string[] {
  const { leg1, leg2, throat, convexity } = input.beadReadings;
  const angle = input.weld.plateAngleDeg;
  const isThin =
    throat !== null && leg1 !== null && leg2 !== null
      ? throat.value < flatThroat(leg1.value, leg2.value, angle) ||
        legOfThroat(throat.value, angle) < Math.min(leg1.value, leg2.value)
      : false;
  return [...(isThin ? ["throat"] : []), ...(convexity !== null && convexity.value < 0 ? ["convexity"] : [])];
}

function tickedRows(input: JudgeInput, rows: readonly VerdictRow[]): readonly Contradiction[] {
  return rows.flatMap((row): Contradiction[] => {
    const ticked = row.imperfections.filter((id) => input.lookedFor.includes(id));
    const readings = row.readingsUsed.filter((name) => name in input.beadReadings);
    const beyond = row.result === "fails" || row.reason === "qualified-person-decides";
    const isMarked = input.observations.some(({ imperfection }) => row.imperfections.includes(imperfection));
    return beyond && readings.length > 0 && ticked.length > 0 && !isMarked
      ? [{ code: "ticked-absent", between: [...readings, ...ticked], again: [] }]
      : [];
  });
}

function lengthAndPlace({ input }: CaseContext): readonly Contradiction[] {
  return input.observations.flatMap(({ id, alongMm, lengthMm }): Contradiction[] => {
    if (alongMm === null || lengthMm === null) return [];
    const stretch = Math.abs(alongMm[1] - alongMm[0]);
    const beyond = stretch - lengthMm.value - lengthMm.expandedUncertainty;
    if (beyond <= Math.max(decisionFigures.windingMm, decisionFigures.winding * stretch)) return [];
    const again: MissingReading[] = [missing("length", id), missing("place-along", id)];
    return [{ code: "length-and-place", between: [`${id}.length`, `${id}.alongMm`], again }];
  });
}

/** Pores of which several were counted, in a mark that is judged as one: whoever counted them can say how they lie. */
function countsOfOne({ input }: CaseContext): readonly Contradiction[] {
  return input.observations
    .filter((one) => one.aboutCount !== null && one.imperfection === "surface-porosity" && !isPatch(one))
    .map(({ id }) => ({ code: "count-of-one", between: [`${id}.aboutCount`], again: [] }));
}

function betweenFacts({ input }: CaseContext): readonly Contradiction[] {
  const { weld } = input;
  const found: Contradiction[] = [];
  if (weld.legMm !== null && weld.throatMm !== null) {
    const throat = throatOfLeg(weld.legMm, weld.plateAngleDeg);
    if (Math.abs(throat - weld.throatMm) > decisionFigures.roundedOnDrawingMm)
      found.push({
        code: "leg-and-throat-asked",
        between: ["legMm", "throatMm"],
        again: [missing("specified-leg"), missing("specified-throat")],
      });
  }
  const { buttThicknessMm: s, thicknessMm: t, completePenetration } = weld;
  if (s !== null && t !== null && s < t && completePenetration === true)
    found.push({
      code: "penetration-asked",
      between: ["buttThicknessMm", "completePenetration"],
      again: [missing("complete-penetration")],
    });
  return found;
}
