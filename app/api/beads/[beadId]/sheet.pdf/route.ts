import { createHash } from "node:crypto";
import { currentUnits } from "@/app/_door/current-units";
import { beadRouteFor } from "@/app/_door/route-for";
import { dear } from "@/app/_door/dear-work";
import { pdfAnswer } from "@/app/_door/pdf-answer";
import { printPictures } from "@/app/_door/print-pictures";
import { palette } from "@/components/picture";
import { canonicalJson } from "@/lib/base";
import { drawPaper } from "@/lib/aside";
import { assessBead } from "@/lib/assess";
import { getBead } from "@/lib/beads";
import { assessContext } from "@/lib/shop";
import { sheetDocument } from "@/lib/report";

export const dynamic = "force-dynamic";

/** The sheet of a bead as a PDF, in the units of this installation; the same revision gives the same file. */
export const GET = beadRouteFor(
  "bead.read",
  dear(async (now, request, { beadId }: { readonly beadId: string }) => {
    const [bead, units, known] = await Promise.all([
      getBead(now.db, beadId),
      currentUnits(),
      assessContext(now.db),
    ]);
    if (!bead) return Response.json({ issues: [{ code: "bead-gone" }] }, { status: 404 });
    const sheet = sheetDocument(assessBead(bead, known), units.preferences);
    const bytes = await drawPaper(
      "sheet",
      {
        sheet,
        photos: await printPictures(sheet.photos),
        digest: createHash("sha256").update(canonicalJson(sheet)).digest("hex"),
        recordUrl: `http://${request.headers.get("host") ?? "localhost"}/beads/${bead.id}`,
        palette,
        createdAt: bead.updatedAt,
      },
      request.signal,
    );
    return pdfAnswer(bytes, `toeline-bead-${sheet.number}-r${sheet.revision}.pdf`);
  }),
);
