import type { BenchCardDocument, BenchSetting } from "@/lib/report";
import type { Faces } from "./faces";
import { balanceText, layText, run, type TextBlock } from "./lay-text";
import { GREY, POINTS_PER_MM } from "./page";

/** ISO 216 A5 lying on its side: half a sheet, and it stands up at the bench. */
export const WIDTH = 210 * POINTS_PER_MM;
export const HEIGHT = 148 * POINTS_PER_MM;
export const EDGE = 8 * POINTS_PER_MM;
export const BODY = WIDTH - 2 * EDGE;
export const QR_SIDE = 66;
export const GAP = 12;
export const CELL_GAP = 10;

export const CELL_PAD = 4;
export const BAR = 10;
export const PAD = 9;

/** How large everything is set, from arm's length down to what still fits when every field is recorded. */
const fits = [
  { scale: 1.15, columns: 3 },
  { scale: 1.15, columns: 4 },
  { scale: 1, columns: 3 },
  { scale: 1, columns: 4 },
  { scale: 0.88, columns: 4 },
  { scale: 0.76, columns: 4 },
  { scale: 0.66, columns: 5 },
  { scale: 0.55, columns: 5 },
  { scale: 0.5, columns: 6 },
] as const;

export interface Cell {
  readonly label: TextBlock;
  readonly value: TextBlock;
  readonly other: TextBlock | null;
  readonly height: number;
  readonly isChanged: boolean;
}

export interface Laid {
  readonly kicker: TextBlock;
  readonly stop: TextBlock | null;
  readonly change: readonly { readonly type: string; readonly block: TextBlock }[];
  readonly heading: TextBlock;
  readonly columns: number;
  readonly rows: readonly (readonly Cell[])[];
  readonly cautions: readonly TextBlock[];
  readonly height: number;
}

/** The card set as large as it fits on its one page. */
export function layBenchCard(faces: Faces, card: BenchCardDocument): Laid {
  const tries = fits.map(({ scale, columns }) => layCard(faces, card, scale, columns));
  return tries.find(({ height }) => height <= HEIGHT - 2 * EDGE) ?? tries.at(-1)!;
}

function layCard(faces: Faces, card: BenchCardDocument, scale: number, columns: number): Laid {
  const words = card.settings.some(({ isChanged }) => isChanged)
    ? "Set for the next bead; what is framed is new, all else stays"
    : "Settings";
  const cells = card.settings.map((one) => layCell(faces, one, scale, BODY / columns - CELL_GAP));
  const blocks = {
    kicker: layKicker(faces, card),
    stop: card.inspectorFirst ? layStop(faces, scale) : null,
    change: layChange(faces, card, scale),
    heading: layText(faces, [run(words, "heavy", 12)], BODY, { leading: 1.15 }),
    columns,
    rows: inRows(cells, columns),
    cautions: card.cautions.map((line) => layText(faces, [run(line, "text", 6.6)], BODY, { leading: 1.2 })),
  };
  return { ...blocks, height: cardHeight(blocks) };
}

function layKicker(faces: Faces, card: BenchCardDocument): TextBlock {
  const words = [
    run(`After bead ${card.number}, revision ${card.revision} · ${card.day}\n`, "display", 12),
    run(card.title, "heavy", 17),
  ];
  return layText(faces, words, BODY - QR_SIDE - GAP, { breaks: true, leading: 1.12 });
}

function layStop(faces: Faces, scale: number): TextBlock {
  const words = "A qualified inspector sees this bead before anything is changed or repaired.";
  return layText(faces, [run(words, "heavy", 15 * scale)], BODY - 2 * PAD);
}

/** The change as a headline, then its steps, the first of them larger. */
function layChange(faces: Faces, card: BenchCardDocument, scale: number): Laid["change"] {
  const inBox = BODY - BAR - 2 * PAD;
  const step = (words: string, i: number) =>
    layText(faces, [run(words, i === 0 ? "heavy" : "display", (i === 0 ? 20 : 13) * scale)], inBox, {
      leading: 1.14,
    });
  return [
    { type: "H1", block: balanceText(faces, [run(card.headline, "heavy", 32 * scale)], inBox, 1.06) },
    ...card.steps.map((words, i) => ({ type: "P", block: step(words, i) })),
    ...card.grounds.map((words) => ({
      type: "P",
      block: layText(faces, [run(words, "text", Math.max(8, 11 * scale))], inBox, { leading: 1.2 }),
    })),
  ];
}

const cardHeight = ({ kicker, stop, change, heading, rows, cautions }: Omit<Laid, "height">): number =>
  topHeight(kicker) +
  (stop ? stop.height + 2 * PAD + GAP / 2 : 0) +
  boxHeight(change) +
  GAP +
  heading.height +
  6 +
  rows.reduce((sum, row) => sum + rowHeight(row), 0) +
  GAP / 2 +
  cautions.reduce((sum, block) => sum + block.height, 0);

export const topHeight = (kicker: TextBlock): number => Math.max(kicker.height, QR_SIDE - 12) + GAP / 2;
export const boxHeight = (change: Laid["change"]): number =>
  change.reduce((sum, { block }) => sum + block.height + 3, 0) + 2 * PAD - 3;
export const rowHeight = (row: readonly Cell[]): number => Math.max(...row.map(({ height }) => height)) + 5;

function inRows(cells: readonly Cell[], columns: number): readonly (readonly Cell[])[] {
  return Array.from({ length: Math.ceil(cells.length / columns) }, (_, i) =>
    cells.slice(i * columns, (i + 1) * columns),
  );
}

function layCell(
  faces: Faces,
  { label, values, isChanged }: BenchSetting,
  scale: number,
  width: number,
): Cell {
  const [first = "", second] = values;
  const small = Math.max(7, 8.5 * scale);
  const lay = (text: string, face: "text" | "heavy" | "strong", size: number, colour?: string) =>
    layText(faces, [run(text, face, size, colour)], width - 2 * CELL_PAD, { leading: 1.12 });
  const cell = {
    label: lay(label, "text", small, GREY.words),
    value: lay(first, "heavy", 15 * scale),
    other: second === undefined ? null : lay(second, "strong", small),
  };
  const height = cell.label.height + cell.value.height + (cell.other?.height ?? 0) + 3;
  return { ...cell, height, isChanged };
}
