import { currentUnits } from "@/app/_door/current-units";
import { dear } from "@/app/_door/dear-work";
import { pdfAnswer } from "@/app/_door/pdf-answer";
import { pathRouteFor } from "@/app/_door/route-for";
import { palette } from "@/components/picture";
import { issue, linesOf } from "@/lib/base";
import { drawPaper } from "@/lib/aside";
import { cardSheet } from "@/lib/report";
import { getCard } from "@/lib/series";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/** A card as a PDF. */
export const GET = pathRouteFor<{ cardId: string }>(
  "bead.read",
  dear(async (now, request, { cardId }) => {
    const card = await getCard(now.db, cardId);
    if (card === null)
      return Response.json({ issues: linesOf([issue("card-gone")], recordSentence) }, { status: 404 });
    const { preferences } = await currentUnits();
    const bytes = await drawPaper(
      "card",
      {
        sheet: cardSheet(card.content, card.number, preferences),
        ink: palette.text,
        createdAt: card.createdAt,
      },
      request.signal,
    );
    return pdfAnswer(bytes, `toeline-card-${card.number}.pdf`);
  }),
);
