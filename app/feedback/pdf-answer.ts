import { readFile } from "node:fs/promises";
import { palette } from "@/components/canvas/palette";
import { layerInk } from "@/components/course/layer-ink";
import { dataDir, type Db } from "@/lib/db";
import { feedbackPdf } from "@/lib/pdf";
import { viewPath } from "@/lib/photo";
import { getFeedback, type HandInRecord } from "@/lib/record";
import { dayText } from "@/lib/report";

/** Returned feedback as a PDF; 404 while it is a draft. Whoever calls has asked whether they may. */
export async function feedbackPdfAnswer(db: Db, handIn: HandInRecord, recordUrl: string): Promise<Response> {
  const { returned, digest, returnedAt, reply } = await getFeedback(db, handIn.id);
  if (!returned || !digest || !returnedAt) return new Response("No feedback yet.", { status: 404 });
  const photos = new Map<string, Uint8Array>();
  for (const { sha256 } of returned.photos) {
    const file = viewPath(dataDir(), sha256, "small");
    const bytes = file === null ? null : await readFile(file).catch(() => null);
    if (bytes) photos.set(sha256, bytes);
  }
  const bytes = await feedbackPdf({
    returned,
    digest,
    student: handIn.student,
    day: dayText(returnedAt),
    reply,
    photos,
    palette,
    layerInk,
    recordUrl,
  });
  return pdfAnswer(bytes, `toeline-feedback-bead-${returned.bead.number}.pdf`);
}

export function pdfAnswer(bytes: Uint8Array, name: string): Response {
  return new Response(Buffer.from(bytes), {
    headers: {
      "content-type": "application/pdf",
      "content-disposition": `inline; filename="${name}"`,
      "cache-control": "private, no-store",
      "x-content-type-options": "nosniff",
    },
  });
}
