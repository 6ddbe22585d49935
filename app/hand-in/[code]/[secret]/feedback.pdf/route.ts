import { dearAnswer } from "@/app/_door/dear-work";
import { here } from "@/app/_door/here";
import { refuseForeign } from "@/app/_door/same-site";
import { feedbackPdfAnswer } from "@/app/feedback/feedback-pdf-answer";
import { addressOf } from "@/lib/account";
import { handInBySecret } from "@/lib/classroom";

export const dynamic = "force-dynamic";

/** The feedback of one hand-in for whoever holds its secret. A paper is passed around, so its code leads to the record, never to the secret. */
export async function GET(
  request: Request,
  context: { params: Promise<{ code: string; secret: string }> },
): Promise<Response> {
  const foreign = refuseForeign(request);
  if (foreign) return foreign;
  const { code, secret } = await context.params;
  const { db } = await here();
  const handIn = await handInBySecret(db, code, secret);
  if (!handIn) return new Response("No such hand-in.", { status: 404 });
  const host = request.headers.get("host") ?? "localhost";
  const paper = () => feedbackPdfAnswer(db, handIn, `http://${host}/feedback/${handIn.id}`, request.signal);
  return dearAnswer(addressOf(request.headers), request, paper);
}
