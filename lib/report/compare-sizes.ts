import { marksAcrossPhotos, type Assessed, type BeadContent } from "@/lib/assess";
import { countAbout } from "@/lib/marks";
import {
  beadQuantities,
  beadQuantityRows,
  differenceQuantity,
  gaugeQuantity,
  sumQuantities,
  type BeadQuantity,
  type Quantity,
} from "@/lib/measure";
import { imperfections, type ImperfectionId } from "@/lib/trade";
import { formatQuantity, type UnitPreferences } from "@/lib/units";
import type { SummarisableBead } from "./bead-summary";
import { lengthText, markSizeText } from "./length-text";
import { missingWords } from "./verdict-words";

/** One size on both beads, in words. */
export interface ComparedSize {
  readonly label: string;
  /** null: not read there, or not marked. */
  readonly before: string | null;
  readonly after: string | null;
  /** "1.2 ± 0.4 mm more"; that none is seen where the doubt is as large; why there is none to state. */
  readonly difference: string;
  /** null: not to be said. */
  readonly seen: boolean | null;
}

type Sides = readonly [before: Quantity | null, after: Quantity | null];

/**
 * The sizes of two beads and how far they differ, with the uncertainty of that: errors of the two taken as independent
 * (JCGM 100:2008, 5.1.2). A difference no larger than its expanded uncertainty is no difference seen. Readings of the bead
 * first, then for each kind what is longest, deepest, highest or widest, and the length of all together.
 */
export function compareSizes(
  before: Assessed<SummarisableBead>,
  after: Assessed<SummarisableBead>,
  units: UnitPreferences,
): readonly ComparedSize[] {
  const readings = beadQuantities.map((quantity) => ({
    label: capital(missingWords[quantity]),
    sides: [readingOf(before.content, quantity), readingOf(after.content, quantity)] as const,
  }));
  const kinds = [...new Set([...kindsOn(before), ...kindsOn(after)])];
  const marks = kinds.flatMap((id) => kindRows(id, before, after));
  return [...readings, ...marks]
    .filter(({ sides }) => sides.some((one) => one !== null))
    .map(({ label, sides }) => ({ label, ...inWords(sides, units) }));
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The last reading of a quantity is the one that counts. */
function readingOf({ judgement }: BeadContent, quantity: BeadQuantity): Quantity | null {
  const found = judgement.readings.findLast((reading) => reading.quantity === quantity);
  if (found === undefined) return null;
  const { value, resolution, instrument, study } = found;
  const read = gaugeQuantity({ valueMm: value, resolutionMm: resolution, instrument, study });
  return { ...read, unit: beadQuantityRows[quantity].unit };
}

const kindsOn = ({ content }: Assessed<SummarisableBead>): readonly ImperfectionId[] =>
  content.photos.flatMap(({ drawing }) => drawing.marks.map(({ imperfection }) => imperfection));

/** What is told of a kind, and how several marks of it come to one figure. */
const figures = [
  { name: "longest", of: "lengthMm", all: greatest },
  { name: "length of all", of: "lengthMm", all: (list: readonly Quantity[]) => sumQuantities(list) },
  { name: "deepest", of: "depthMm", all: greatest },
  { name: "highest", of: "heightMm", all: greatest },
  { name: "widest", of: "diameterMm", all: greatest },
] as const;

function greatest(list: readonly Quantity[]): Quantity {
  return list.reduce((a, b) => (b.value > a.value ? b : a));
}

function kindRows(id: ImperfectionId, ...beads: [Assessed<SummarisableBead>, Assessed<SummarisableBead>]) {
  return figures.flatMap(({ name, of, all }) => {
    const lists = beads.map((bead) => sizesOf(bead, id, of));
    // Of one mark the longest is all there is.
    if (name === "length of all" && lists.every((list) => list.length < 2)) return [];
    const [before, after] = lists.map((list) => (list.length === 0 ? null : all(list)));
    return [{ label: `${imperfections[id].name}, ${name}`, sides: [before ?? null, after ?? null] as const }];
  });
}

/** Of every mark of a kind that has this size; the size of a patch is none of what lies in it. */
function sizesOf(
  { content, assessment }: Assessed<SummarisableBead>,
  id: ImperfectionId,
  of: (typeof figures)[number]["of"],
): readonly Quantity[] {
  return marksAcrossPhotos(content, assessment.photos)
    .filter(({ mark }) => mark.imperfection === id && countAbout(mark) === null)
    .flatMap(({ measured }) => measured?.[of] ?? []);
}

function inWords([before, after]: Sides, units: UnitPreferences): Omit<ComparedSize, "label"> {
  const words = (one: Quantity | null): string | null => one && sizeWords(one, units);
  const sides = { before: words(before), after: words(after) };
  if (before === null || after === null)
    return { ...sides, difference: "Only one of the two has it.", seen: null };
  const apart = differenceQuantity(after, before);
  const size = Math.abs(apart.value);
  const seen = size > apart.expandedUncertainty;
  if (!seen) return { ...sides, difference: "No difference seen.", seen };
  const more = apart.value > 0 ? "more" : "less";
  return { ...sides, difference: `${sizeWords({ ...apart, value: size }, units)} ${more}`, seen };
}

function sizeWords({ unit, value, expandedUncertainty }: Quantity, units: UnitPreferences): string {
  if (unit === "deg") return formatQuantity("measuredAngle", value, "metric", expandedUncertainty);
  return value < 0
    ? `−${lengthText(-value, units, expandedUncertainty)}`
    : markSizeText(value, units, expandedUncertainty);
}
