import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { chmod, mkdir, open, readFile, stat, utimes, writeFile } from "node:fs/promises";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import {
  photoIssueStatus,
  photoSentence,
  readStoredPhoto,
  receivePhoto,
  sweepIncoming,
  verifyOriginal,
} from "@/lib/photo";
import { originalPath, viewPath } from "@/lib/photo/paths";
import { photoSentences } from "@/lib/photo/sentences";
import { image, noise, plate } from "./build-files";
import { allFiles, fate, inChunks, send, stored, withStore } from "./store";

let photo: Buffer;
let other: Buffer;
beforeAll(async () => {
  photo = await image(noise(700, 500)).jpeg().toBuffer();
  other = await image(plate()).png().toBuffer();
});
const sha = (bytes: Buffer) => createHash("sha256").update(bytes).digest("hex");

describe("a photo that is kept", () => {
  test("lies under its SHA-256, byte for byte, read-only, with its derived pictures", () =>
    withStore(async (dataDir) => {
      const value = await stored(dataDir, photo);
      expect(value).toEqual({
        sha256: sha(photo),
        format: "jpeg",
        bytes: photo.length,
        widthPx: 700,
        heightPx: 500,
        viewWidthPx: 700,
        viewHeightPx: 500,
        captured: null,
        notices: [],
        alreadyStored: false,
      });
      const original = path.join(dataDir, "photos", "originals", sha(photo));
      expect(originalPath(dataDir, sha(photo))).toBe(original);
      expect((await readFile(original)).equals(photo)).toBe(true);
      expect((await stat(original)).mode & 0o777).toBe(0o400);
      expect(await allFiles(path.join(dataDir, "photos"))).toEqual([
        `originals/${sha(photo)}`,
        ...["meta.json", "small.jpg", "thumb.webp", "view.jpg"].map((name) => `views/${sha(photo)}/${name}`),
      ]);
      const { alreadyStored: _, ...kept } = value;
      expect(await readStoredPhoto(dataDir, sha(photo))).toEqual(kept);
    }));

  test("comes from a web stream as well", () =>
    withStore(async (dataDir) => {
      const body = new Response(new Uint8Array(photo)).body!;
      const answer = await receivePhoto(dataDir, body, { declaredBytes: null });
      expect(answer.ok && answer.value.sha256).toBe(sha(photo));
    }));

  test("is recognised when its bytes come again, and nothing is written", () =>
    withStore(async (dataDir) => {
      const first = await stored(dataDir, photo);
      const view = viewPath(dataDir, first.sha256, "view")!;
      const before = await stat(view);
      const again = await stored(dataDir, photo);
      expect(again).toEqual({ ...first, alreadyStored: true });
      expect((await stat(view)).ino).toBe(before.ino);
      expect(await allFiles(dataDir)).toHaveLength(5);
    }));

  test("is stored once when it is sent twice at the same time", () =>
    withStore(async (dataDir) => {
      const both = await Promise.all([
        stored(dataDir, photo),
        stored(dataDir, photo),
        stored(dataDir, other),
      ]);
      // Which of the two arrives first is chance.
      expect(both.map(({ alreadyStored }) => Number(alreadyStored)).sort()).toEqual([0, 0, 1]);
      expect(both[2]?.alreadyStored).toBe(false);
      expect(await allFiles(dataDir)).toHaveLength(10);
    }));

  test("is made whole again when its derived pictures were lost or its original was cut", () =>
    withStore(async (dataDir) => {
      const { sha256 } = await stored(dataDir, photo);
      await writeFile(path.join(dataDir, "photos", "views", sha256, "meta.json"), "{ half");
      expect(await readStoredPhoto(dataDir, sha256)).toBeNull();
      expect((await stored(dataDir, photo)).alreadyStored).toBe(false);
      expect(await readStoredPhoto(dataDir, sha256)).not.toBeNull();

      const original = originalPath(dataDir, sha256)!;
      await chmod(original, 0o644);
      await writeFile(original, photo.subarray(0, 100));
      expect((await stored(dataDir, photo)).alreadyStored).toBe(false);
      expect((await readFile(original)).equals(photo)).toBe(true);
      expect(await allFiles(dataDir)).toHaveLength(5);
    }));
});

