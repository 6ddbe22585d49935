import { pdfAnswer } from "@/app/_door/pdf-answer";
import { printPictures } from "@/app/_door/print-pictures";
import { shopDay } from "@/app/_door/shop-day";
import { layerInk, palette } from "@/components/picture";
import type { Db } from "@/lib/db";
import { drawPaper } from "@/lib/aside";
import { getFeedback, type HandInRecord } from "@/lib/classroom";

/** Returned feedback as a PDF; 404 while it is a draft. Whoever calls has asked whether they may. */
export async function feedbackPdfAnswer(
  db: Db,
  handIn: HandInRecord,
  recordUrl: string,
  signal: AbortSignal,
): Promise<Response> {
  const { returned, digest, returnedAt, reply } = await getFeedback(db, handIn.id);
  if (!returned || !digest || !returnedAt) return new Response("No feedback yet.", { status: 404 });
  const photos = await printPictures(returned.photos);
  const bytes = await drawPaper(
    "feedback",
    {
      returned,
      digest,
      student: handIn.student,
      day: shopDay(returnedAt),
      reply,
      photos,
      palette,
      layerInk,
      recordUrl,
    },
    signal,
  );
  return pdfAnswer(bytes, `toeline-feedback-bead-${returned.bead.number}.pdf`);
}
