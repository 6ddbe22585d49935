import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { inDearTurn, tooMuch } from "@/app/_door/dear-work";
import { readBody } from "@/app/_door/read-body";
import { refuseForeign } from "@/app/_door/same-site";
import { addressOf } from "@/lib/account";
import { runAside } from "@/lib/backup";
import { ofSite } from "@/lib/sites";

export const dynamic = "force-dynamic";

/** Anybody may send one, so no more than a job's worth, one from each address and four in all at a time: own estimates. */
const MOST_BYTES = 128 * 2 ** 20;
const MOST_AT_ONCE = 4;
const sending = new Set<string>();

const refusal = (status: number, code: string, message: string) =>
  Response.json({ issues: [{ code, message }] }, { status, headers: { "cache-control": "no-store" } });

/**
 * Which key signed what in the archive that is sent, and when. Nobody is asked who they are: nothing of this installation
 * is read, and nothing of what was sent is kept.
 */
export async function POST(request: Request): Promise<Response> {
  const foreign = refuseForeign(request);
  if (foreign) return foreign;
  const sender = addressOf(request.headers);
  const here = ofSite(sender);
  if (sending.has(here) || sending.size >= MOST_AT_ONCE)
    return refusal(503, "check-busy", "Another archive is being looked at. Wait a moment and send it again.");
  sending.add(here);
  try {
    const bytes = await readBody(request, MOST_BYTES);
    if (bytes === null)
      return refusal(
        413,
        "check-too-large",
        "This archive is over 128 MB. Verify it with the command: npm run -s verify -- ARCHIVE",
      );
    const report = await inDearTurn(sender, () => reportAside(bytes));
    if (report === null) return tooMuch();
    return new Response(report, {
      headers: { "cache-control": "no-store", "content-type": "application/json" },
    });
  } finally {
    sending.delete(here);
  }
}

/** The report as JSON, by the command that does the same, in a process of its own: hashing 128 MB would hold up everybody. */
async function reportAside(bytes: Uint8Array): Promise<string> {
  const desk = await mkdtemp(path.join(tmpdir(), "toeline-check-"));
  try {
    const file = path.join(desk, "archive.zip");
    await writeFile(file, bytes, { mode: 0o600 });
    const { code, out } = await runAside("verify.ts", ["--json", file]);
    if (code === null || out === "") throw new Error("the check of an archive gave no answer");
    return out;
  } finally {
    await rm(desk, { recursive: true, force: true });
  }
}
