import { retryAfterMs } from "@/components/saving";
import { deviceStore, type DeviceStore } from "./device-store";
import { photosToSend, type KeptBead } from "./kept";
import { leftBeads, type LeftBead } from "./left-beads";
import { windowsHere } from "./window-lock";

async function look(store: DeviceStore, by: string): Promise<readonly KeptBead[]> {
  const [beads, photos] = await Promise.all([store.beads(), store.photos()]);
  const own = beads.filter((bead) => bead.by === by && !bead.held.isSent).toSorted((a, b) => a.at - b.at);
  leftBeads.show(
    own.map(({ key, beadId, isNew, number, held, stuck }) => ({
      ...{ key, beadId, isNew, number, stuck, title: held.content.title },
      count: 1 + photosToSend(photos.filter((photo) => photo.beadId === beadId)).length,
    })),
  );
  return own;
}

/** What sends brings along what a bead's content is made of: it comes only where something is to be sent. */
async function sender(): Promise<(store: DeviceStore, key: string) => Promise<boolean>> {
  const [{ sendLeft }, { serverDoors }] = await Promise.all([import("./send-left"), import("./bead-doors")]);
  return (store, key) =>
    sendLeft(
      store,
      key,
      serverDoors(() => undefined),
    );
}

/** One round over what gone windows left; false where nobody answered. Rejects where the code that sends cannot come. */
async function round(by: string): Promise<boolean> {
  const store = await deviceStore();
  if (!store) return true;
  let answered = true;
  for (const bead of await look(store, by)) {
    if (bead.stuck !== null || windowsHere.isOpenHere(bead.beadId)) continue;
    const sendLeft = await sender();
    const send = () => sendLeft(store, bead.key);
    // The first that gets no answer is enough: the others would not get one either.
    answered = (await windowsHere.withLeftWork(bead.key, Date.now() - bead.at, send)) ?? true;
    if (!answered) break;
  }
  await look(store, by);
  return answered;
}

/** Throws away what a gone window left, because a person said so: with the photos that wait, if nothing else needs them. */
export async function throwAway({ key, beadId }: LeftBead, by: string): Promise<void> {
  const store = await deviceStore();
  if (!store) return;
  await windowsHere.withLeftWork(key, Infinity, async () => {
    await store.drop("beads", key);
    if ((await store.beadsOf(beadId)).length > 0) return;
    for (const photo of await store.photosOf(beadId))
      if (photo.by === by) await store.drop("photos", photo.id);
  });
  await look(store, by);
}

/** How often to look for work that a window left, where nothing waits for the network, ms. */
const CALM_MS = 15_000;

/** Sends what gone windows left, for as long as the page is open. Returns how to stop. */
export function sendLeftWork(by: string): () => void {
  let failures = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let running = false;
  let stopped = false;
  const go = async () => {
    if (running || stopped) return;
    clearTimeout(timer);
    running = true;
    const answered = await round(by).catch(() => false);
    running = false;
    failures = answered ? 0 : failures + 1;
    const wait = answered ? CALM_MS : retryAfterMs(failures - 1, Math.random());
    if (!stopped) timer = setTimeout(() => void go(), wait);
  };
  const now = () => void go();
  window.addEventListener("online", now);
  now();
  return () => {
    stopped = true;
    clearTimeout(timer);
    window.removeEventListener("online", now);
  };
}
