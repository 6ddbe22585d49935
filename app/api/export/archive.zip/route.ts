import { routeFor } from "@/app/_door/here";
import { dataDir } from "@/lib/db";
import { archiveOf, archiveSentence } from "@/lib/record";
import { askedBeads, download } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

const statuses = { "archive-empty": 404, "archive-too-many": 413, "archive-photo": 409 } as const;

/** One bead (`?id=`), a job's (`?job=`) or whatever fits the filter, with original photos and checksums. */
export async function GET(request: Request): Promise<Response> {
  const now = await routeFor(request, "data.export");
  if (now instanceof Response) return now;
  const asked = await askedBeads(now, request, "data.export");
  if (asked instanceof Response) return asked;
  const beads = asked.found.map(({ bead }) => bead);
  const archive = await archiveOf(dataDir(), beads, asked.context.shopSets);
  if (!archive.ok) {
    const issues = archive.issues.map((one) => ({ code: one.code, message: archiveSentence(one) }));
    return Response.json({ issues }, { status: statuses[archive.issues[0]?.code ?? "archive-empty"] });
  }
  const name = beads.length === 1 ? `toeline-bead-${beads[0]?.number}.zip` : "toeline-beads.zip";
  return download(archive.value, "application/zip", name);
}
