import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { DeviceStore } from "@/components/offline/device-store";
import type { KeptBead } from "@/components/offline/kept";
import type { Doors } from "@/components/offline/send-kept";
import { sendLeft } from "@/components/offline/send-left";
import { emptyBeadContent } from "@/lib/assess";
import { ok, refused, type Answer } from "@/lib/base";

const left: KeptBead = {
  ...{ key: "b/w1", beadId: "b", by: "person:a", isNew: false, number: 7, madeAs: null },
  held: { basedOn: 3, content: emptyBeadContent, tried: null, isSent: false },
  ...{ photos: [], at: 0, stuck: null },
};
const saying = (answer: Answer<{ revision: number }>): Doors => ({
  make: async () => refused("never", ""),
  sendPhoto: async () => refused("never", ""),
  save: async () => answer,
});
async function after(name: string, answer: Answer<{ revision: number }>) {
  const store = await DeviceStore.open(name);
  await store.putBead(left);
  const isDone = await sendLeft(store, left.key, saying(answer), () => false);
  return { isDone, beads: await store.beads() };
}

describe("what a gone window left", () => {
  it("is gone from the device once it was taken", async () => {
    expect(await after("taken", ok({ revision: 4 }))).toEqual({ isDone: true, beads: [] });
  });

  it("waits where nobody answers, and where nobody is signed in: both pass without a person touching the bead", async () => {
    for (const code of ["unreachable", "sign-in-first"]) {
      const { isDone, beads } = await after(code, refused(code, "Later."));
      expect([isDone, beads.map(({ stuck, held }) => [stuck, held.isSent])], code).toEqual([
        false,
        [[null, false]],
      ]);
    }
  });

  it("is stuck with the reason where its bead is gone, and holds up nothing else", async () => {
    const { isDone, beads } = await after("gone", refused("bead-gone", "This bead was deleted."));
    expect([isDone, beads.map(({ stuck }) => stuck)]).toEqual([true, ["This bead was deleted."]]);
  });
});
