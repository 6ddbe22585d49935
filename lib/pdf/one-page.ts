import type { SheetDocument } from "@/lib/report";
import { CAPTION_HEIGHT, drawPhoto, photoSize, type PhotoPaint } from "./draw-photo";
import { INSPECTOR_FIRST } from "./draw-head";
import { drawRule, type Flow } from "./flow";
import { balanceText, run, type TextBlock } from "./lay-text";
import {
  causesPiece,
  cautionsPiece,
  changePiece,
  marksPiece,
  notePiece,
  setupPiece,
  verdictPiece,
  widthsPiece,
  type Sized,
} from "./one-page-parts";
import { ONE_PAGE, ONE_WIDTH, RULE } from "./page";
import { beside, framed, setWords, stack, words, type Piece } from "./piece";

const VERDICT_WIDTH = 172;
const COLUMN_GAP = 18;
/** Between the parts of a column; what is left over widens it. */
const GAP = { least: 8, most: 16 } as const;

/** How the columns are set. */
interface Manner {
  /** Of what is read. */
  readonly size: number;
  /** Of the left column. */
  readonly width: number;
  /** Whether the columns, and the cautions, have things one after the other that usually have a line each. */
  readonly isClose: boolean;
  readonly areCautionsClose: boolean;
  /** The change stands across the page, above the columns, not on top of the right one. */
  readonly isAcross: boolean;
  /** The causes stand below the bead, whose photo is smaller, not above the verdict. */
  readonly areCausesLeft: boolean;
}

const sized = (sizes: readonly number[], widths: readonly number[], manner: Omit<Manner, "size" | "width">) =>
  sizes.flatMap((size) => widths.map((width): Manner => ({ size, width, ...manner })));

const open = { isClose: false, areCautionsClose: false, isAcross: false, areCausesLeft: false };
const closest = { isClose: true, areCautionsClose: true, isAcross: true, areCausesLeft: false };
const widths = [318, 295, 275, 255, 240, 225, 210, 195];

/** From roomy to close; none has anything less on it. */
const manners: readonly Manner[] = [
  ...sized([9.5, 9, 8.5], widths, open),
  ...sized([8.5], widths, { ...open, isAcross: true }),
  ...sized([9, 8.5], widths, { ...open, isAcross: true, isClose: true }),
  ...sized([8.5], widths, closest),
  ...sized([8.5], [300, 280, 260], { ...closest, isAcross: false, areCausesLeft: true }),
];
const PHOTO_HEIGHT = 240;
const SMALL_PHOTO = 150;
const CAUTION_SIZE = 8.5;
/** From the rule above the cautions to them. */
const ABOVE_CAUTIONS = 6;

/**
 * The sheet on one page, as roomy as it fits: every word of it, in type of 8.5 points and more, sources in 7.5. On the left the
 * bead as it was run and what is there, on the right what to change, why, and the verdict. Null: it does not fit, or has
 * more photos or a cut weld, and is set on as many pages as it takes.
 */
export function onePage(flow: Flow, sheet: SheetDocument, paint: PhotoPaint): (() => void) | null {
  if (sheet.photos.length > 1 || sheet.photos.some(({ section }) => section)) return null;
  const head = headPiece(flow, sheet);
  const parts = roomiest(flow, sheet, paint, ONE_PAGE.bottom - ONE_PAGE.top - head.height - ABOVE_CAUTIONS);
  return parts && (() => drawPage(flow, head, parts.columns, parts.cautions));
}

interface Columns {
  /** Above both. */
  readonly across: Piece;
  readonly left: readonly Piece[];
  readonly right: readonly Piece[];
  /** How far the right one stands from the left edge. */
  readonly x: number;
}

/** So much higher than the page in any manner, and no other makes it fit. */
const HOPELESS = 2.5;

/** Columns and cautions in the roomiest manner that fits into `room` points. */
function roomiest(
  flow: Flow,
  sheet: SheetDocument,
  paint: PhotoPaint,
  room: number,
): { readonly columns: Columns; readonly cautions: Piece } | null {
  const set = { flow, width: ONE_WIDTH, size: CAUTION_SIZE, isClose: false };
  const listed = cautionsPiece(set, sheet.cautions);
  const closed = cautionsPiece({ ...set, isClose: true }, sheet.cautions);
  const known = new Map<string, Columns>();
  for (const { areCautionsClose, ...manner } of manners) {
    const key = JSON.stringify(manner);
    const columns = known.get(key) ?? setColumns(flow, sheet, paint, manner);
    known.set(key, columns);
    const cautions = areCautionsClose ? closed : listed;
    const height = stack([columns.across, both(columns)], GAP.least).height + 2 * GAP.least;
    if (height + cautions.height <= room) return { columns, cautions };
    if (height > HOPELESS * room) return null;
  }
  return null;
}

const both = ({ left, right, x }: Columns): Piece =>
  beside([
    { piece: stack(left, GAP.least), x: 0 },
    { piece: stack(right, GAP.least), x },
  ]);
const heightOf = (column: readonly Piece[]): number => stack(column, GAP.least).height;