describe("an upload that fails leaves nothing", () => {
  test("cut off half way: fewer bytes than announced", async () => {
    expect(await fate(photo.subarray(0, 5000), { declaredBytes: photo.length })).toBe("photo-cut-off");
    expect(await fate(photo, { declaredBytes: photo.length - 1 })).toBe("photo-cut-off");
  });

  test("cut off half way: the stream breaks", () =>
    withStore(async (dataDir) => {
      async function* broken() {
        yield photo.subarray(0, 5000);
        throw new Error("ECONNRESET");
      }
      const answer = await receivePhoto(dataDir, broken(), { declaredBytes: null });
      expect(answer.ok ? null : answer.issues[0]?.code).toBe("photo-cut-off");
      const web = new ReadableStream<Uint8Array>({
        pull: (controller) => controller.error(new Error("aborted")),
      });
      const second = await receivePhoto(dataDir, web, { declaredBytes: null });
      expect(second.ok ? null : second.issues[0]?.code).toBe("photo-cut-off");
      expect(await allFiles(dataDir)).toEqual([]);
    }));

  test("too large: refused unread when announced, stopped at once when not", () =>
    withStore(async (dataDir) => {
      let handedOut = 0;
      let closed = false;
      async function* endless() {
        try {
          for (;;) {
            handedOut += 1;
            yield new Uint8Array(1000);
          }
        } finally {
          closed = true;
        }
      }
      const announced = await receivePhoto(dataDir, endless(), { declaredBytes: 5001, maxBytes: 5000 });
      expect(announced.ok ? null : announced.issues[0]?.code).toBe("photo-too-large");
      expect(handedOut).toBe(0);
      const silent = await receivePhoto(dataDir, endless(), { declaredBytes: null, maxBytes: 5000 });
      expect(silent.ok ? null : silent.issues[0]?.code).toBe("photo-too-large");
      expect([handedOut, closed]).toEqual([6, true]);
      expect(await allFiles(dataDir)).toEqual([]);
    }));

  test("exactly the limit is allowed", async () => {
    expect(await fate(photo, { maxBytes: photo.length })).toBe("stored");
    expect(await fate(photo, { maxBytes: photo.length - 1, declaredBytes: null })).toBe("photo-too-large");
  });

  test("40 MB is the limit when none is named", async () => {
    expect(await fate(photo, { declaredBytes: 40 * 1024 * 1024 + 1 })).toBe("photo-too-large");
  });

  test("empty", async () => {
    expect(await fate(Buffer.alloc(0))).toBe("photo-empty");
    expect(await fate(Buffer.alloc(0), { declaredBytes: null })).toBe("photo-empty");
  });

  /** /dev/full answers every write with the kernel's own ENOSPC; elsewhere the error is made by hand. */
  const openFull = () =>
    existsSync("/dev/full")
      ? open("/dev/full", "w")
      : Promise.reject(Object.assign(new Error("no space left on device"), { code: "ENOSPC" }));

  test("the disk is full while the bytes arrive", async () => {
    expect(await fate(photo, { disk: { openNew: openFull } })).toBe("photo-disk-full");
  });

  test.each(["view.jpg", "small.jpg", "thumb.webp", "meta.json"])(
    "the disk is full when %s is written",
    async (name) => {
      const openNew = (file: string) => (file.endsWith(name) ? openFull() : open(file, "wx"));
      expect(await fate(photo, { disk: { openNew } })).toBe("photo-disk-full");
    },
  );

  test.each([
    ["EDQUOT", "photo-disk-full"],
    ["EACCES", "photo-store-unusable"],
    ["EROFS", "photo-store-unusable"],
  ])("%s", async (code, expected) => {
    const openNew = () => Promise.reject(Object.assign(new Error(code), { code }));
    expect(await fate(photo, { disk: { openNew } })).toBe(expected);
  });

  test("the data folder is a file", () =>
    withStore(async (dataDir) => {
      const file = path.join(dataDir, "file");
      await writeFile(file, "");
      const answer = await send(file, photo);
      expect(answer.ok ? null : answer.issues[0]?.code).toBe("photo-store-unusable");
    }));

  test("a fault of our own is not dressed up as an answer", async () => {
    const openNew = () => Promise.reject(new TypeError("our mistake"));
    await expect(fate(photo, { disk: { openNew } })).rejects.toThrow("our mistake");
  });

  test("and the next photo is taken in as if nothing had been", () =>
    withStore(async (dataDir) => {
      const failing = { openNew: (f: string) => (f.endsWith("meta.json") ? openFull() : open(f, "wx")) };
      const [bad, good] = await Promise.all([send(dataDir, photo, { disk: failing }), send(dataDir, other)]);
      expect([bad.ok, good.ok]).toEqual([false, true]);
      expect(await readStoredPhoto(dataDir, sha(photo))).toBeNull();
      expect((await stored(dataDir, photo)).alreadyStored).toBe(false);
    }));
});

