import path from "node:path";
import { openFont } from "./open-font";

/** The faces of the screen. Small words in Barlow, headings and what must be read from afar in Barlow Condensed. */
const faces = {
  text: ["barlow", 400],
  strong: ["barlow", 600],
  display: ["barlow-condensed", 600],
  heavy: ["barlow-condensed", 700],
} as const;
export type Face = keyof typeof faces;

/** A face comes in files by script; a letter is taken from the first that has it. */
const scripts = ["latin", "latin-ext", "vietnamese"] as const;

/** Signs that none of the files has, by what they are written with instead. */
const writtenAs: Readonly<Record<string, string>> = {
  "⌀": "Ø",
  "₂": "2",
  "≤": "<=",
  "≥": ">=",
  "≈": "about",
  "→": "to",
  μ: "µ",
};

/** What pdfkit keeps of an embedded font and its types leave out: the font file itself. */
interface OpenFont {
  readonly _font: { readonly font: { hasGlyphForCodePoint(codePoint: number): boolean } };
}

/** Letters that one font file can write. */
export interface FacePiece {
  readonly text: string;
  readonly font: string;
}

export interface Faces {
  /** The text in pieces of one font file each; what no file can write shows as that face's empty box. */
  split(text: string, face: Face): readonly FacePiece[];
  /** Points. */
  width(text: string, font: string, size: number): number;
}

function fontFile(face: Face, script: string): string {
  const [family, weight] = faces[face];
  const name = `${family}-${script}-${weight}-normal.woff`;
  // The mark keeps the bundler from packing the whole project because a path is not known when it builds.
  return path.join(
    /* turbopackIgnore: true */ process.cwd(),
    "node_modules/@fontsource",
    family,
    "files",
    name,
  );
}

/** Registers the fonts with a document. A font that is never used is never embedded. */
export function openFaces(doc: PDFKit.PDFDocument): Faces {
  for (const face of Object.keys(faces) as Face[])
    for (const script of scripts) doc.registerFont(`${face} ${script}`, openFont(fontFile(face, script)));
  const known = new Map<string, string>();
  const fontFor = (letter: string, face: Face): string => {
    const key = `${face} ${letter}`;
    const font = known.get(key) ?? findFont(doc, letter, face);
    known.set(key, font);
    return font;
  };
  // A line is set at several widths and sizes until a page holds it: each text is measured once.
  const widths = new Map<string, number>();
  const unitWidth = (text: string, font: string): number => {
    const key = `${font} ${text}`;
    const width = widths.get(key) ?? doc.font(font).fontSize(1).widthOfString(text);
    widths.set(key, width);
    return width;
  };
  return {
    split: (text, face) => splitText(text, (letter) => fontFor(letter, face)),
    width: (text, font, size) => size * unitWidth(text, font),
  };
}

function findFont(doc: PDFKit.PDFDocument, letter: string, face: Face): string {
  const codePoint = letter.codePointAt(0) ?? 0;
  const has = (script: string): boolean => {
    doc.font(`${face} ${script}`);
    return (doc as unknown as OpenFont)._font.font.hasGlyphForCodePoint(codePoint);
  };
  // ASCII is in the first file: most text never asks the others.
  const script = codePoint < 0x7f ? scripts[0] : (scripts.find(has) ?? scripts[0]);
  return `${face} ${script}`;
}

function splitText(text: string, fontFor: (letter: string) => string): readonly FacePiece[] {
  const pieces: { text: string; font: string }[] = [];
  for (const sign of text.normalize("NFC")) {
    const letter = writtenAs[sign] ?? sign;
    const font = fontFor(letter);
    const last = pieces.at(-1);
    if (last?.font === font) last.text += letter;
    else pieces.push({ text: letter, font });
  }
  return pieces;
}
