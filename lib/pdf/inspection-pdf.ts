import { dayText } from "@/lib/report";
import {
  keyWords,
  recordSections,
  resultNames,
  resultTitle,
  signerWords,
  type Signed,
  type SignedRecord,
} from "@/lib/inspect";
import { standingSentence, standingTitle } from "@/lib/signature";
import type { ScenePalette } from "@/lib/marks";
import { collect } from "./collect";
import { drawFurniture } from "./draw-furniture";
import { openFaces } from "./faces";
import { drawHeading, drawRule, flowText, HEADING_HEIGHT, makeRoom, putBlock, type Flow } from "./flow";
import { drawInspectionBead, drawRows } from "./inspection-bead";
import { drawWelds, partSections } from "./inspection-welds";
import { layText, run } from "./lay-text";
import { openDocument } from "./open-document";
import { BODY_WIDTH, LEFT, RULE } from "./page";

export interface InspectionPdfInput {
  readonly record: SignedRecord;
  /** SHA-256 of the signed text; of the record without a signature where it is a draft. */
  readonly digest: string;
  /** How far the signed text can be relied on, and the signer's name where it may stand there; null: a draft. */
  readonly signed: Signed | null;
  /** JPEG bytes by the photo's SHA-256, upright and free of metadata. */
  readonly photos: ReadonlyMap<string, Uint8Array>;
  readonly recordUrl: string;
  readonly palette: ScenePalette;
  /** ISO 8601. */
  readonly createdAt: string;
}

/** On every page. What nobody could verify says so there too. */
function nameOf({ record: { inspection, signature }, signed }: InspectionPdfInput): string {
  const doubt =
    signed?.standing.kind === "unverified" ? `, ${standingTitle(signed.standing).toUpperCase()}` : "";
  return `Inspection ${inspection.number}, ${signature ? `revision ${signature.revision}${doubt}` : "DRAFT, not signed"}`;
}

/**
 * The inspection report as a tagged PDF 1.7, A4, drawn from the record alone: what was signed is printed, not what
 * would be found today. Metric first, inch beside it. The same input gives the same bytes.
 */
export async function inspectionPdf(input: InspectionPdfInput): Promise<Uint8Array> {
  const { record, digest, recordUrl } = input;
  const title = record.job.content.title;
  const doc = openDocument({ title: `${nameOf(input)}: ${title}`, createdAt: input.createdAt });
  const bytes = collect(doc);
  const root = doc.struct("Document");
  doc.addStructure(root);
  doc.addPage();
  const flow: Flow = { doc, faces: openFaces(doc), ink: input.palette.text, root, y: 0 };
  drawTop(flow, input);
  const { alone, welds } = partSections(recordSections(record));
  for (const { title: heading, rows } of alone) drawRows(flow, heading, rows);
  drawWelds(flow, welds);
  drawPoints(flow, record);
  for (const bead of inWeldOrder(record)) drawInspectionBead(flow, bead, record, input);
  drawSignature(flow, input);
  root.end();
  drawFurniture(flow, { record: nameOf(input), title, digest, recordUrl });
  doc.end();
  return bytes;
}

/** As the welds stand in the job; beads of one weld as they were run. */
function inWeldOrder({ beads, job }: SignedRecord): SignedRecord["beads"] {
  const place = (weldId: string | null): number => job.content.welds.findIndex(({ id }) => id === weldId);
  return beads.toSorted((a, b) => place(a.weldId) - place(b.weldId) || a.number - b.number);
}

function drawTop(flow: Flow, input: InspectionPdfInput): void {
  const { record, signed } = input;
  drawRule(flow, 36, RULE.heavy);
  flow.y = 46;
  const put = (type: string, text: string, face: "display" | "heavy" | "text", size: number) => {
    const block = layText(flow.faces, [run(text, face, size)], BODY_WIDTH, { leading: 1.14 });
    putBlock(flow, flow.root, type, block, LEFT, flow.y);
    flow.y += block.height + 3;
  };
  put("P", `Visual inspection report · ${nameOf(input)}`, "display", 12);
  put("H1", record.job.content.title, "heavy", 25);
  if (signed) {
    put("P", standingTitle(signed.standing), "heavy", 12);
    put("P", standingSentence(signed.standing), "text", 9);
  }
  put("P", `${resultTitle(signed)}: ${resultNames[record.result]}`, "heavy", 17);
  put("P", record.statement, "text", 9);
  flow.y += 8;
}

function drawPoints(flow: Flow, { points, signature }: SignedRecord): void {
  if (points.length === 0) return;
  makeRoom(flow, HEADING_HEIGHT + 28);
  drawHeading(flow, "Open points and notes");
  for (const { weight, sentence } of points)
    flowText(flow, [run(weight === "open" ? "Open: " : "Note: ", "strong", 9), run(sentence, "text", 9)], {
      gap: 2,
    });
  if (signature?.acknowledgement)
    flowText(flow, [run("The signer says: ", "strong", 9), run(signature.acknowledgement, "text", 9)]);
  flow.y += 9;
}

function drawSignature(flow: Flow, { record, signed }: InspectionPdfInput): void {
  const { signature } = record;
  makeRoom(flow, HEADING_HEIGHT + 70);
  drawHeading(flow, "Signature");
  const say = (text: string) => flowText(flow, [run(text, "text", 9.5)], { breaks: true });
  if (!signature || !signed) return say("DRAFT, not signed. Nobody has put their name to this.");
  const { signer, signedAt, revision, reason, changes } = signature;
  say(`${standingTitle(signed.standing)}. ${standingSentence(signed.standing)}`);
  say(`Signer: ${signerWords(signed, signature)}.`);
  say(`${dayText(signedAt)}, ${signedAt.slice(11, 19)} UTC. Revision ${revision}.`);
  const key = keyWords(signature);
  if (key) say(key);
  say(`Person ${signer.personId}; SHA-256 of salt and name ${signer.nameHash}`);
  if (signature.previousDigest) say(`SHA-256 of the revision before ${signature.previousDigest}`);
  if (reason) say(`Reason of this revision: ${reason}`);
  if (revision > 1) say(changes.length === 0 ? "Nothing else changed." : "What changed:");
  for (const line of changes) flowText(flow, [run(`– ${line}`, "text", 8.5)], { gap: 1 });
}