describe("names from a URL", () => {
  test.each([
    "",
    "..",
    "../../etc/passwd",
    "a".repeat(63),
    "A".repeat(64),
    `${"a".repeat(64)}\n`,
    "__proto__",
  ])("%j is no photo", async (name) => {
    expect(originalPath("/data", name)).toBeNull();
    expect(viewPath("/data", name, "view")).toBeNull();
    expect(await readStoredPhoto("/data", name)).toBeNull();
    const checked = await verifyOriginal("/data", name);
    expect(checked.ok ? null : checked.issues[0]?.code).toBe("photo-missing");
  });
  test("nor is a size that does not exist", () => {
    expect(viewPath("/data", "a".repeat(64), "toString" as "view")).toBeNull();
    expect(viewPath("/data", "a".repeat(64), "thumb")).toBe(
      `/data/photos/views/${"a".repeat(64)}/thumb.webp`,
    );
  });
});

describe("evidence", () => {
  test("is checked against its name", () =>
    withStore(async (dataDir) => {
      const { sha256 } = await stored(dataDir, photo);
      expect(await verifyOriginal(dataDir, sha256)).toEqual({ ok: true, value: { sha256 } });
      const original = originalPath(dataDir, sha256)!;
      const altered = Buffer.from(photo);
      altered[altered.length - 10]! ^= 1;
      await chmod(original, 0o644);
      await writeFile(original, altered);
      const answer = await verifyOriginal(dataDir, sha256);
      expect(answer.ok ? null : answer.issues[0]?.code).toBe("photo-altered");
      const gone = await verifyOriginal(dataDir, "0".repeat(64));
      expect(gone.ok ? null : gone.issues[0]?.code).toBe("photo-missing");
    }));
});

describe("leftovers of a crash", () => {
  test("are swept after a day, younger ones are left", () =>
    withStore(async (dataDir) => {
      expect(await sweepIncoming(dataDir)).toBe(0);
      const incoming = path.join(dataDir, "photos", "incoming");
      const hour = 3600;
      const now = Math.floor(Date.now() / 1000);
      for (const [name, ageH] of [
        ["old", 25],
        ["young", 23],
      ] as const) {
        await mkdir(path.join(incoming, name), { recursive: true });
        await writeFile(path.join(incoming, name, "original"), "x");
        await utimes(path.join(incoming, name), now, now - ageH * hour);
      }
      expect(await sweepIncoming(dataDir)).toBe(1);
      expect(await allFiles(incoming)).toEqual(["young/original"]);
      expect(await sweepIncoming(dataDir, Date.now() + 2 * hour * 1000)).toBe(1);
      expect(await allFiles(incoming)).toEqual([]);
    }));
});

describe("every code", () => {
  const data = {
    maxBytes: 40 * 2 ** 20,
    maxPixels: 64e6,
    widthPx: 40000,
    heightPx: 40000,
    minSidePx: 64,
    looksLike: "a web page",
  };
  test("has one sentence that says what to do, and a status", () => {
    for (const code of Object.keys(photoSentences) as (keyof typeof photoSentences)[]) {
      const sentence = photoSentence({ code, path: [], data });
      expect(sentence).not.toMatch(/undefined|NaN/);
      expect(sentence).toMatch(/Choose|again|Save|Export|Crop|Free some space|Put it back/);
      expect(photoIssueStatus(code)).toBeGreaterThanOrEqual(200);
    }
    expect(photoSentence({ code: "photo-too-large", path: [], data })).toContain("larger than 40 MB");
    expect(photoIssueStatus("photo-too-large")).toBe(413);
    expect(photoIssueStatus("photo-disk-full")).toBe(507);
  });
});

test("chunks of a test's own making carry the whole file", async () => {
  const parts: Uint8Array[] = [];
  for await (const part of inChunks(photo, 1000)) parts.push(part);
  expect(Buffer.concat(parts).equals(photo)).toBe(true);
});
