import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { BeadKeeper } from "@/components/offline/bead-keeper";
import { DeviceStore } from "@/components/offline/device-store";
import { sendLeft } from "@/components/offline/send-left";
import { emptyBeadContent, newPhotoContent } from "@/lib/assess";
import { ok, refused } from "@/lib/base";

const windows = {
  windowId: (fresh: () => string) => fresh(),
  holdWork: () => () => undefined,
  withLeftWork: async <T>(_: string, __: number, work: () => Promise<T>) => work(),
};
const page = { revision: 1, content: emptyBeadContent, photos: [] };
const opened = async (store: DeviceStore, by = "owner") => {
  const keeper = new BeadKeeper(
    { beadId: "b", by, isNew: false, number: 7 },
    () => false,
    async () => store,
    windows,
  );
  return { keeper, found: await keeper.open(page) };
};
const heldOf = (isSent: boolean, photoId?: string) => ({
  basedOn: 1,
  content: { ...emptyBeadContent, photos: photoId ? [newPhotoContent(photoId, "back")] : [] },
  tried: null,
  isSent,
});
const silent = { made: () => undefined, taken: () => undefined, refused: () => undefined };

describe("what this device keeps of a bead", () => {
  it("is gone as soon as the store has all of it", async () => {
    const store = await DeviceStore.open("gone");
    const { keeper } = await opened(store);
    keeper.keep(heldOf(false), []);
    await keeper.settled();
    expect(await store.beads()).toHaveLength(1);
    keeper.keep(heldOf(true), []);
    await keeper.settled();
    expect(await store.beads()).toEqual([]);
  });

  it("stays with what is drawn on a photo that was refused: the store does not have that", async () => {
    const store = await DeviceStore.open("refused");
    const { keeper } = await opened(store);
    const photo = await keeper.addPhoto(new File(["x"], "torn.jpg"), "back", { widthPx: 4, heightPx: 3 });
    const facts = [{ id: photo.id, sha256: "", widthPx: 4, heightPx: 3 }];
    keeper.keep(heldOf(false, photo.id), facts);
    const doors = {
      make: async () => refused("never", ""),
      sendPhoto: async () => refused("photo-damaged", "Torn."),
      save: async () => ok({ revision: 2 }),
    };
    expect(await keeper.send(1, heldOf(false, photo.id).content, doors, silent)).toEqual(ok({ revision: 2 }));
    keeper.keep(heldOf(true, photo.id), facts);
    await keeper.settled();
    const { keeper: next, found } = await opened(store);
    expect(found?.content.photos.map(({ id }) => id)).toEqual([photo.id]);
    expect(next.state().photos.map(({ refused }) => refused)).toEqual(["Torn."]);
  });

  it("is shown to nobody else who uses the device, and stays for whose it is", async () => {
    const store = await DeviceStore.open("whose");
    const { keeper } = await opened(store, "person:a");
    keeper.keep(heldOf(false), []);
    await keeper.addPhoto(new File(["x"], "bead.jpg"), "face", null);
    await keeper.settled();
    const other = await opened(store, "person:b");
    expect([other.found, other.keeper.state().photos]).toEqual([null, []]);
    const same = await opened(store, "person:a");
    expect(same.found).not.toBeNull();
    expect(same.keeper.state().photos).toHaveLength(1);
  });

  it("is taken up whole while another window sends it: nothing comes back to life beside it", async () => {
    const store = await DeviceStore.open("raced");
    const { keeper } = await opened(store);
    keeper.keep(heldOf(false), []);
    await keeper.settled();
    const [left] = await store.beads();
    const doors = {
      make: async () => refused("never", ""),
      sendPhoto: async () => refused("never", ""),
      save: async () => {
        await new Promise((done) => setTimeout(done, 20));
        return refused("unreachable", "No answer.");
      },
    };
    // The sender gets its turn just after the opening window found the work left alone.
    let sending: Promise<unknown> | null = null;
    const racing = {
      ...windows,
      withLeftWork: async <T>(_: string, __: number, work: () => Promise<T>) => {
        await sending;
        const done = await work();
        sending ??= sendLeft(store, left!.key, doors, () => false);
        return done;
      },
    };
    const next = new BeadKeeper(
      { beadId: "b", by: "owner", isNew: false, number: 7 },
      () => false,
      async () => store,
      racing,
    );
    expect(await next.open(page)).not.toBeNull();
    await sending;
    const beads = await store.beads();
    expect(beads).toHaveLength(1);
    expect(beads[0]?.key).not.toBe(left!.key);
    // What the sender learned stays known: this went out, and may have arrived.
    expect(beads[0]?.held.tried).not.toBeNull();
  });

  it("says so where the browser keeps nothing", async () => {
    const keeper = new BeadKeeper(
      { beadId: "b", by: "owner", isNew: true, number: null },
      () => false,
      async () => null,
      windows,
    );
    expect(await keeper.open(page)).toBeNull();
    expect(keeper.state().keeps).toBe(false);
    expect((await keeper.addPhoto(new File(["x"], "bead.jpg"), "face", null)).id).toMatch(/^[a-z0-9]{12}$/);
  });
});
