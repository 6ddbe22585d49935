import { bothText, type SignedBead } from "@/lib/inspect";
import { CAPTION_HEIGHT, drawPhoto, photoSize, type PhotoPaint, type SheetPhoto } from "./draw-photo";
import { drawBlock, flowText, makeRoom, openTag, drawInto, type Flow } from "./flow";
import type { InspectionPaint } from "./inspection-input";
import { layText, run, type TextBlock } from "./lay-text";
import { BODY_WIDTH, GREY, LEFT } from "./page";

const GAP = 14;
/** A photo alone leaves this share of the page to the words of its marks. */
const BESIDE = 0.3;
/** More photos than this stand three to a row: each still as wide as a hand. */
const LARGE = 4;

interface Cell {
  readonly photo: SignedBead["photos"][number];
  readonly number: number;
  readonly size: { readonly width: number; readonly height: number };
  /** What stands under or beside the photo: a line for each of its marks. */
  readonly legend: TextBlock;
}
interface PhotoRow {
  readonly cells: readonly Cell[];
  readonly columnWidth: number;
  readonly height: number;
}

/** Photos in rows, each in the size that so many of them need, with the words of its marks beside or under it. */
export function photoRows(flow: Flow, bead: SignedBead, { units }: InspectionPaint): readonly PhotoRow[] {
  const { photos } = bead;
  const inRow = photos.length === 1 ? 1 : photos.length <= LARGE ? 2 : 3;
  const columnWidth = (BODY_WIDTH - (inRow - 1) * GAP) / inRow;
  const isAlone = inRow === 1;
  const width = isAlone ? BODY_WIDTH * (1 - BESIDE) - GAP : columnWidth;
  const cells = photos.map((photo, i) => ({
    photo,
    number: i + 1,
    size: photoSize(photo, width, isAlone ? 250 : inRow === 2 ? 190 : 140),
    legend: legendOf(flow, bead, i + 1, isAlone ? BODY_WIDTH * BESIDE : columnWidth, units),
  }));
  return Array.from({ length: Math.ceil(cells.length / inRow) }, (_, i) => {
    const row = cells.slice(inRow * i, inRow * (i + 1));
    return { cells: row, columnWidth, height: Math.max(...row.map((cell) => heightOf(cell, isAlone))) };
  });
}

const heightOf = ({ size, legend }: Cell, isAlone: boolean): number =>
  isAlone
    ? Math.max(size.height + CAPTION_HEIGHT, legend.height) + 8
    : size.height + CAPTION_HEIGHT + legend.height + 8;

function legendOf(
  flow: Flow,
  { marks, photos }: SignedBead,
  number: number,
  width: number,
  units: InspectionPaint["units"],
): TextBlock {
  const own = marks.filter(({ photo }) => photo === number);
  const sha = photos[number - 1]?.sha256 ?? "";
  const lines = own.flatMap((mark) => [
    run(`${mark.numbers}  ${mark.name} `, "strong", 8),
    run(`${bothText(mark.size, units)}\n`, "text", 8),
  ]);
  return layText(
    flow.faces,
    [...lines, run(`SHA-256 ${sha.slice(0, 8)}…${sha.slice(-8)}`, "text", 6.5, GREY.words)],
    width,
    { breaks: true },
  );
}

export function drawPhotoRows(flow: Flow, rows: readonly PhotoRow[], paint: InspectionPaint): void {
  const numbered: PhotoPaint = { ...paint, numbersOnly: true };
  for (const { cells, columnWidth, height } of rows) {
    makeRoom(flow, height);
    cells.forEach(({ photo, number, size, legend }, column) => {
      const x = LEFT + column * (columnWidth + GAP);
      drawPhoto(flow, withLines(photo), number, numbered, { x, y: flow.y, ...size });
      const isAlone = columnWidth === BODY_WIDTH;
      const tag = openTag(flow, flow.root, "P");
      const [left, top] = isAlone
        ? [x + size.width + GAP, flow.y]
        : [x, flow.y + size.height + CAPTION_HEIGHT];
      drawInto(flow, tag, "P", () => drawBlock(flow, legend, left, top));
      tag.end();
    });
    flow.y += height;
  }
  if (rows.length > 0)
    flowText(
      flow,
      [
        run(
          "Of each photo's SHA-256 the first and last eight digits; whole in the signed text.",
          "text",
          7,
          GREY.words,
        ),
      ],
      { gap: 5 },
    );
}

/** A signed section is drawn as it was picked: where its toes were found is not part of the record. */
function withLines({ section, ...photo }: SignedBead["photos"][number]): SheetPhoto {
  return section ? { ...photo, section: { drawing: section.drawing, places: null } } : photo;
}
