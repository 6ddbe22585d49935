import { routeFor } from "@/app/_door/route-for";
import { dear } from "@/app/_door/dear-work";
import { pdfAnswer } from "@/app/_door/pdf-answer";
import { drawPaper } from "@/lib/aside";
import { stripPapers, type StripPaper } from "@/lib/pdf";

export const dynamic = "force-dynamic";

/** The scale strip to print; `?paper=a4|letter`, A4 unless said otherwise. */
export const GET = routeFor(
  "bead.read",
  dear(async (_now, request) => {
    const asked = new URL(request.url).searchParams.get("paper") ?? "a4";
    if (!Object.hasOwn(stripPapers, asked))
      return Response.json(
        { issues: [{ code: "paper-unknown", message: "The strip is printed on paper=a4 or paper=letter." }] },
        { status: 422 },
      );
    // The strip is the same every day; a fixed date keeps the file the same as well.
    const bytes = await drawPaper(
      "strip",
      { paper: asked as StripPaper, createdAt: "2026-01-01T00:00:00.000Z" },
      request.signal,
    );
    return pdfAnswer(bytes, `toeline-strip-${asked}.pdf`);
  }),
);
