import { becauseLine, expectLine, type SheetDocument } from "@/lib/report";
import { asDecoration, makeRoom, putBlock, type Flow } from "./flow";
import { layText, run } from "./lay-text";
import { BODY_WIDTH, LEFT, RULE } from "./page";

const BAR = 9;
const PAD = 9;

/** The one change to try, in a box that is seen from across the bench. It stays on one page. */
export function drawChange(flow: Flow, sheet: SheetDocument): void {
  const { change, nextChanges } = sheet;
  if (!change) return;
  const width = BODY_WIDTH - BAR - 3 * PAD;
  const lay = (text: string, face: "heavy" | "text", size: number, leading: number) =>
    layText(flow.faces, [run(text, face, size)], width, { leading });
  const sentence = change.step === "" ? change.sentence : `${change.sentence} ${change.step}.`;
  const later = `Only if that does not cure it: ${nextChanges.join(" Then: ")}`;
  const parts = [
    { type: "H2", block: lay("Change this one thing", "heavy", 13, 1.15), gap: 1 },
    { type: "P", block: lay(sentence, "heavy", 19, 1.13), gap: 5 },
    { type: "P", block: lay([becauseLine(change), ...change.reasons].join(" "), "text", 9.5, 1.28), gap: 4 },
    ...(change.expect === ""
      ? []
      : [{ type: "P", block: lay(expectLine(change), "text", 9.5, 1.28), gap: 4 }]),
    ...(nextChanges.length > 0 ? [{ type: "P", block: lay(later, "text", 9.5, 1.28), gap: 0 }] : []),
  ];
  const height = parts.reduce((sum, { block, gap }) => sum + block.height + gap, 0) + 2 * PAD;
  makeRoom(flow, height + 12);
  const top = flow.y;
  asDecoration(flow.doc, () => {
    flow.doc.lineWidth(RULE.box).strokeColor(flow.ink).lineJoin("miter").undash();
    flow.doc.rect(LEFT + 1.1, top + 1.1, BODY_WIDTH - 2.2, height - 2.2).stroke();
    flow.doc.rect(LEFT, top, BAR, height).fill(flow.ink);
  });
  flow.y += PAD - 1;
  for (const { type, block, gap } of parts) {
    putBlock(flow, flow.root, type, block, LEFT + BAR + PAD, flow.y);
    flow.y += block.height + gap;
  }
  flow.y = top + height + 13;
}
