import type { Here } from "@/app/_door/here";
import type { AssessContext } from "@/lib/assess";
import { personIdOf, reach, type Actor, type Deed } from "@/lib/people";
import { findBeads, readFilter, type BeadFilter, type FoundBeads } from "@/lib/find";
import { assessContext } from "@/lib/shop";

export interface AskedBeads extends FoundBeads {
  readonly filter: BeadFilter;
  readonly params: URLSearchParams;
  readonly context: AssessContext;
}

/** Whose beads a deed reaches: a token for exports alone need not be one for reading. */
export function reachedBeads(actor: Actor, deed: Deed): { readonly welderId?: string } {
  return reach(actor, deed) === "all" ? {} : { welderId: personIdOf(actor) ?? "nobody" };
}

/**
 * The beads an address names, as far as the deed reaches; of those found only the picked ones (`pick=ID`, once for
 * each) where any is picked. Or the answer that says what in it cannot be read. */
export async function askedBeads(now: Here, request: Request, deed: Deed): Promise<AskedBeads | Response> {
  const params = new URL(request.url).searchParams;
  const { filter, unread } = readFilter(params);
  if (unread.length > 0) return notUnderstood(unread);
  const context = await assessContext(now.db);
  const beads = await findBeads(now.db, filter, reachedBeads(now.actor, deed), context);
  const picked = new Set(params.getAll("pick"));
  const found = picked.size === 0 ? beads.found : beads.found.filter(({ beadId }) => picked.has(beadId));
  return { filter, params, all: beads.all, found, context };
}

export function notUnderstood(fields: readonly string[]): Response {
  const message = `The filter says nothing that could be read in: ${fields.join(", ")}. The values each takes stand in /api/openapi.json.`;
  return Response.json(
    { issues: [{ code: "filter-not-understood", path: fields, message }] },
    { status: 400 },
  );
}

/** A file to keep. */
export function download(body: string | Uint8Array, type: string, name: string): Response {
  return new Response(typeof body === "string" ? body : Buffer.from(body), {
    headers: {
      "content-type": type,
      "content-disposition": `attachment; filename="${name}"`,
      "cache-control": "private, no-store",
      "x-content-type-options": "nosniff",
    },
  });
}
