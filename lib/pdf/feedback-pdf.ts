import {
  itemName,
  itemsOver,
  layerPrimitives,
  rubricScore,
  scoreText,
  stepWords,
  type LayerInk,
  type ReturnedFeedback,
} from "@/lib/course";
import { fitLabels, primitives, scene, type Mark, type ScenePalette } from "@/lib/marks";
import { generalCautions } from "@/lib/report";
import { imperfections } from "@/lib/trade";
import { coursePdf, drawCourseHead } from "./course-document";
import { drawPrimitive } from "./draw-primitive";
import { drawTable, tableStart, type Column } from "./draw-table";
import {
  asDecoration,
  asTag,
  drawHeading,
  flowText,
  HEADING_HEIGHT,
  makeRoom,
  putBlock,
  type Flow,
} from "./flow";
import { layText, run, type Run } from "./lay-text";
import { BODY_WIDTH, LEFT, RULE } from "./page";

export interface FeedbackPdfInput {
  /** Read back from the frozen text. */
  readonly returned: ReturnedFeedback;
  /** SHA-256 of the frozen text. */
  readonly digest: string;
  /** What to call the student; null where the name was removed or is left out. */
  readonly student: string | null;
  readonly day: string;
  readonly reply: string | null;
  /** JPEG bytes by the photo's SHA-256, upright and free of metadata. */
  readonly photos: ReadonlyMap<string, Uint8Array>;
  readonly palette: ScenePalette;
  readonly layerInk: LayerInk;
  readonly recordUrl: string;
}

/** Points per screen unit, as on the sheet of a bead. */
const UNIT_PT = 0.5;
/** The instructor's hand is read from arm's length. */
const LAYER_UNIT_PT = 0.62;
const PHOTO_HEIGHT = 330;
const CAPTION = 18;

/** Returned feedback as a tagged PDF 1.7, A4: photo, both layers as vectors, rubric, remarks, reply. */
export async function feedbackPdf(input: FeedbackPdfInput): Promise<Uint8Array> {
  const { returned, digest, recordUrl, palette } = input;
  const record = `Feedback on bead ${returned.bead.number}`;
  const { title } = returned.exercise;
  const paper = { record, title, digest, recordUrl, ink: palette.text, createdAt: returned.returnedAt };
  return coursePdf(paper, (flow) => {
    const who = input.student === null ? "" : `${input.student}. `;
    drawCourseHead(flow, `${record} · returned ${input.day}`, title, `${who}${returned.exercise.aim}`);
    returned.photos.forEach((_, i) => drawLayeredPhoto(flow, input, i));
    drawRemarks(flow, returned);
    drawRubric(flow, returned);
    if (input.reply !== null) drawWords(flow, "The student’s reply", input.reply);
    for (const line of generalCautions) flowText(flow, [run(line, "text", 7.9)], { gap: 2 });
  });
}

function drawLayeredPhoto(flow: Flow, input: FeedbackPdfInput, i: number): void {
  const photo = input.returned.photos[i]!;
  const { widthPx, heightPx, drawing } = photo;
  const items = itemsOver(input.returned.layers, photo.id);
  const scale = Math.min(BODY_WIDTH / widthPx, PHOTO_HEIGHT / heightPx);
  const [width, height] = [widthPx * scale, heightPx * scale];
  makeRoom(flow, height + CAPTION);
  const alt = `Photo ${i + 1}. Marked by the student: ${drawing.marks.map(nameOf).join(", ") || "nothing"}. Drawn by the instructor: ${items.map(itemName).join("; ") || "nothing"}.`;
  asTag(flow, flow.root, "Figure", () => drawBothHands(flow, input, photo, scale), alt);
  asDecoration(flow.doc, () => {
    flow.doc.lineWidth(RULE.hair).strokeColor(flow.ink).undash();
    flow.doc.rect(LEFT, flow.y, width, height).stroke();
  });
  flow.y += height + 2;
  const there = input.photos.has(photo.sha256) ? "" : " The picture is missing.";
  const caption = `Photo ${i + 1}, ${photo.role}. Numbered marks: the student’s. Heavy lines and framed words: the instructor’s.${there}`;
  const block = layText(flow.faces, [run(caption, "text", 8.5)], BODY_WIDTH);
  putBlock(flow, flow.root, "Caption", block, LEFT, flow.y);
  flow.y += CAPTION;
}

const nameOf = (mark: Mark): string => imperfections[mark.imperfection].name;

/** The photo where the flow stands, the student's marks on it and the instructor's layer over them. */
function drawBothHands(
  flow: Flow,
  { returned, photos, palette, layerInk }: FeedbackPdfInput,
  photo: ReturnedFeedback["photos"][number],
  scale: number,
): void {
  const { widthPx, heightPx, drawing } = photo;
  const [width, height] = [widthPx * scale, heightPx * scale];
  const frame = { x: LEFT, y: flow.y, width, pointsPerPx: scale };
  const marks = fitLabels(scene(drawing, { labels: nameOf, widthPx }), UNIT_PT / scale, null, photo);
  const layer = layerPrimitives(itemsOver(returned.layers, photo.id), layerInk, LAYER_UNIT_PT / scale);
  flow.doc.save();
  flow.doc.rect(LEFT, flow.y, width, height).clip();
  const jpeg = photos.get(photo.sha256);
  if (jpeg) flow.doc.image(Buffer.from(jpeg), LEFT, flow.y, { width, height });
  for (const shape of marks)
    for (const one of primitives(shape, palette, UNIT_PT / scale)) drawPrimitive(flow, one, frame);
  for (const one of layer) drawPrimitive(flow, one, frame);
  flow.doc.restore();
}

function drawRemarks(flow: Flow, { quick, remark }: ReturnedFeedback): void {
  if (quick.length === 0 && remark.trim() === "") return;
  makeRoom(flow, HEADING_HEIGHT + 28);
  drawHeading(flow, "The instructor says");
  for (const text of quick) flowText(flow, [run("• ", "strong", 10), run(text, "text", 10)]);
  if (remark.trim() !== "") flowText(flow, [run(remark.trim(), "text", 10)], { breaks: true });
  flow.y += 8;
}

const columns: readonly Column[] = [
  { title: "Line", share: 0.6 },
  { title: "Weight", share: 0.12 },
  { title: "Reached", share: 0.28 },
];

function drawRubric(flow: Flow, { rubric, marks }: ReturnedFeedback): void {
  if (rubric.length === 0) return;
  const rows = rubric.map(({ id, title, weight }): readonly (readonly Run[])[] => {
    const mark = marks[id];
    const reached =
      mark === undefined
        ? "not marked"
        : mark === "left-out"
          ? "does not apply"
          : `${mark} of 4, ${stepWords[mark]}`;
    return [[run(title, "strong", 9.5)], [run(String(weight), "text", 9.5)], [run(reached, "text", 9.5)]];
  });
  makeRoom(flow, HEADING_HEIGHT + tableStart(flow, columns, rows));
  drawHeading(flow, "Rubric");
  drawTable(flow, columns, rows);
  flow.y += 5;
  flowText(flow, [run(scoreText(rubricScore(rubric, marks)), "heavy", 13)], { gap: 9 });
}

function drawWords(flow: Flow, title: string, words: string): void {
  makeRoom(flow, HEADING_HEIGHT + 28);
  drawHeading(flow, title);
  flowText(flow, [run(words, "text", 10)], { breaks: true, gap: 9 });
}
