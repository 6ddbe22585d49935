import { groupStyles, type MarkGroup, type MarkShapeData } from "@/lib/marks";
import { imperfectionIds, imperfections, type Imperfection, type ImperfectionId } from "@/lib/trade";

export interface PickerGroup {
  readonly key: MarkGroup | "suggested";
  readonly name: string;
  readonly rows: readonly Imperfection[];
}

const groupOrder = Object.keys(groupStyles) as readonly MarkGroup[];

/** Lower case without accents, hyphens as spaces: what a person types is compared with what is written. */
const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{Diacritic}/gu, "")
    .replace(/[-–]/g, " ")
    .toLowerCase();

/** One word or two: rollover, roll-over and roll over are the same. */
const joined = (text: string): string => plain(text).replaceAll(" ", "");

/**
 * What is called just so, where anything is: a blow hole is a pore, although a burn-through is described with both words.
 * Otherwise whatever has all the words in its names, its look or its number.
 */
function called(typed: string): readonly Imperfection[] {
  const all = imperfectionIds.map((id) => imperfections[id]);
  const whole = joined(typed);
  const exactly = all.filter(({ name, alsoCalled }) =>
    [name, ...alsoCalled].some((one) => joined(one) === whole),
  );
  if (exactly.length > 0) return exactly;
  const words = plain(typed).split(/\s+/).filter(Boolean);
  return all.filter((row) => matches(row, words));
}

function matches(imperfection: Imperfection, words: readonly string[]): boolean {
  const { name, alsoCalled, look, iso6520, iso6520InButt } = imperfection;
  const text = [name, ...alsoCalled, look, iso6520 ?? "", iso6520InButt ?? ""].join(" ");
  return words.every((word) => plain(text).includes(word) || joined(text).includes(word));
}

/** Said where a word is looked for that names no mark, and where it belongs instead. */
export function pickerHint(typed: string): string {
  return joined(typed).includes("soot")
    ? "Soot is no mark of its own. Mark the pores under it, or answer the question about soot under Causes."
    : "Nothing is called that. Try a shorter word, or clear the search.";
}

/**
 * The vocabulary in groups, every typed word found in each row; those usually drawn with this shape first within
 * their group. Suggestions stand on top and again in their group, so that nobody has to know where a thing is.
 */
export function pickerGroups(
  typed: string,
  shape: MarkShapeData["kind"] | undefined,
  suggested: readonly ImperfectionId[],
): readonly PickerGroup[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  const found = called(typed);
  const fits = (row: Imperfection): number => (row.usualShape === shape ? 0 : 1);
  const groups = groupOrder.map((key): PickerGroup => {
    const rows = found.filter((row) => row.group === key).sort((a, b) => fits(a) - fits(b));
    return { key, name: groupStyles[key].name, rows };
  });
  const first = suggested.map((id) => imperfections[id]).filter(() => words.length === 0);
  const top: PickerGroup = { key: "suggested", name: "On this bead already", rows: first };
  return [top, ...groups].filter((group) => group.rows.length > 0);
}
