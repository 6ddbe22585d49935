import { currentUnits } from "@/app/_door/current-units";
import { issuePaper } from "@/app/_door/issue-paper";
import { pathRouteFor } from "@/app/_door/route-for";
import { dear } from "@/app/_door/dear-work";
import { pdfAnswer } from "@/app/_door/pdf-answer";
import { printPictures } from "@/app/_door/print-pictures";
import { UnitChoiceSchema, type UnitChoice } from "@/app/_door/units";
import { palette } from "@/components/picture";
import { publicAddress } from "@/lib/account";
import { drawPaper } from "@/lib/aside";
import { draftRecord, getInspection, listSigned, seenDigest } from "@/lib/jobs";

export const dynamic = "force-dynamic";

/** Those asked for, else those of whoever looks. */
async function unitsOf(asked: string | null): Promise<UnitChoice> {
  const named = UnitChoiceSchema.safeParse(asked);
  return named.success ? named.data : (await currentUnits()).choice;
}

const gone = (code: string) => Response.json({ issues: [{ code }] }, { status: 404 });

/** The report of a signed revision (`?revision=N`), the newest without one; `?draft` prints what is not signed yet; `?units=` metric, inch or both. */
export const GET = pathRouteFor<{ inspectionId: string }>(
  "record.read",
  dear(async (now, request, { inspectionId }) => {
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
    const address = publicAddress();
    const page = isDraft ? "" : `/revisions/${one?.revision}`;
    const bytes = await drawPaper(
      "inspection",
      {
        record,
        digest: isDraft ? seenDigest(record) : (one?.digest ?? ""),
        signed: isDraft || !one ? null : one,
        photos: await printPictures(record.beads.flatMap(({ photos }) => photos)),
        recordUrl: address && `${address}/inspections/${inspectionId}${page}`,
        units: asked.get("units") === "both" ? "both" : await unitsOf(asked.get("units")),
        palette,
        createdAt: record.signature?.signedAt ?? inspection.createdAt,
      },
      request.signal,
    );
    const name = `toeline-inspection-${inspection.number}-${isDraft ? "draft" : `r${one?.revision}`}.pdf`;
    return pdfAnswer(
      one && !isDraft ? await issuePaper(now.db, bytes, one.standing, new Date()) : bytes,
      name,
    );
  }),
);