/** What belongs on the left and on the right, and what may stand on either side: the causes, and the note. */
function setColumns(
  flow: Flow,
  sheet: SheetDocument,
  paint: PhotoPaint,
  manner: Omit<Manner, "areCautionsClose">,
): Columns {
  const { size, width, isClose, isAcross, areCausesLeft } = manner;
  const x = width + COLUMN_GAP;
  const onLeft = { flow, width, size, isClose };
  const onRight = { flow, width: ONE_WIDTH - x, size, isClose };
  const across = isAcross ? changePiece({ ...onLeft, width: ONE_WIDTH }, sheet) : stack([], 0);
  const left = [
    photoPiece(onLeft, sheet, paint, areCausesLeft ? SMALL_PHOTO : PHOTO_HEIGHT),
    setupPiece(onLeft, sheet),
    marksPiece(onLeft, sheet),
    widthsPiece(onLeft, sheet),
    ...(areCausesLeft ? [causesPiece(onLeft, sheet)] : []),
  ];
  const right = [
    ...(isAcross ? [] : [changePiece(onRight, sheet)]),
    ...(areCausesLeft ? [] : [causesPiece(onRight, sheet)]),
    verdictPiece(onRight, sheet),
  ];
  // The note stands where there is more room for it.
  return heightOf(left) > heightOf(right)
    ? { across, left, right: [...right, notePiece(onRight, sheet.note)], x }
    : { across, left: [...left, notePiece(onLeft, sheet.note)], right, x };
}

function drawPage(flow: Flow, head: Piece, { across, left, right, x }: Columns, cautions: Piece): void {
  const bottom = ONE_PAGE.bottom - cautions.height;
  head.draw(ONE_PAGE.left, ONE_PAGE.top);
  const below = ONE_PAGE.top + head.height + GAP.least;
  across.draw(ONE_PAGE.left, below);
  const top = below + (across.height > 0 ? across.height + GAP.least : 0);
  const free = bottom - ABOVE_CAUTIONS - GAP.least - top;
  for (const [column, at] of [
    [left, ONE_PAGE.left],
    [right, ONE_PAGE.left + x],
  ] as const)
    spread(column, free).draw(at, top);
  drawRule(flow, bottom - ABOVE_CAUTIONS, RULE.line, flow.ink, ONE_PAGE.left, ONE_PAGE.left + ONE_WIDTH);
  cautions.draw(ONE_PAGE.left, bottom);
}

/** A column with what is left over between its parts, as far as that looks like one column. */
function spread(column: readonly Piece[], free: number): Piece {
  const there = column.filter(({ height }) => height > 0);
  const filled = there.reduce((sum, { height }) => sum + height, 0);
  return stack(there, Math.min(GAP.most, (free - filled) / Math.max(1, there.length - 1)));
}

/** A bar, who and which bead, the verdict in a box of its own; and who must see the bead first. */
function headPiece(flow: Flow, sheet: SheetDocument): Piece {
  const { verdict } = sheet;
  const width = verdict ? ONE_WIDTH - VERDICT_WIDTH - 20 : ONE_WIDTH;
  const kicker = `Bead ${sheet.number}, revision ${sheet.revision} · ${sheet.day}`;
  const welder = sheet.welder ? [run(`   Run by ${sheet.welder}`, "text", 10)] : [];
  const title = setTitle(flow, sheet.title, width);
  const left = stack(
    [words({ flow, width }, [run(kicker, "display", 11), ...welder]), setWords(flow, title, "H1")],
    2,
  );
  const boxed = verdict ? verdictBox(flow, verdict) : stack([], 0);
  const row = beside([
    { piece: left, x: 0 },
    { piece: boxed, x: ONE_WIDTH - VERDICT_WIDTH },
  ]);
  const all = stack([row, ...(sheet.inspectorFirst ? [inspectorFirst(flow)] : [])], 6);
  return {
    height: all.height + 9,
    draw: (x, y) => {
      drawRule(flow, y + RULE.heavy / 2, RULE.heavy, flow.ink, x, x + ONE_WIDTH);
      all.draw(x, y + 9);
    },
  };
}

/** In one line where it can be large enough to be seen from afar. */
function setTitle({ faces }: Flow, title: string, width: number): TextBlock {
  const set = (size: number) => balanceText(faces, [run(title, "heavy", size)], width, 1.06);
  return [24, 22, 20, 18].map(set).find(({ lines }) => lines.length === 1) ?? set(22);
}

function verdictBox(
  flow: Flow,
  { word, criteria, checkYourCopy }: NonNullable<SheetDocument["verdict"]>,
): Piece {
  const set = { flow, width: VERDICT_WIDTH - 18 };
  const copy = checkYourCopy ? [run(". Check your copy.", "strong", 9)] : [];
  const told = stack(
    [
      words(set, [run(word, "heavy", 18)], { leading: 1.05 }),
      words(set, [run(criteria, "text", 9), ...copy]),
    ],
    1,
  );
  return framed({ flow, width: VERDICT_WIDTH }, told, { bar: 0, pad: 6 });
}

function inspectorFirst(flow: Flow): Piece {
  const set = { flow, width: ONE_WIDTH - 20 };
  const told = words(set, [run(INSPECTOR_FIRST, "heavy", 14)], { leading: 1.1 });
  return framed({ flow, width: ONE_WIDTH }, told, { bar: 0, pad: 6 });
}

/** As wide as its column, a tall one less. */
function photoPiece({ flow, width }: Sized, sheet: SheetDocument, paint: PhotoPaint, most: number): Piece {
  const [photo] = sheet.photos;
  if (!photo) return stack([], 0);
  const size = photoSize(photo, width, most);
  return {
    height: size.height + CAPTION_HEIGHT,
    draw: (x: number, y: number) => drawPhoto(flow, photo, 1, paint, { x, y, ...size }),
  };
}
