import { pathRouteFor } from "@/app/_door/route-for";
import { pdfAnswer } from "@/app/_door/pdf-answer";
import { printPictures } from "@/app/_door/print-pictures";
import { palette } from "@/components/picture";
import { inspectionPdf } from "@/lib/pdf";
import { draftRecord, getInspection, listSigned, seenDigest } from "@/lib/jobs";

export const dynamic = "force-dynamic";

const gone = (code: string) => Response.json({ issues: [{ code }] }, { status: 404 });

/** The report of a signed revision (`?revision=N`), the newest without one; `?draft` prints what is not signed yet. */
export const GET = pathRouteFor<{ inspectionId: string }>(
  "record.read",
  async (now, request, { inspectionId }) => {
    const inspection = await getInspection(now.db, inspectionId);
    if (!inspection) return gone("inspection-gone");
    const asked = new URL(request.url).searchParams;
    const signed = await listSigned(now.db, inspectionId);
    const wanted = asked.get("revision");
    const isDraft = asked.has("draft") || (wanted === null && signed.length === 0);
    const one = wanted === null ? signed.at(-1) : signed.find(({ revision }) => String(revision) === wanted);
    if (!isDraft && !one) return gone("revision-gone");
    // A text that was tampered with must not come out looking like a record.
    if (!isDraft && !one?.intact)
      return Response.json({ issues: [{ code: "text-changed" }] }, { status: 409 });
    const record = isDraft ? await draftRecord(now.db, inspectionId) : (one?.record ?? null);
    if (!record) return gone("record-unreadable");
    const page = isDraft ? "" : `/revisions/${one?.revision}`;
    const bytes = await inspectionPdf({
      record,
      digest: isDraft ? seenDigest(record) : (one?.digest ?? ""),
      signed: isDraft || !one ? null : one,
      photos: await printPictures(record.beads.flatMap(({ photos }) => photos)),
      recordUrl: `http://${request.headers.get("host") ?? "localhost"}/inspections/${inspectionId}${page}`,
      palette,
      createdAt: record.signature?.signedAt ?? inspection.createdAt,
    });
    const name = `toeline-inspection-${inspection.number}-${isDraft ? "draft" : `r${one?.revision}`}.pdf`;
    return pdfAnswer(bytes, name);
  },
);
