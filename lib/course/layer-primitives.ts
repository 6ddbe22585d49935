import { distanceToPolyline } from "@/lib/geometry";
import { LETTER_WIDTH, type Primitive } from "@/lib/marks";
import type { LayerItem, LayerPoint } from "./layer";

/** Colours of the instructor's hand, as CSS colours; owned by whoever paints. */
export interface LayerInk {
  readonly line: string;
  readonly casing: string;
  readonly plate: string;
  readonly words: string;
  /** Laid under what is selected. */
  readonly selected: string;
}

/** Screen units. Heavier than a student's mark, so that the two are told apart without colour. */
const LINE = 5;
const CASING = 2.5;
const HEAD = 22;
const TEXT = 17;
const LEADING = 1.25;
const PAD = 7;
const LINE_LETTERS = 26;

/** Words in lines of some `LINE_LETTERS` letters, broken at spaces; a longer word stands alone. */
export function wrapWords(words: string, most = LINE_LETTERS): readonly string[] {
  const lines: string[] = [];
  for (const word of words.trim().split(/\s+/).filter(Boolean)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

type Figure = { readonly points: readonly LayerPoint[]; readonly closed: boolean };

function inked({ points, closed }: Figure, ink: LayerInk, unitPx: number, on: boolean): readonly Primitive[] {
  const path = { kind: "path", points, closed, dash: [] } as const;
  return [
    ...(on ? [{ ...path, stroke: ink.selected, width: (LINE + 14) * unitPx }] : []),
    { ...path, stroke: ink.casing, width: (LINE + 2 * CASING) * unitPx },
    { ...path, stroke: ink.line, width: LINE * unitPx },
  ];
}

/** Shaft and an open head, 30 degrees to each side. An arrow of no length is a dot. */
function arrowFigures(from: LayerPoint, to: LayerPoint, unitPx: number): readonly Figure[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return [{ points: [from, to], closed: false }];
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const side = Math.min(HEAD * unitPx, length);
  const barb = (turn: 1 | -1): LayerPoint => {
    const [c, s] = [Math.cos(Math.PI / 6), turn * Math.sin(Math.PI / 6)];
    return { x: to.x - side * (c * ux - s * uy), y: to.y - side * (s * ux + c * uy) };
  };
  return [
    { points: [from, to], closed: false },
    { points: [barb(1), to, barb(-1)], closed: false },
  ];
}

/** Words on a plate with their middle at `at`. */
function plateOf(
  words: string,
  at: LayerPoint,
  ink: LayerInk,
  unitPx: number,
  on: boolean,
): readonly Primitive[] {
  const lines = wrapWords(words);
  if (lines.length === 0) return [];
  const [width, height] = plateSize(lines, unitPx);
  const plate: Primitive = {
    kind: "plate",
    at,
    width,
    height,
    corner: 3 * unitPx,
    fill: ink.plate,
    stroke: on ? ink.selected : ink.line,
    strokeWidth: (on ? 5 : 2.5) * unitPx,
  };
  const step = TEXT * LEADING * unitPx;
  const top = at.y - (step * (lines.length - 1)) / 2;
  return [
    plate,
    ...lines.map((text, i): Primitive => ({
      kind: "text",
      at: { x: at.x, y: top + i * step },
      text,
      size: TEXT * unitPx,
      anchor: "middle",
      fill: ink.words,
      halo: null,
      haloWidth: 0,
    })),
  ];
}

function plateSize(lines: readonly string[], unitPx: number): readonly [width: number, height: number] {
  const letters = Math.max(...lines.map((line) => line.length));
  return [
    (letters * TEXT * LETTER_WIDTH + 2 * PAD) * unitPx,
    (lines.length * TEXT * LEADING + 2 * PAD) * unitPx,
  ];
}

/** Where an item's words stand: a text where it was put, an arrow's beyond its tail, clear of the shaft. */
export function wordsAt(item: LayerItem, unitPx: number): LayerPoint | null {
  if (item.kind === "text") return item.at;
  if (item.kind !== "arrow" || item.words.trim() === "") return null;
  const { from, to } = item;
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [width, height] = plateSize(wrapWords(item.words), unitPx);
  const [ux, uy] = [(from.x - to.x) / length, (from.y - to.y) / length];
  return { x: from.x + (ux * width) / 2, y: from.y + (uy * height) / 2 };
}

/**
 * One item as primitives in painting order, the same list for canvas, SVG and PDF. `unitPx`: photo pixels per screen
 * unit (1 / zoom).
 */
export function itemPrimitives(
  item: LayerItem,
  ink: LayerInk,
  unitPx: number,
  on = false,
): readonly Primitive[] {
  const plateAt = wordsAt(item, unitPx);
  const plate = plateAt && "words" in item ? plateOf(item.words, plateAt, ink, unitPx, on) : [];
  switch (item.kind) {
    case "text":
      return plate;
    case "arrow":
      return [
        ...arrowFigures(item.from, item.to, unitPx).flatMap((figure) => inked(figure, ink, unitPx, on)),
        ...plate,
      ];
    case "freehand":
    case "outline":
      return inked({ points: item.points, closed: item.kind === "outline" }, ink, unitPx, on);
  }
}

/** Every item; lines first, so that no line crosses words. */
export function layerPrimitives(
  items: readonly LayerItem[],
  ink: LayerInk,
  unitPx: number,
  selectedId: string | null = null,
): readonly Primitive[] {
  const all = items.flatMap((item) => itemPrimitives(item, ink, unitPx, item.id === selectedId));
  const isLine = ({ kind }: Primitive) => kind === "path" || kind === "circle";
  return [...all.filter(isLine), ...all.filter((primitive) => !isLine(primitive))];
}

/** Distance of a point from an item, photo pixels; 0 on its words. */
export function distanceToItem(item: LayerItem, at: LayerPoint, unitPx: number): number {
  const middle = wordsAt(item, unitPx);
  if (middle && "words" in item) {
    const [width, height] = plateSize(wrapWords(item.words), unitPx);
    if (Math.abs(at.x - middle.x) <= width / 2 && Math.abs(at.y - middle.y) <= height / 2) return 0;
  }
  if (item.kind === "text") return Infinity;
  const points = item.kind === "arrow" ? [item.from, item.to] : item.points;
  const closed = item.kind === "outline" ? [...points, points[0]!] : points;
  return distanceToPolyline(at, closed);
}

/** The topmost item within `reach` photo pixels; null when none is. */
export function itemAt(
  items: readonly LayerItem[],
  at: LayerPoint,
  reach: number,
  unitPx: number,
): LayerItem | null {
  return items.findLast((item) => distanceToItem(item, at, unitPx) <= reach) ?? null;
}
