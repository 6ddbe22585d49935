import { isAway, refusalOf, Saver, type Saved } from "@/components/saving";
import type { BeadContent } from "@/lib/assess";
import { inWords, type Answer } from "@/lib/base";
import type { DeviceStore } from "./device-store";
import { mayBringOldPages } from "./old-pages";
import { photosToSend, type KeptBead } from "./kept";
import { isSignedOut, sendKept, type Doors } from "./send-kept";

/**
 * Sends what a gone window left of one bead, as that window would have: in order, nothing twice, and what needs a person
 * stays with the reason. Resolves to false where it has to be tried again later: nobody answered, or knew who asks.
 */
export async function sendLeft(
  store: DeviceStore,
  key: string,
  doors: Doors,
  keepsCopies: () => boolean = mayBringOldPages,
): Promise<boolean> {
  const left = await store.bead(key);
  // Another window sent it or took it up before this one's turn came.
  if (!left) return true;
  let bead = left;
  const put = async (part: Partial<KeptBead>) => {
    bead = { ...bead, ...part };
    await store.changeBead(bead);
  };
  const saver = new Saver<BeadContent, Saved>(
    left.held.basedOn,
    left.held.content,
    (basedOn, content) => sendOne(store, { ...bead, held: { ...bead.held, basedOn, content } }, doors, put),
    "Toeline did not answer.",
  );
  saver.resume(left.held);
  saver.change({ ...left.held.content });
  const revision = await saver.flush();
  const refusal = refusalOf(saver.state());
  if (refusal && (isAway(refusal) || isSignedOut(refusal))) {
    await put({ held: { ...saver.held(), isSent: false } });
    return false;
  }
  const refused =
    (await store.photosOf(left.beadId)).find((photo) => photo.refused !== null)?.refused ?? null;
  const stuck = refusal ? inWords(refusal) : refused;
  // What went out counts, whatever else needs a person: sent once more from before it, it would collide with itself.
  if (revision === null || stuck !== null) await put({ stuck, held: { ...saver.held(), isSent: false } });
  else if (keepsCopies()) await put({ held: saver.held() });
  else await store.drop("beads", key);
  return true;
}

async function sendOne(
  store: DeviceStore,
  { beadId, by, isNew, madeAs, held }: KeptBead,
  doors: Doors,
  put: (part: Partial<KeptBead>) => Promise<void>,
): Promise<Answer<Saved>> {
  let waiting = photosToSend((await store.photosOf(beadId)).filter((photo) => photo.by === by));
  const leave = (id: string) => {
    waiting = waiting.filter((photo) => photo.id !== id);
  };
  const { basedOn, content } = held;
  return sendKept({ beadId, isNew, madeAs, basedOn, content, photos: () => waiting }, doors, {
    made: ({ number, title }) => put({ isNew: false, number, madeAs: title }),
    taken: async ({ id }) => {
      leave(id);
      await store.drop("photos", id);
    },
    refused: async (photo, refused) => {
      leave(photo.id);
      await store.putPhoto({ ...photo, refused });
    },
  });
}
