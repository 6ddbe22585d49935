import { assessBead, measurePhotos } from "@/lib/assess";
import { db } from "@/lib/db";
import {
  beadsFileText,
  beadTable,
  csvHead,
  csvRows,
  judgedCells,
  markTable,
  type ExchangeBead,
  type TableBead,
} from "@/lib/exchange";
import { beadSlices, type BeadFilter, type Scope, type WholeBead } from "@/lib/find";
import { weldsNamed } from "@/lib/jobs";
import { assessContext, type ShopContext } from "@/lib/shop";
import type { Piece, Work } from "./words";

/** The beads that somebody asks for: those that fit, as far as the scope reaches; of them the picked ones, where any is. */
export interface BeadsAsked {
  readonly filter: BeadFilter;
  readonly scope: Scope;
  readonly picked: ReadonlySet<string>;
}

/** The beads asked for, whole, a slice at a time. */
export const slicesAsked = ({ filter, scope, picked }: BeadsAsked): AsyncGenerator<readonly WholeBead[]> =>
  beadSlices(db(), filter, scope, picked);

const table =
  (lines: (asked: BeadsAsked) => AsyncGenerator<Piece, void, void>): Work<BeadsAsked, null> =>
  async (asked) => ({ head: null, parts: lines(asked) });

async function* beadLines(asked: BeadsAsked): AsyncGenerator<string, void, void> {
  const context = await assessContext(db());
  yield csvHead(beadTable([]).columns);
  for await (const slice of slicesAsked(asked)) {
    const beads = slice.map(({ bead }) => bead);
    const welds = await weldsNamed(db(), beads);
    yield csvRows(
      beadTable(
        slice.map((one) => ({ ...judgedBead(one, context), liesOn: welds.get(one.bead.id) ?? null })),
      ),
    );
  }
}

/** What was kept of a bead's assessment stands in its row as long as it is current; otherwise it is worked out here. */
function judgedBead({ bead, said }: WholeBead, context: ShopContext): Omit<TableBead, "liesOn"> {
  const current = said !== null && said.weighedBy === context.weighedBy;
  return { ...bead, judged: current ? said.card.judged : judgedCells(assessBead(bead, context)) };
}

async function* markLines(asked: BeadsAsked): AsyncGenerator<string, void, void> {
  yield csvHead(markTable([]).columns);
  for await (const slice of slicesAsked(asked)) {
    const beads = slice.map(({ bead }) => ({ ...bead, measured: measurePhotos(bead.content, bead.photos) }));
    yield csvRows(markTable(beads));
  }
}

async function* exchanged(asked: BeadsAsked): AsyncGenerator<readonly ExchangeBead[]> {
  for await (const slice of slicesAsked(asked)) yield slice.map(({ bead }) => bead);
}

/** Every table of beads there is, by name. */
export const tables = {
  /** CSV: one row per bead. */
  beadsCsv: table(beadLines),
  /** CSV: one row per mark. */
  marksCsv: table(markLines),
  /** JSON by the schema published at /api/export/beads.schema.json. */
  beadsJson: table((asked) => beadsFileText(exchanged(asked)) as AsyncGenerator<Piece, void, void>),
};
