import { download } from "@/app/_door/download";
import { tooMuch } from "@/app/_door/dear-work";
import { LOOK_WAITS, standInLine, type InLine } from "@/app/_door/look-turns";
import { readBody } from "@/app/_door/read-body";
import { routeFor } from "@/app/_door/route-for";
import { asideSentence, doAside, unlessStopped, type AsideIssue, type Done } from "@/lib/aside";
import { linesOf } from "@/lib/base";
import { headSentence, readHead } from "@/lib/keys";
import type { LogHead } from "@/lib/signature";

export const dynamic = "force-dynamic";

/** A head of the log is a few hundred letters. */
const MOST_BYTES = 8000;
/** Whoever waits for a turn hears so often that they still do: a connection without a word is closed by what stands between. */
const SAY_MS = 10_000;

/**
 * Looks at all records, as `npm run verify` does, and says meanwhile how far it is: lines of JSON (`LookSaid`). Whoever goes
 * away stops it. Only where the last line says that it ended was everything looked at. The body is a head of the log that
 * was kept elsewhere, or empty.
 */
export const POST = routeFor("log.read", async (now, request) => {
  const body = await readBody(request, MOST_BYTES);
  if (body === null) return refused(413, [{ code: "head-too-long", message: "This is no head of a log." }]);
  const given = new TextDecoder().decode(body).trim();
  const noted = given === "" ? null : readHead(given);
  if (noted && !noted.ok) return refused(422, linesOf(noted.issues, headSentence));
  const place = standInLine(now.pen.by);
  if (place === null) return tooMuch(LOOK_WAITS);
  const parts = inTurn(place, noted?.value ?? null, request.signal);
  return download(parts, { type: "application/x-ndjson", name: "toeline-look.ndjson", ended: place.leave });
});

const refused = (status: number, issues: readonly { code: string; message: string }[]): Response =>
  Response.json({ issues }, { status });

const broken = (issues: readonly AsideIssue[]): string =>
  `${JSON.stringify({ says: "broken", message: issues.map(asideSentence).join(" ") })}\n`;

async function* inTurn(
  place: InLine,
  noted: LogHead | null,
  signal: AbortSignal,
): AsyncGenerator<string | Uint8Array, void, void> {
  let done: Done<null> | null = null;
  try {
    while (!place.isMine()) {
      yield `${JSON.stringify({ says: "waiting" })}\n`;
      await place.wait(SAY_MS);
    }
    const made = await unlessStopped(() => doAside("look", { noted }, signal));
    if (!made.ok) return yield broken(made.issues);
    done = made.value;
    for (const { parts } = made.value; ;) {
      const next = await unlessStopped(() => parts.next());
      if (!next.ok) return yield broken(next.issues);
      if (next.value.done) return;
      yield next.value.value;
    }
  } finally {
    await done?.parts.return?.();
  }
}
