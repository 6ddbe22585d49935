import { answerOr, tooMuch } from "@/app/_door/dear-work";
import { download } from "@/app/_door/download";
import type { Here } from "@/app/_door/here";
import { EXPORTS_OPEN, takeExport } from "@/app/_door/open-exports";
import { doAside, type Done } from "@/lib/aside";
import { personIdOf, reach, type Actor, type Deed } from "@/lib/people";
import { readFilter, type BeadFilter, type Scope } from "@/lib/find";

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

export function notUnderstood(fields: readonly string[]): Response {
  const message = `The filter says nothing that could be read in: ${fields.join(", ")}. The values each takes stand in /api/openapi.json.`;
  return Response.json(
    { issues: [{ code: "filter-not-understood", path: fields, message }] },
    { status: 400 },
  );
}

type Table = "beadsCsv" | "marksCsv" | "beadsJson";

/** The route of a table of beads: what it is, its media type and the file's name. Made aside, a slice at a time. */
export const tableRoute =
  (table: Table, type: string, name: string) =>
  async (now: Here, request: Request): Promise<Response> => {
    const asked = askedBeads(now, request, "data.export");
    if (asked instanceof Response) return asked;
    return exported(
      now,
      () => doAside(table, beadsAsked(asked), request.signal),
      ({ parts }, ended) => download(parts, { type, name, ended }),
    );
  };

/** What is asked for, as it travels to where it is made. */
export const beadsAsked = ({ filter, scope, picked }: AskedBeads) => ({ filter, scope, picked });

/** An export in a place of its sender's: 429 in words where there is none. The place is given back when it ended. */
export async function exported<H>(
  now: Here,
  make: () => Promise<Done<H>>,
  answer: (made: Done<H>, ended: () => void) => Response,
): Promise<Response> {
  const ended = takeExport(now.pen.by);
  if (ended === null) return tooMuch(EXPORTS_OPEN);
  return answerOr(async () => {
    try {
      return answer(await make(), ended);
    } catch (error) {
      ended();
      throw error;
    }
  });
}
