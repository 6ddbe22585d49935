import {
  BeadReadingsSchema,
  JudgeInputSchema,
  patchPatterns,
  shopSetId,
  type BeadReadings,
  type JudgeInput,
  type ShopCriteria,
} from "@/lib/accept";
import { countAbout, type Mark } from "@/lib/marks";
import {
  beadQuantityRows,
  gaugeQuantity,
  judgedQuantities,
  type BeadQuantity,
  type MeasuredMark,
  type Quantity,
} from "@/lib/measure";
import { marksAcrossPhotos, weldLengthMm, type NumberedMark, type PhotoMeasures } from "./across-photos";
import type { BeadContent, BeadReading, PhotoRole } from "./bead";
import { weldKind } from "./weld-kind";

/** What the judge is given; null while no criteria set is chosen. */
export function judgeInput(
  content: BeadContent,
  measured: readonly PhotoMeasures[],
  shopSets: readonly ShopCriteria[] = [],
): JudgeInput | null {
  const { judgement, setup } = content;
  const { criteriaId } = judgement;
  if (criteriaId === null) return null;
  const marked = marksOnTheWeld(content, measured);
  const present = new Set(marked.map(({ mark }) => mark.imperfection));
  return JudgeInputSchema.parse({
    criteriaId,
    shop: shopSets.find((set) => shopSetId(set) === criteriaId) ?? null,
    settings: judgement.criteriaSettings,
    weld: {
      kind: weldKind(setup.joint),
      thicknessMm: setup.thicknessMm,
      legMm: setup.targetLegMm,
      lengthMm: weldLengthMm(content, measured),
      ...judgement.weld,
      // Only a lap joint has a lapped edge to lie along.
      alongLapEdge: setup.joint === "lap" ? judgement.weld.alongLapEdge : false,
    },
    observations: marked.map((one) => observation(one, content)),
    beadReadings: beadReadings(content),
    lookedFor: judgement.lookedFor.filter((id) => !present.has(id)),
  });
}

const roleOf = (content: BeadContent, photoId: string): PhotoRole | null =>
  content.photos.find(({ id }) => id === photoId)?.role ?? null;

/** What is marked on the weld as it was seen. What a cut laid open has macro criteria of its own. */
function marksOnTheWeld(content: BeadContent, measured: readonly PhotoMeasures[]): readonly NumberedMark[] {
  return marksAcrossPhotos(content, measured).filter(({ photoId }) => roleOf(content, photoId) !== "section");
}

function observation({ key, photoId, mark, measured }: NumberedMark, content: BeadContent) {
  return {
    id: key,
    imperfection: mark.imperfection,
    // What is seen on the back is at the root, whether or not somebody said so.
    place: mark.place ?? (roleOf(content, photoId) === "back" ? "root" : null),
    patterns: mark.patterns,
    aboutCount: countAbout(mark),
    alongMm: measured?.alongMm ?? null,
    lengthMm: measured?.lengthMm ?? null,
    depthMm: measured?.depthMm ?? null,
    heightMm: measured?.heightMm ?? null,
    diameterMm: poreDiameter(mark, measured),
    areaMm2: measured?.areaMm2 ?? null,
  };
}

/**
 * Of one pore the greatest it may be taken for: drawn as an outline, its greatest extent and not the circle of equal area.
 * Of a patch only a gauge tells its largest pore; the outline is the patch's.
 */
function poreDiameter(mark: Mark, sizes: MeasuredMark | null): Quantity | null {
  if (sizes === null) return null;
  const { diameterMm, lengthMm } = sizes;
  if (diameterMm === null || diameterMm.source === "gauge") return diameterMm;
  if (mark.imperfection !== "surface-porosity" || mark.shape.kind !== "outline") return diameterMm;
  if (mark.patterns.some((pattern) => patchPatterns.has(pattern))) return null;
  return lengthMm !== null && lengthMm.value > diameterMm.value ? lengthMm : diameterMm;
}

function gaugeValue(content: BeadContent, quantity: BeadQuantity): BeadReading | null {
  // Readings are appended, so the last one of a quantity is the newest.
  return content.judgement.readings.findLast((reading) => reading.quantity === quantity) ?? null;
}

function beadReadings(content: BeadContent): BeadReadings {
  return BeadReadingsSchema.parse(
    Object.fromEntries(
      judgedQuantities.map((quantity) => {
        const { name, unit } = beadQuantityRows[quantity];
        return [name, asQuantity(gaugeValue(content, quantity), unit)];
      }),
    ),
  );
}

/** Resolution and value of a protractor are in degrees; the arithmetic of a reading is the same. */
function asQuantity(reading: BeadReading | null, unit: Quantity["unit"]): Quantity | null {
  if (reading === null) return null;
  const { value, resolution, instrument, study } = reading;
  return { ...gaugeQuantity({ valueMm: value, resolutionMm: resolution, instrument, study }), unit };
}
