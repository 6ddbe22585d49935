import type { MissingQuantity } from "@/lib/accept";
import { isJudgedName, quantityNamed } from "@/lib/measure";
import { imperfections, type ImperfectionId } from "@/lib/trade";
import { numberRanges } from "./mark-rows";
import { missingWords } from "./verdict-words";

/** A mark's number on its photo; null: not known. */
export type MarkNumber = (id: string) => number | null;

/** Facts of the weld by the names rows use; readings of the bead stand in lib/measure. */
const facts: Readonly<Record<string, MissingQuantity>> = {
  legMm: "specified-leg",
  throatMm: "specified-throat",
  buttThicknessMm: "thickness",
  completePenetration: "complete-penetration",
};

const named = (figure: string): MissingQuantity | undefined =>
  isJudgedName(figure) ? quantityNamed(figure) : facts[figure];

const sizes: Readonly<Record<string, string>> = {
  length: "length",
  depth: "depth",
  height: "height",
  diameter: "diameter",
  area: "area",
  poreCount: "number of pores",
  aboutCount: "count by eye",
  alongMm: "place along the weld",
};

/** "marks 3, 5–7", or the mark's own id where it has no number. */
export function markWords(ids: readonly string[], markNumber: MarkNumber): string {
  const numbers = ids.flatMap((id) => markNumber(id) ?? []);
  if (numbers.length < ids.length) return ids.join(", ");
  return `mark${numbers.length === 1 ? "" : "s"} ${numberRanges(numbers)}`;
}

/** A figure as rows name it ("throat", "o1.depth"), in words: "throat", "depth of mark 3". */
export function figureWords(figure: string, markNumber: MarkNumber): string {
  // A mark's id holds no dot; its size stands after the last.
  const dot = figure.lastIndexOf(".");
  const size = dot < 0 ? undefined : sizes[figure.slice(dot + 1)];
  if (size !== undefined) return `${size} of ${markWords([figure.slice(0, dot)], markNumber)}`;
  const reading = named(figure);
  if (reading !== undefined) return missingWords[reading];
  return figure in imperfections ? imperfections[figure as ImperfectionId].name.toLowerCase() : figure;
}

/** What a row went by: bead readings and ticks by name, marks by number. */
export function readBy(used: readonly string[], markNumber: MarkNumber): string {
  const isMark = (id: string): boolean =>
    named(id) === undefined && !(id in imperfections) && !id.includes(".");
  const names = used.filter((id) => !isMark(id)).map((id) => figureWords(id, markNumber));
  const marks = used.filter(isMark);
  return [...names, ...(marks.length > 0 ? [markWords(marks, markNumber)] : [])].join(", ");
}
