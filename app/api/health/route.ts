import { staleBeads, workInBackground } from "@/lib/beads";
import { db } from "@/lib/db";

export const dynamic = "force-dynamic";

/** The start script asks until this answers; so what the migrations left to be worked out begins with the start. */
export async function GET(): Promise<Response> {
  if ((await staleBeads(db())) > 0) workInBackground(db());
  return Response.json({ ok: true });
}
