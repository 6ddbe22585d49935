import { collect } from "./collect";
import { drawFurniture, type Furniture } from "./draw-furniture";
import { openFaces } from "./faces";
import { drawRule, putBlock, type Flow } from "./flow";
import { balanceText, layText, run } from "./lay-text";
import { openDocument } from "./open-document";
import { BODY_WIDTH, LEFT, RULE } from "./page";

export interface CoursePaper extends Furniture {
  readonly ink: string;
  /** ISO 8601, written as the file's creation date: the clock is the caller's. */
  readonly createdAt: string;
}

/** A tagged PDF 1.7, A4, with the head and foot of every paper of this house; `draw` sets what is between. */
export async function coursePdf(paper: CoursePaper, draw: (flow: Flow) => void): Promise<Uint8Array> {
  const doc = openDocument({ title: `${paper.record}: ${paper.title}`, createdAt: paper.createdAt });
  const bytes = collect(doc);
  const root = doc.struct("Document");
  doc.addStructure(root);
  const faces = openFaces(doc);
  doc.addPage();
  const flow: Flow = { doc, faces, ink: paper.ink, root, y: 0 };
  draw(flow);
  root.end();
  drawFurniture(flow, paper);
  doc.end();
  return bytes;
}

const TOP = 36;

/** The first page's head: a bar, what kind of paper, its title, a line below. */
export function drawCourseHead(flow: Flow, kicker: string, title: string, below: string): void {
  drawRule(flow, TOP, RULE.heavy);
  flow.y = TOP + 9;
  const put = (type: string, block: ReturnType<typeof layText>) => {
    putBlock(flow, flow.root, type, block, LEFT, flow.y);
    flow.y += block.height + 4;
  };
  put("P", layText(flow.faces, [run(kicker, "display", 12)], BODY_WIDTH));
  put("H1", balanceText(flow.faces, [run(title, "heavy", 27)], BODY_WIDTH, 1.12));
  if (below !== "") put("P", layText(flow.faces, [run(below, "text", 10.5)], BODY_WIDTH, { breaks: true }));
  flow.y += 8;
}
