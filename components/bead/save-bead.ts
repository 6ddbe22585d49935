import type { Saved, Stored } from "@/components/saving";
import type { BeadContent, PhotoFacts } from "@/lib/assess";
import { ok, refused, type Answer, type Line } from "@/lib/base";

/** The bead as the store holds it. */
export interface StoredBead extends Stored<BeadContent> {
  readonly photos: readonly PhotoFacts[];
}

/** Saves the whole bead if it is still at revision `basedOn`. Rejects where nobody answers. */
export async function saveBead(
  beadId: string,
  basedOn: number,
  content: BeadContent,
): Promise<Answer<Saved>> {
  const body = JSON.stringify({ basedOn, content });
  const answer = await fetch(`/api/beads/${beadId}`, {
    method: "PUT",
    headers: { "content-type": "application/json" },
    body,
    // Lets the save outlive a page that is being closed; browsers allow it for small bodies only.
    keepalive: body.length < 60_000,
  });
  return readAnswer<Saved>(answer, "This change could not be saved. It stays on this screen.");
}

/** Rejects where nobody answers. */
export async function readBead(beadId: string): Promise<Answer<StoredBead>> {
  return readAnswer<StoredBead>(
    await fetch(`/api/beads/${beadId}`),
    "The other version could not be read. Reload the page.",
  );
}

async function readAnswer<T>(answer: Response, otherwise: string): Promise<Answer<T>> {
  const json = (await answer.json()) as T & { issues?: readonly Line[] };
  if (answer.ok) return ok(json);
  return json.issues?.[0]?.message ? { ok: false, issues: json.issues } : refused("refused", otherwise);
}
