import { currentUnits } from "@/app/_door/current-units";
import { beadRouteFor } from "@/app/_door/route-for";
import { dear } from "@/app/_door/dear-work";
import { pdfAnswer } from "@/app/_door/pdf-answer";
import { palette } from "@/components/picture";
import { drawPaper } from "@/lib/aside";
import { assessBead } from "@/lib/assess";
import { getBead } from "@/lib/beads";
import { assessContext } from "@/lib/shop";
import { benchCard } from "@/lib/report";

export const dynamic = "force-dynamic";

/** The bench card of a bead as a PDF, A5 landscape; the same revision gives the same file. */
export const GET = beadRouteFor(
  "bead.read",
  dear(async (now, request, { beadId }: { readonly beadId: string }) => {
    const [bead, units, known] = await Promise.all([
      getBead(now.db, beadId),
      currentUnits(),
      assessContext(now.db),
    ]);
    if (!bead) return Response.json({ issues: [{ code: "bead-gone" }] }, { status: 404 });
    const bytes = await drawPaper(
      "benchCard",
      {
        card: benchCard(assessBead(bead, known), units.preferences),
        recordUrl: `http://${request.headers.get("host") ?? "localhost"}/beads/${bead.id}`,
        ink: palette.text,
        createdAt: bead.updatedAt,
      },
      request.signal,
    );
    return pdfAnswer(bytes, `toeline-card-bead-${bead.number}-r${bead.revision}.pdf`);
  }),
);
