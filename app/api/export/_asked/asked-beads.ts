import type { Here } from "@/app/_door/here";
import { personIdOf, reach, type Actor, type Deed } from "@/lib/people";
import { beadSlices, readFilter, type BeadFilter, type Scope, type WholeBead } from "@/lib/find";

export interface AskedBeads {
  readonly filter: BeadFilter;
  readonly params: URLSearchParams;
  readonly scope: Scope;
  /** Only these of those found, where any is picked. */
  readonly picked: ReadonlySet<string>;
}

/** Whose beads a deed reaches: a token for exports alone need not be one for reading. */
export function reachedBeads(actor: Actor, deed: Deed): Scope {
  return reach(actor, deed) === "all" ? {} : { welderId: personIdOf(actor) ?? "nobody" };
}

/**
 * The beads an address names, as far as the deed reaches; of those found only the picked ones (`pick=ID`, once for
 * each) where any is picked. Or the answer that says what in it cannot be read. Nothing is read of them yet. */
export function askedBeads(now: Here, request: Request, deed: Deed): AskedBeads | Response {
  const params = new URL(request.url).searchParams;
  const { filter, unread } = readFilter(params);
  if (unread.length > 0) return notUnderstood(unread);
  const picked = new Set(params.getAll("pick"));
  return { filter, params, scope: reachedBeads(now.actor, deed), picked };
}

/** The beads asked for, whole, a slice at a time. */
export function slicesOf(now: Here, asked: AskedBeads): AsyncGenerator<readonly WholeBead[]> {
  return beadSlices(now.db, asked.filter, asked.scope, asked.picked);
}

export function notUnderstood(fields: readonly string[]): Response {
  const message = `The filter says nothing that could be read in: ${fields.join(", ")}. The values each takes stand in /api/openapi.json.`;
  return Response.json(
    { issues: [{ code: "filter-not-understood", path: fields, message }] },
    { status: 400 },
  );
}

const encoder = new TextEncoder();

/**
 * A file to keep, sent while it is made: what is asked for is made, no more, and whoever breaks off stops it. `bytes`: its
 * length, where that is known.
 */
export function download(
  parts: AsyncGenerator<string | Uint8Array>,
  type: string,
  name: string,
  bytes: number | null = null,
): Response {
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { value, done } = await parts.next();
      if (done) controller.close();
      else controller.enqueue(typeof value === "string" ? encoder.encode(value) : value);
    },
    async cancel() {
      await parts.return(undefined);
    },
  });
  return new Response(body, {
    headers: {
      "content-type": type,
      "content-disposition": `attachment; filename="${name}"`,
      ...(bytes === null ? {} : { "content-length": String(bytes) }),
      "cache-control": "private, no-store",
      "x-content-type-options": "nosniff",
    },
  });
}
