import { marksAcrossPhotos, type NumberedMark, type PhotoAssessment } from "@/lib/assess";
import { countAbout } from "@/lib/marks";
import type { Quantity } from "@/lib/measure";
import { patternWords, placeWords, stretchWords } from "@/lib/report";
import { imperfections, isoNumberText } from "@/lib/trade";
import type { ExchangeBead } from "./bead-file";
import type { Cell, Table } from "./table";

type Column = readonly [heading: string, cell: (mark: NumberedMark, bead: ExchangeBead) => Cell];

/** To a ten thousandth: no photo and no gauge says more, and fourteen digits read as if one did. */
const written = (value: number | null | undefined): number | null =>
  value === null || value === undefined ? null : Number(value.toFixed(4));

/** A size, its expanded uncertainty (k = 2) and where it was read; empty where it was not measurable. */
function sizeColumns(
  name: string,
  unit: string,
  pick: (measured: NonNullable<NumberedMark["measured"]>) => Quantity | null,
): readonly Column[] {
  const read = ({ measured }: NumberedMark): Quantity | null => measured && pick(measured);
  return [
    [`${name} (${unit})`, (mark) => written(read(mark)?.value)],
    [`${name}, ± U with k = 2 (${unit})`, (mark) => written(read(mark)?.expandedUncertainty)],
    [`${name} read from`, (mark) => read(mark)?.source ?? null],
  ];
}

const columns: readonly Column[] = [
  ["Bead", (_, { number }) => number],
  ["Bead id", (_, { id }) => id],
  ["Photo", ({ photoId }, { content }) => content.photos.findIndex(({ id }) => id === photoId) + 1],
  ["Photo SHA-256", ({ photoId }, { photos }) => photos.find(({ id }) => id === photoId)?.sha256 ?? null],
  ["Mark", ({ number }) => number],
  ["Imperfection", ({ mark }) => imperfections[mark.imperfection].name],
  ["ISO 6520-1", ({ mark }, { content }) => isoNumberText(mark.imperfection, content.setup.joint)],
  ["Shape", ({ mark }) => mark.shape.kind],
  ["Place", ({ mark }) => mark.place && placeWords[mark.place]],
  ["Along the weld", ({ mark }) => mark.stretch && stretchWords[mark.stretch]],
  ["Pattern", ({ mark }) => mark.patterns.map((pattern) => patternWords[pattern]).join("; ") || null],
  ["From start of weld (mm)", ({ measured }) => written(measured?.alongMm?.[0])],
  ["To (mm)", ({ measured }) => written(measured?.alongMm?.[1])],
  ...sizeColumns("Length", "mm", ({ lengthMm }) => lengthMm),
  ...sizeColumns("Diameter", "mm", ({ diameterMm }) => diameterMm),
  ...sizeColumns("Depth", "mm", ({ depthMm }) => depthMm),
  ...sizeColumns("Height", "mm", ({ heightMm }) => heightMm),
  ...sizeColumns("Area", "mm²", ({ areaMm2 }) => areaMm2),
  ["Note", ({ mark }) => mark.note || null],
  // Last, because tables that stay count their columns.
  ["About how many, by eye", ({ mark }) => countAbout(mark)],
];

/** The bead of some rows, with what was read off its photos. */
export type MeasuredBead = ExchangeBead & { readonly measured: readonly PhotoAssessment[] };

/** One row per mark of every bead, numbered as on its photo. */
export function markTable(beads: readonly MeasuredBead[]): Table {
  return {
    columns: columns.map(([heading]) => heading),
    rows: beads.flatMap((bead) =>
      marksAcrossPhotos(bead.content, bead.measured).map((mark) =>
        columns.map(([, cell]) => cell(mark, bead)),
      ),
    ),
  };
}
