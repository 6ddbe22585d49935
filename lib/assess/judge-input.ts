import {
  BeadReadingsSchema,
  JudgeInputSchema,
  shopSetId,
  type BeadReadings,
  type JudgeInput,
  type ShopCriteria,
} from "@/lib/accept";
import { gaugeQuantity, type Quantity } from "@/lib/measure";
import { marksAcrossPhotos, weldLengthMm, type PhotoMeasures } from "./across-photos";
import type { BeadContent, BeadQuantity, BeadReading } from "./bead";
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
  const marked = marksAcrossPhotos(content, measured);
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
    observations: marked.map(({ key, mark, measured: sizes }) => ({
      id: key,
      imperfection: mark.imperfection,
      place: mark.place,
      alongMm: sizes?.alongMm ?? null,
      lengthMm: sizes?.lengthMm ?? null,
      depthMm: sizes?.depthMm ?? null,
      heightMm: sizes?.heightMm ?? null,
      diameterMm: sizes?.diameterMm ?? null,
      areaMm2: sizes?.areaMm2 ?? null,
    })),
    beadReadings: beadReadings(content),
    lookedFor: judgement.lookedFor.filter((id) => !present.has(id)),
  });
}

function gaugeValue(content: BeadContent, quantity: BeadQuantity): BeadReading | null {
  // Readings are appended, so the last one of a quantity is the newest.
  return content.judgement.readings.findLast((reading) => reading.quantity === quantity) ?? null;
}

function beadReadings(content: BeadContent): BeadReadings {
  const read = (quantity: BeadQuantity) =>
    asQuantity(gaugeValue(content, quantity), quantity === "toe-angle" ? "deg" : "mm");
  return BeadReadingsSchema.parse({
    leg1: read("leg-1"),
    leg2: read("leg-2"),
    throat: read("throat"),
    convexity: read("convexity"),
    reinforcement: read("reinforcement"),
    width: read("width"),
    toeAngle: read("toe-angle"),
    misalignment: read("misalignment"),
    rootGap: read("root-gap"),
  });
}

/** Resolution and value of a protractor are in degrees; the arithmetic of a reading is the same. */
function asQuantity(reading: BeadReading | null, unit: Quantity["unit"]): Quantity | null {
  if (reading === null) return null;
  const { value, resolution, instrument } = reading;
  return { ...gaugeQuantity({ valueMm: value, resolutionMm: resolution, instrument }), unit };
}
