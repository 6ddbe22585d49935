import { createHash } from "node:crypto";
import { readBody } from "@/app/_door/read-body";
import { refuseForeign } from "@/app/_door/same-site";
import { archiveReport } from "@/lib/exchange";
import { nodeKeys } from "@/lib/keys";

export const dynamic = "force-dynamic";

/** Anybody may send one, so no more than a job's worth, and one at a time: own estimates. */
const MOST_BYTES = 128 * 2 ** 20;
let busy = false;

const sha256 = (of: Uint8Array | string): string => createHash("sha256").update(of).digest("hex");
const refusal = (status: number, code: string, message: string) =>
  Response.json({ issues: [{ code, message }] }, { status, headers: { "cache-control": "no-store" } });

/**
 * Which key signed what in the archive that is sent, and when. Nobody is asked who they are: nothing of this installation
 * is read, and nothing of what was sent is kept.
 */
export async function POST(request: Request): Promise<Response> {
  const foreign = refuseForeign(request);
  if (foreign) return foreign;
  if (busy)
    return refusal(503, "check-busy", "Another archive is being looked at. Wait a moment and send it again.");
  busy = true;
  try {
    const bytes = await readBody(request, MOST_BYTES);
    if (bytes === null)
      return refusal(
        413,
        "check-too-large",
        "This archive is over 128 MB. Verify it with the command: npm run -s verify -- ARCHIVE",
      );
    const report = archiveReport(bytes, nodeKeys, sha256);
    return Response.json(report, { headers: { "cache-control": "no-store" } });
  } finally {
    busy = false;
  }
}
