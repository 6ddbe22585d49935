import type { Saved, Stored } from "@/components/saving";
import type { BeadContent, PhotoFacts } from "@/lib/assess";
import { ok, refused, type Answer, type Line } from "@/lib/base";
import { isSignedOut, SIGNED_OUT, type Doors, type MadeBead } from "./send-kept";
import { uploadPhoto } from "./upload";

/** The bead as the store holds it. */
export interface StoredBead extends Stored<BeadContent> {
  readonly photos: readonly PhotoFacts[];
}

/** Rejects where nobody answers. */
export async function readBead(beadId: string): Promise<Answer<StoredBead>> {
  return readAnswer<StoredBead>(
    await fetch(`/api/beads/${beadId}`),
    "The other version could not be read. Reload the page.",
  );
}

/** The doors of the server. `onProgress`: which photo is on its way, and which part of it has gone out. */
export function serverDoors(onProgress: (photoId: string, share: number) => void): Doors {
  return {
    make: (beadId) => asking(() => makeBead(beadId)),
    sendPhoto: async (kept) => {
      const name = kept.file instanceof File ? kept.file : new File([kept.file], kept.name);
      const upload = () =>
        uploadPhoto(kept.beadId, kept.id, name, kept.role, (share) => onProgress(kept.id, share));
      const answer = await asking(upload);
      if (!answer.ok) return answer;
      const { photo, alsoOn, notices } = answer.value;
      const also = alsoOn.map((number) => `The same photo is also on bead ${number}.`);
      return ok({ photo, said: [...notices, ...also] });
    },
    save: (beadId, basedOn, content) => asking(() => saveBead(beadId, basedOn, content)),
  };
}

const asking = <T>(ask: () => Promise<Answer<T>>): Promise<Answer<T>> =>
  ask()
    .catch(() => refused("unreachable", unreachable))
    .then(toPerson);

/** The server's own sentence is for machines, which send a token. */
function toPerson<T>(answer: Answer<T>): Answer<T> {
  return !answer.ok && isSignedOut(answer) ? refused(SIGNED_OUT, signedOut) : answer;
}

const signedOut =
  "You are signed out. What you did is kept on this device and is sent once you sign in again.";

const unreachable =
  "Toeline did not answer. What you did is kept on this device and is sent as soon as it answers again.";

async function makeBead(id: string): Promise<Answer<MadeBead>> {
  const answer = await fetch("/api/beads", {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ id }),
  });
  const read = await readAnswer<{ number: number; content: { title: string } }>(
    answer,
    "This bead could not be made. It stays on this device.",
  );
  return read.ok ? ok({ number: read.value.number, title: read.value.content.title }) : read;
}

/** Saves the whole bead if it is still at revision `basedOn`. */
async function saveBead(beadId: string, basedOn: number, content: BeadContent): Promise<Answer<Saved>> {
  const body = JSON.stringify({ basedOn, content });
  const answer = await fetch(`/api/beads/${beadId}`, {
    method: "PUT",
    headers: { "content-type": "application/json" },
    body,
    // Lets the save outlive a page that is being closed; browsers allow it for small bodies only.
    keepalive: body.length < 60_000,
  });
  return readAnswer<Saved>(answer, "This change could not be saved. It stays on this device.");
}

async function readAnswer<T>(answer: Response, otherwise: string): Promise<Answer<T>> {
  const json = (await answer.json()) as T & { issues?: readonly Line[] };
  if (answer.ok) return ok(json);
  return json.issues?.[0]?.message ? { ok: false, issues: json.issues } : refused("refused", otherwise);
}
