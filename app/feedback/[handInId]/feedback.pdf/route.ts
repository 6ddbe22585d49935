import { dear } from "@/app/_door/dear-work";
import { handInRouteFor } from "@/app/_door/route-for";
import { getHandIn } from "@/lib/classroom";
import { feedbackPdfAnswer } from "../../feedback-pdf-answer";

export const dynamic = "force-dynamic";

export const GET = handInRouteFor(
  "feedback.read",
  dear(async (now, request, { handInId }) => {
    const handIn = await getHandIn(now.db, handInId);
    if (!handIn) return new Response("No such hand-in.", { status: 404 });
    const host = request.headers.get("host") ?? "localhost";
    return feedbackPdfAnswer(now.db, handIn, `http://${host}/feedback/${handInId}`, request.signal);
  }),
);
