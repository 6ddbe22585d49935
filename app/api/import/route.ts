import { revalidatePath } from "next/cache";
import { inDearTurn, tooMuch } from "@/app/_door/dear-work";
import type { Here } from "@/app/_door/here";
import { routeFor } from "@/app/_door/route-for";
import { readBody } from "@/app/_door/read-body";
import { linesOf } from "@/lib/base";
import { photoPlace } from "@/lib/db";
import { checkArchive, importArchive, importSentence, MOST_ARCHIVE_BYTES } from "@/lib/archive";

export const dynamic = "force-dynamic";

/**
 * Takes an archive as the body. `?check=yes` says what importing it would do and writes nothing;
 * `?conflicts=leave` imports the rest where some beads are here with other content.
 */
export const POST = routeFor("data.import", async (now, request) => {
  const bytes = await readBody(request, MOST_BODY_BYTES);
  if (bytes === null) return tooLarge();
  return (await inDearTurn(now.pen.by, () => takeIn(now, request, bytes))) ?? tooMuch();
});

async function takeIn(now: Here, request: Request, bytes: Uint8Array): Promise<Response> {
  const { searchParams } = new URL(request.url);
  const check = searchParams.get("check") === "yes";
  const leaveConflicts = searchParams.get("conflicts") === "leave";
  const answer = check
    ? await checkArchive(now.db, bytes)
    : await importArchive(now.pen, photoPlace(), bytes, { leaveConflicts });
  if (answer.ok) {
    if (!check) revalidatePath("/");
    return Response.json({ done: !check, ...answer.value }, { status: check ? 200 : 201 });
  }
  const issues = linesOf(answer.issues.slice(0, 20), importSentence);
  const code = issues[0]?.code ?? "";
  const status =
    code === "import-conflicts" || code === "import-criteria-differ"
      ? 409
      : code.startsWith("store-")
        ? 503
        : 422;
  return Response.json({ issues }, { status });
}

/** Photos and the list of beads beside them. */
const MOST_BODY_BYTES = MOST_ARCHIVE_BYTES * 1.25;

function tooLarge(): Response {
  const message = `This file is larger than ${Math.round(MOST_BODY_BYTES / 2 ** 20)} MB. Export fewer beads at a time.`;
  return Response.json({ issues: [{ code: "import-too-large", path: [], message }] }, { status: 413 });
}
