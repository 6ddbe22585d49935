import { staleBeads, unreadableBeads, workInBackground } from "@/lib/beads";
import { db } from "@/lib/db";

export const dynamic = "force-dynamic";

/**
 * Whether it serves (200; 503 where the database does not answer) and whether all is well (`ok`): a bead that cannot be read
 * stops nobody, and is no health. The start script asks until this answers; so what the migrations left to be worked out
 * begins with the start.
 */
export async function GET(): Promise<Response> {
  try {
    const stale = await staleBeads(db());
    if (stale > 0) workInBackground(db());
    const unreadable = (await unreadableBeads(db())).length;
    return Response.json({ ok: unreadable === 0, unreadableBeads: unreadable, beadsBeingWorkedOut: stale });
  } catch {
    return Response.json({ ok: false, message: "The database does not answer." }, { status: 503 });
  }
}
