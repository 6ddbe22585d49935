import { routeFor } from "@/app/_door/here";
import { db } from "@/lib/db";
import { getHandIn, handInThing } from "@/lib/record";
import { feedbackPdfAnswer } from "../../feedback-pdf-answer";

export const dynamic = "force-dynamic";

export async function GET(
  request: Request,
  context: { params: Promise<{ handInId: string }> },
): Promise<Response> {
  const { handInId } = await context.params;
  const now = await routeFor(
    request,
    "feedback.read",
    (await handInThing(db(), handInId)) ?? { personId: null },
  );
  if (now instanceof Response) return now;
  const handIn = await getHandIn(now.db, handInId);
  if (!handIn) return new Response("No such hand-in.", { status: 404 });
  const host = request.headers.get("host") ?? "localhost";
  return feedbackPdfAnswer(now.db, handIn, `http://${host}/feedback/${handInId}`);
}
