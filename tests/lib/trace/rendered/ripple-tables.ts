import { rippleKinds, type RippleKind, type RippleLine } from "./ripple-study";

const words: Readonly<Record<RippleKind, string>> = {
  drawn: "as drawn",
  smooth: "the same beads without ripples",
  plate: "the plate beside the bead",
  shuffled: "phases drawn anew, row by row",
};
const setWords: Readonly<Record<RippleLine["set"], string>> = {
  "ripples-tune": "joints of the training, the rules were settled on these",
  "ripples-kept": "every joint, fresh, kept apart",
};

const row = (...cells: readonly (string | number)[]): string => `| ${cells.join(" | ")} |`;
const percent = (share: number | undefined): string =>
  share === undefined ? "-" : `${(100 * share).toFixed(1)} %`;
const quantile = (list: readonly number[], q: number): number | undefined =>
  list.toSorted((a, b) => a - b)[Math.min(list.length - 1, Math.floor(q * list.length))];

function rippleRow(set: RippleLine["set"], kind: RippleKind, all: readonly RippleLine[]): string | null {
  const mine = all.filter((one) => one.set === set && one.ripples === kind);
  if (mine.length === 0) return null;
  const read = mine.filter((one) => one.off !== null);
  const offs = read.map(({ off }) => off!);
  const within = read.filter(({ off, stated }) => Math.abs(off!) <= stated).length;
  const name = `${words[kind]}; ${setWords[set]}`;
  if (kind !== "drawn") return row(name, `${read.length} of ${mine.length}`, "-", "-", "-");
  return row(
    name,
    `${read.length} of ${mine.length}`,
    `${within} of ${read.length}`,
    percent(quantile(offs, 0.5)),
    percent(quantile(offs.map(Math.abs), 0.9)),
  );
}

/** Spacings read against those drawn, and what was read where there are no ripples. Renders: no accuracy on photographs. */
export function rippleTable(all: readonly RippleLine[], today: string): string {
  const rows = (Object.keys(setWords) as RippleLine["set"][]).flatMap((set) =>
    rippleKinds.map((kind) => rippleRow(set, kind, all)),
  );
  return [
    `Ripple spacing on renders, ${today}. Renders, not photographs.`,
    "",
    row("pictures", "a spacing read", "within stated", "off, median", "off, 90 %"),
    row("---", "---", "---", "---", "---"),
    ...rows.filter((line) => line !== null),
  ].join("\n");
}
