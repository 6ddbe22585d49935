import { asDecoration, drawBlock, drawInto, drawRule, openTag, putBlock, type Flow, type Tag } from "./flow";
import { layText, run, type Run, type TextBlock } from "./lay-text";
import { GREY, RULE } from "./page";

/** Something set and measured, to be drawn wherever there is room for it. Lengths are points. */
export interface Piece {
  readonly height: number;
  /** With its top left corner at x, y. */
  draw(x: number, y: number): void;
}

/** Pieces below each other, `gap` apart; those without height leave no gap. */
export function stack(pieces: readonly Piece[], gap: number): Piece {
  const there = pieces.filter(({ height }) => height > 0);
  const height = there.reduce((sum, piece) => sum + piece.height, 0) + gap * Math.max(0, there.length - 1);
  return {
    height,
    draw: (x, y) => {
      let at = y;
      for (const piece of there) {
        piece.draw(x, at);
        at += piece.height + gap;
      }
    },
  };
}

/** Pieces side by side, each this far from the left edge. */
export const beside = (columns: readonly { readonly piece: Piece; readonly x: number }[]): Piece => ({
  height: Math.max(0, ...columns.map(({ piece }) => piece.height)),
  draw: (x, y) => columns.forEach((column) => column.piece.draw(x + column.x, y)),
});

const LEADING = 1.18;

export interface Setting {
  readonly flow: Flow;
  readonly width: number;
}

export function words(
  { flow, width }: Setting,
  runs: readonly Run[],
  { type = "P", leading = LEADING, breaks = false } = {},
): Piece {
  return setWords(flow, layText(flow.faces, runs, width, { leading, breaks }), type);
}

/** Words whose lines are broken already; none have no height. */
export function setWords(flow: Flow, block: TextBlock, type: string): Piece {
  const isEmpty = block.lines.every((line) => line.length === 0);
  return {
    height: isEmpty ? 0 : block.height,
    draw: (x, y) => putBlock(flow, flow.root, type, block, x, y),
  };
}

/** A heading over a rule. */
export function heading({ flow, width }: Setting, text: string): Piece {
  const block = layText(flow.faces, [run(text, "heavy", 12)], width, { leading: 1.1 });
  return {
    height: block.height + 4,
    draw: (x, y) => {
      putBlock(flow, flow.root, "H2", block, x, y);
      drawRule(flow, y + block.height + 1, RULE.line, flow.ink, x, x + width);
    },
  };
}

/** A column of a table: the share of its width, and whether its cells head their row. */
export interface PieceColumn {
  readonly share: number;
  readonly title?: string;
  readonly headsRow?: boolean;
}

const CELL_GAP = 6;
const ROW_PAD = 1.2;

interface Row {
  readonly blocks: readonly TextBlock[];
  readonly height: number;
}

/** A table that stays in one piece, with a hairline below each row; titles, where its columns have them. */
export function table(
  setting: Setting,
  columns: readonly PieceColumn[],
  cells: readonly (readonly (readonly Run[])[])[],
): Piece {
  const { flow, width } = setting;
  const setRow = (row: readonly (readonly Run[])[]): Row => {
    const blocks = columns.map(({ share }, i) => {
      const gap = i === columns.length - 1 ? 0 : CELL_GAP;
      return layText(flow.faces, row[i] ?? [], share * width - gap, { leading: LEADING, breaks: true });
    });
    return { blocks, height: Math.max(...blocks.map(({ height }) => height)) + 2 * ROW_PAD };
  };
  const isTitled = columns.some(({ title }) => title !== undefined);
  const titles = isTitled ? setRow(columns.map(({ title = "" }) => [run(title, "display", 8.5)])) : null;
  const rows = cells.map(setRow);
  const height = rows.reduce((sum, row) => sum + row.height, titles?.height ?? 0);
  return { height, draw: (x, y) => drawTable(setting, columns, { titles, rows }, x, y) };
}

function drawTable(
  { flow, width }: Setting,
  columns: readonly PieceColumn[],
  { titles, rows }: { readonly titles: Row | null; readonly rows: readonly Row[] },
  x: number,
  y: number,
): void {
  const tag = openTag(flow, flow.root, "Table");
  let at = y;
  const put = (row: Row, isTitle: boolean) => {
    drawRow(flow, tag, columns, row, { x, y: at + ROW_PAD, width, isTitle });
    at += row.height;
    drawRule(flow, at, isTitle ? 1 : RULE.hair, isTitle ? flow.ink : GREY.rule, x, x + width);
  };
  if (titles) put(titles, true);
  for (const row of rows) put(row, false);
  tag.end();
}

function drawRow(
  flow: Flow,
  parent: Tag,
  columns: readonly PieceColumn[],
  row: Row,
  { x, y, width, isTitle }: { x: number; y: number; width: number; isTitle: boolean },
): void {
  const line = openTag(flow, parent, "TR");
  let at = x;
  columns.forEach(({ share, headsRow = false }, i) => {
    const scope = isTitle ? "Column" : headsRow ? "Row" : null;
    const cell = openTag(flow, line, scope ? "TH" : "TD", scope ? { scope } : {});
    const block = row.blocks[i];
    if (block) drawInto(flow, cell, scope ? "TH" : "TD", () => drawBlock(flow, block, at, y));
    cell.end();
    at += share * width;
  });
  line.end();
}

/** A piece in a frame of ink, with a bar of `bar` points on its left. */
export function framed({ flow, width }: Setting, piece: Piece, frame: { bar: number; pad: number }): Piece {
  const height = piece.height + 2 * frame.pad;
  return {
    height,
    draw: (x, y) => {
      asDecoration(flow.doc, () => {
        flow.doc.lineWidth(RULE.box).strokeColor(flow.ink).lineJoin("miter").undash();
        flow.doc.rect(x + 1.1, y + 1.1, width - 2.2, height - 2.2).stroke();
        if (frame.bar > 0) flow.doc.rect(x, y, frame.bar, height).fill(flow.ink);
      });
      piece.draw(x + frame.bar + frame.pad + 2, y + frame.pad);
    },
  };
}
