import { asDecoration, drawBlock, drawInto, drawRule, makeRoom, openTag, type Flow, type Tag } from "./flow";
import { breakRows, startHeight } from "./break-rows";
import { layText, run, type Run, type TextBlock } from "./lay-text";
import { BODY_BOTTOM, BODY_TOP, BODY_WIDTH, GREY, LEFT, RULE } from "./page";

export interface Column {
  readonly title: string;
  /** Share of the page's width; the shares of a table add up to 1. */
  readonly share: number;
}

type Cells = readonly (readonly Run[])[];

const CELL_GAP = 8;
const ROW_PAD = 1.7;

interface SetRow {
  readonly blocks: readonly TextBlock[];
  readonly height: number;
}

function setRow(flow: Flow, columns: readonly Column[], cells: Cells): SetRow {
  const blocks = columns.map(({ share }, i) =>
    layText(flow.faces, cells[i] ?? [], share * BODY_WIDTH - CELL_GAP),
  );
  return { blocks, height: Math.max(...blocks.map(({ height }) => height)) + 2 * ROW_PAD };
}

function eachCell(columns: readonly Column[], row: SetRow, use: (block: TextBlock, x: number) => void): void {
  let x = LEFT;
  columns.forEach(({ share }, i) => {
    const block = row.blocks[i];
    if (block) use(block, x);
    x += share * BODY_WIDTH;
  });
}

function drawTitles(flow: Flow, table: Tag | null, columns: readonly Column[], titles: SetRow): void {
  if (table === null) {
    // Repeated on a later page: heard once is enough.
    asDecoration(flow.doc, () =>
      eachCell(columns, titles, (block, x) => drawBlock(flow, block, x, flow.y + ROW_PAD)),
    );
  } else drawCells(flow, table, "TH", columns, titles);
  drawRule(flow, flow.y + titles.height, RULE.line);
  flow.y += titles.height + 1;
}

function drawCells(flow: Flow, table: Tag, type: "TH" | "TD", columns: readonly Column[], row: SetRow): void {
  const line = openTag(flow, table, "TR");
  eachCell(columns, row, (block, x) => {
    const cell = openTag(flow, line, type, type === "TH" ? { scope: "Column" } : {});
    drawInto(flow, cell, type, () => drawBlock(flow, block, x, flow.y + ROW_PAD));
    cell.end();
  });
  line.end();
}

/** What is left for rows on a page that has nothing but the table on it. */
const wholePage = (titles: SetRow): number => BODY_BOTTOM - BODY_TOP - titles.height - 1;

/** How high a table's titles and its first rows are: what a heading wants below it, so that both stand together. */
export function tableStart(flow: Flow, columns: readonly Column[], rows: readonly Cells[]): number {
  const titles = titleRow(flow, columns);
  const heights = rows.map((cells) => setRow(flow, columns, cells).height);
  return titles.height + 2 + startHeight(heights, wholePage(titles));
}

/** How high a whole table is, where it is not broken. */
export function tableHeight(flow: Flow, columns: readonly Column[], rows: readonly Cells[]): number {
  const heights = rows.map((cells) => setRow(flow, columns, cells).height);
  return titleRow(flow, columns).height + 2 + heights.reduce((sum, height) => sum + height, 0);
}

const titleRow = (flow: Flow, columns: readonly Column[]): SetRow =>
  setRow(
    flow,
    columns,
    columns.map(({ title }) => [run(title, "display", 9.5)]),
  );

/**
 * A table across the page. Rows stay whole and do not stand alone at a foot or a head (`breakRows`); its titles stand
 * again on top of each page it goes on to.
 */
export function drawTable(flow: Flow, columns: readonly Column[], rows: readonly Cells[]): void {
  const titles = titleRow(flow, columns);
  const set = rows.map((cells) => setRow(flow, columns, cells));
  const later = wholePage(titles);
  const first = BODY_BOTTOM - flow.y - titles.height - 1;
  const counts = breakRows(
    set.map(({ height }) => height),
    first,
    later,
  );
  const table = openTag(flow, flow.root, "Table");
  let at = 0;
  for (const [page, count] of counts.entries()) {
    if (page > 0) makeRoom(flow, BODY_BOTTOM);
    if (count === 0) continue;
    drawTitles(flow, at === 0 ? table : null, columns, titles);
    for (const row of set.slice(at, at + count)) {
      drawCells(flow, table, "TD", columns, row);
      flow.y += row.height;
      drawRule(flow, flow.y, RULE.hair, GREY.rule);
    }
    at += count;
  }
  table.end();
}
