import type { SheetCause, SheetDocument } from "@/lib/report";
import { asDecoration, drawHeading, flowText, HEADING_HEIGHT, makeRoom, putBlock, type Flow } from "./flow";
import { layText, run, type Run, type TextBlock } from "./lay-text";
import { BODY_WIDTH, GREY, LEFT, RULE } from "./page";

const GAP = 16;
const BAR_HEIGHT = 6;
/** The likeliest cause says most, so it gets the widest column. */
const SHARES = [1.4, 1, 1] as const;

interface CauseColumn {
  readonly cause: SheetCause;
  readonly x: number;
  readonly width: number;
  readonly name: TextBlock;
  readonly chance: TextBlock;
  readonly lines: readonly TextBlock[];
  readonly height: number;
}

function setColumn(flow: Flow, cause: SheetCause, rank: number, x: number, width: number): CauseColumn {
  const lay = (runs: readonly Run[], leading?: number) =>
    layText(flow.faces, runs, width, leading ? { leading } : {});
  const name = lay([run(`${rank + 1}. ${cause.name}`, "heavy", 12)], 1.12);
  const chance = lay([run(cause.chance, "text", 9)]);
  const lines = [
    ...cause.speaksFor.map((line) => lay([run("+ ", "strong", 8.5), run(line, "text", 8.5)], 1.25)),
    ...cause.speaksAgainst.map((line) => lay([run("− ", "strong", 8.5), run(line, "text", 8.5)], 1.25)),
  ];
  const height =
    name.height + chance.height + BAR_HEIGHT + 9 + lines.reduce((sum, block) => sum + block.height + 2.5, 0);
  return { cause, x, width, name, chance, lines, height };
}

function drawColumn(flow: Flow, column: CauseColumn): void {
  const { cause, x, width, name, chance, lines } = column;
  let { y } = flow;
  putBlock(flow, flow.root, "H3", name, x, y);
  y += name.height + 1;
  putBlock(flow, flow.root, "P", chance, x, y);
  y += chance.height + 3;
  asDecoration(flow.doc, () => {
    flow.doc.lineWidth(RULE.hair).strokeColor(flow.ink).lineJoin("miter").undash();
    flow.doc.rect(x, y, width, BAR_HEIGHT).stroke();
    flow.doc.rect(x, y, width * Math.max(0.01, cause.probability), BAR_HEIGHT).fill(flow.ink);
  });
  y += BAR_HEIGHT + 5;
  for (const block of lines) {
    putBlock(flow, flow.root, "P", block, x, y);
    y += block.height + 2.5;
  }
}

/** The likely causes side by side, each with a bar and what speaks for and against it. */
export function drawCauses(
  flow: Flow,
  { causes, causeless, origin }: Pick<SheetDocument, "causes" | "causeless" | "origin">,
): void {
  const shares = causes.map((_, rank) => SHARES[rank] ?? 1);
  const free = BODY_WIDTH - GAP * (causes.length - 1);
  const whole = shares.reduce((sum, share) => sum + share, 0);
  let x = LEFT;
  const columns = causes.map((cause, rank) => {
    const width = (free * (shares[rank] ?? 1)) / whole;
    const column = setColumn(flow, cause, rank, x, width);
    x += width + GAP;
    return column;
  });
  const height = Math.max(0, ...columns.map((column) => column.height));
  makeRoom(flow, HEADING_HEIGHT + height + 14);
  drawHeading(flow, "Likely causes");
  for (const column of columns) drawColumn(flow, column);
  flow.y += height + 3;
  for (const line of causeless) flowText(flow, [run(line, "text", 9)], { gap: 4 });
  flowText(flow, [run(origin === "" ? "None named." : origin, "text", 8, GREY.words)], { gap: 11 });
}
