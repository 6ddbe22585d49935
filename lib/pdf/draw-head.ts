import type { SheetDocument } from "@/lib/report";
import { asDecoration, drawRule, putBlock, type Flow } from "./flow";
import { balanceText, layText, run } from "./lay-text";
import { BODY_WIDTH, LEFT, RIGHT, RULE } from "./page";

const TOP = 36;
const VERDICT_WIDTH = 172;

/** The first page's head: a bar, who and which bead, and the verdict in a box of its own. */
export function drawHead(flow: Flow, sheet: SheetDocument): void {
  const { doc } = flow;
  drawRule(flow, TOP, RULE.heavy);
  const width = sheet.verdict ? BODY_WIDTH - VERDICT_WIDTH - 20 : BODY_WIDTH;
  const kicker = `Bead ${sheet.number}, revision ${sheet.revision} · ${sheet.day}`;
  flow.y = TOP + 9;
  const put = (type: string, text: string, face: "display" | "heavy" | "text", size: number) => {
    const block = balanceText(flow.faces, [run(text, face, size)], width, 1.12);
    putBlock(flow, flow.root, type, block, LEFT, flow.y);
    flow.y += block.height + 3;
  };
  put("P", kicker, "display", 12);
  put("H1", sheet.title, "heavy", 27);
  if (sheet.welder) put("P", `Run by ${sheet.welder}`, "text", 10.5);
  const bottom = sheet.verdict ? drawVerdictBox(flow, sheet.verdict) : 0;
  flow.y = Math.max(flow.y, bottom) + 9;
  doc.lineCap("butt");
}

function drawVerdictBox(
  flow: Flow,
  { word, criteria, checkYourCopy }: NonNullable<SheetDocument["verdict"]>,
): number {
  const inner = VERDICT_WIDTH - 20;
  const big = layText(flow.faces, [run(word, "heavy", 20)], inner, { leading: 1.08 });
  const copy = checkYourCopy ? [run(". Check your copy.", "strong", 9)] : [];
  const small = layText(flow.faces, [run(criteria, "text", 9), ...copy], inner);
  const [x, y] = [RIGHT - VERDICT_WIDTH, TOP + 11];
  const height = big.height + small.height + 17;
  asDecoration(flow.doc, () => {
    flow.doc.lineWidth(RULE.box).strokeColor(flow.ink).lineJoin("miter").undash();
    flow.doc.rect(x + 1.1, y + 1.1, VERDICT_WIDTH - 2.2, height).stroke();
  });
  putBlock(flow, flow.root, "P", big, x + 10, y + 6);
  putBlock(flow, flow.root, "P", small, x + 10, y + big.height + 9);
  return y + height + 2.2;
}

export const INSPECTOR_FIRST = "A qualified inspector sees this bead before anything is changed or repaired.";

/** Above everything else: this bead goes to an inspector before anybody acts on the sheet. */
export function drawInspectorFirst(flow: Flow): void {
  const block = layText(flow.faces, [run(INSPECTOR_FIRST, "heavy", 15)], BODY_WIDTH - 28, { leading: 1.15 });
  const height = block.height + 14;
  asDecoration(flow.doc, () => {
    flow.doc.lineWidth(4).strokeColor(flow.ink).lineJoin("miter").undash();
    flow.doc.rect(LEFT + 2, flow.y + 2, BODY_WIDTH - 4, height - 4).stroke();
  });
  putBlock(flow, flow.root, "P", block, LEFT + 14, flow.y + 7);
  flow.y += height + 10;
}
