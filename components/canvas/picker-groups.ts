import { groupStyles, type MarkGroup, type MarkShapeData } from "@/lib/marks";
import { findImperfections, imperfectionIds, imperfections, type ImperfectionId } from "@/lib/trade";

/** What a bead has to say on what a new mark may be. */
export interface PickerOffer {
  /** Marked on it already. */
  readonly onBead: readonly ImperfectionId[];
  /** By what its marks, looks and settings point to, the likeliest first. */
  readonly likely: readonly ImperfectionId[];
}

export const nothingOffered: PickerOffer = { onBead: [], likely: [] };

/** What somebody who is not sure is looking at: the kinds of looks, or one kind beside what it is taken for. */
export type Doubt = ImperfectionId | "unsure";

export interface PickerGroup {
  readonly key: MarkGroup | "likely" | "found";
  readonly name: string;
  readonly rows: readonly ImperfectionId[];
}

const groupOrder = Object.keys(groupStyles) as readonly MarkGroup[];
/** More than a hand of guesses is a list again. */
const LIKELY = 5;

type Shape = MarkShapeData["kind"];

/** Said where a word is looked for that names no mark, and where it belongs instead; empty where there is nothing to say. */
export function pickerHint(typed: string): string {
  if (/soot/i.test(typed))
    return "Soot is no mark of its own. Mark what lies under it, or answer the question about soot under Causes.";
  return typed.trim() !== "" && findImperfections(typed).length === 0
    ? "Nothing is called that. Try a shorter word, or say that you are not sure."
    : "";
}

/**
 * While something is typed: what was found, the likeliest first. Otherwise what is likeliest on this bead, then all in
 * groups, those usually drawn with this shape first; the likeliest stand again in their groups, so that nobody has to
 * know where a thing is.
 */
export function pickerGroups(
  typed: string,
  shape: Shape | undefined,
  offer: PickerOffer,
): readonly PickerGroup[] {
  if (typed.trim() !== "") {
    const rows = findImperfections(typed);
    return rows.length > 0 ? [{ key: "found", name: "Found", rows }] : [];
  }
  const misfit = (id: ImperfectionId): number => (fits(id, shape) ? 0 : 1);
  const groups = groupOrder.map((key): PickerGroup => {
    const rows = imperfectionIds.filter((id) => imperfections[id].group === key);
    return { key, name: groupStyles[key].name, rows: rows.toSorted((a, b) => misfit(a) - misfit(b)) };
  });
  const likely: PickerGroup = { key: "likely", name: "Most likely here", rows: likeliest(shape, offer) };
  return [likely, ...groups].filter(({ rows }) => rows.length > 0);
}

const fits = (id: ImperfectionId, shape: Shape | undefined): boolean =>
  shape === undefined || imperfections[id].usualShape === shape;

/** What is on the bead already before what may be; of neither what is never drawn so, unless nothing else is there. */
function likeliest(shape: Shape | undefined, { onBead, likely }: PickerOffer): readonly ImperfectionId[] {
  const all = [...new Set([...onBead, ...likely])];
  const drawnSo = all.filter((id) => fits(id, shape));
  return (drawnSo.length > 0 ? drawnSo : all).slice(0, LIKELY);
}
