import type { Face, Faces } from "./faces";

export interface TextStyle {
  readonly face: Face;
  /** Points. */
  readonly size: number;
  /** CSS colour; left out: the ink of the sheet. */
  readonly colour?: string;
}

export interface Run {
  readonly text: string;
  readonly style: TextStyle;
}

export interface Piece {
  readonly text: string;
  readonly font: string;
  readonly size: number;
  readonly colour: string | null;
}

export type Line = readonly Piece[];

/** Text set to a width: where its lines break is decided, where it stands is not. */
export interface TextBlock {
  readonly lines: readonly Line[];
  readonly lineHeight: number;
  readonly height: number;
  /** From the top of a line to its baseline. */
  readonly ascent: number;
}

type Word = Piece[];
const BREAK = Symbol("line break");

export const run = (text: string, face: Face, size: number, colour?: string): Run => ({
  text,
  style: colour === undefined ? { face, size } : { face, size, colour },
});

/** The width of pieces standing side by side, points. */
export function piecesWidth(faces: Faces, pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { text, font, size }) => sum + faces.width(text, font, size), 0);
}

/** Runs glued where no space stands between them: "**Slag** , " keeps its comma. */
function wordsOf(faces: Faces, runs: readonly Run[]): readonly (Word | typeof BREAK)[] {
  const words: (Word | typeof BREAK)[] = [];
  let open: Word | null = null;
  for (const { text, style } of runs) {
    for (const part of text.split(/(\s+)/).filter(Boolean)) {
      if (/^\s/.test(part)) {
        open = null;
        words.push(
          ...part
            .split("\n")
            .slice(1)
            .map((): typeof BREAK => BREAK),
        );
        continue;
      }
      if (open === null) words.push((open = []));
      const { size, colour = null } = style;
      open.push(...faces.split(part, style.face).map((piece) => ({ ...piece, size, colour })));
    }
  }
  return words;
}

/** A word wider than the column, cut between letters: nothing may stand outside its column. */
function cutWord(faces: Faces, word: Word, width: number): readonly Word[] {
  if (piecesWidth(faces, word) <= width) return [word];
  const parts: Word[] = [[]];
  let used = 0;
  for (const piece of word) {
    for (const letter of piece.text) {
      const letterWidth = faces.width(letter, piece.font, piece.size);
      if (used > 0 && used + letterWidth > width) {
        parts.push([]);
        used = 0;
      }
      parts.at(-1)?.push({ ...piece, text: letter });
      used += letterWidth;
    }
  }
  return parts.map(merged);
}

const sameStyle = (a: Piece, b: Piece): boolean =>
  a.font === b.font && a.size === b.size && a.colour === b.colour;

function merged(pieces: readonly Piece[]): Piece[] {
  const result: Piece[] = [];
  for (const piece of pieces) {
    const last = result.at(-1);
    if (last && sameStyle(last, piece)) result[result.length - 1] = { ...last, text: last.text + piece.text };
    else result.push(piece);
  }
  return result;
}

/** The space belongs to the word before it, so that its line can be copied as words. */
function withSpace(line: readonly Piece[]): readonly Piece[] {
  const last = line.at(-1);
  return last ? [...line.slice(0, -1), { ...last, text: `${last.text} ` }] : line;
}

/**
 * Sets runs of words to lines of at most `width` points, breaking at spaces and, where a single word is wider,
 * between letters. `breaks`: whether a line feed in the text ends a line or is a space like any other.
 */
export function layText(
  faces: Faces,
  runs: readonly Run[],
  width: number,
  { breaks = false, leading = 1.28 }: { breaks?: boolean; leading?: number } = {},
): TextBlock {
  const lines: Piece[][] = [[]];
  for (const word of wordsOf(faces, runs)) {
    if (word === BREAK) {
      if (breaks) lines.push([]);
      continue;
    }
    for (const part of cutWord(faces, word, width)) {
      const line = lines.at(-1) ?? [];
      const longer = merged([...withSpace(line), ...part]);
      if (line.length > 0 && piecesWidth(faces, longer) > width) lines.push(merged(part));
      else lines[lines.length - 1] = longer;
    }
  }
  const size = Math.max(0, ...runs.map(({ style }) => style.size));
  const lineHeight = size * leading;
  // Barlow's capitals are 0.7 of the size high; half of what the leading adds stands above.
  return { lines, lineHeight, height: lines.length * lineHeight, ascent: (lineHeight + 0.7 * size) / 2 };
}

/** The same lines at the narrowest width that needs no more of them: a title does not leave one word alone. */
export function balanceText(faces: Faces, runs: readonly Run[], width: number, leading: number): TextBlock {
  let block = layText(faces, runs, width, { leading });
  for (let narrower = width * 0.95; narrower > width / 2; narrower -= width * 0.05) {
    const next = layText(faces, runs, narrower, { leading });
    if (next.lines.length > block.lines.length) break;
    block = next;
  }
  return block;
}
