import sharp from "sharp";
import { expect, test } from "vitest";
import { receivePhoto } from "@/lib/photo";
import { inTurn } from "@/lib/photo/in-turn";
import { fate, inChunks, send, withStore } from "./store";

/** A plain picture of this size: packed small, and as dear to decode as any. */
function png(width: number, height: number, interlaced: boolean, deep: boolean): Promise<Buffer> {
  const background = { r: 90, g: 80, b: 70 };
  const plain = sharp({ create: { width, height, channels: 3, background } });
  return (deep ? plain.toColourspace("rgb16") : plain).png({ progressive: interlaced }).toBuffer();
}

test("an interlaced picture is taken where it is small and refused where reading it costs seconds", async () => {
  expect(await fate(await png(2000, 1500, true, false))).toBe("stored");
  expect(await fate(await png(2000, 1500, true, true))).toBe("photo-too-costly");
  expect(await fate(await png(4000, 3000, true, false))).toBe("photo-too-costly");
  expect(await fate(await png(4000, 3000, false, false))).toBe("stored");
});

test("a sender with a heap waiting is told to wait, and others are not", () =>
  withStore(async (dataDir) => {
    let open = (): void => undefined;
    const gate = new Promise<void>((resolve) => (open = resolve));
    const heap = Array.from({ length: 61 }, () => inTurn("heap", () => gate));
    const picture = await png(80, 80, false, false);
    const from = async (sender: string) => {
      const answer = await receivePhoto(dataDir, inChunks(picture), { declaredBytes: null, sender });
      return answer.ok ? "stored" : answer.issues[0]?.code;
    };
    expect(await from("heap")).toBe("photo-too-many-waiting");
    expect(await from("other")).toBe("stored");
    open();
    await Promise.all(heap);
    expect(await from("heap")).toBe("stored");
  }));

test("the same bytes from many at once are stored once, whoever sends them", () =>
  withStore(async (dataDir) => {
    const picture = await png(120, 90, false, false);
    const all = await Promise.all(
      Array.from({ length: 8 }, (_, i) => send(dataDir, picture, { sender: `sender ${i}` })),
    );
    expect(all.map((one) => one.ok && !one.value.alreadyStored).filter(Boolean).length).toBe(1);
  }));
