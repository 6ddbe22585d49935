import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { AwsClient } from "aws4fetch";
import sharp from "sharp";
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import {
  discardPhoto,
  photoStore,
  readStoredPhoto,
  receivePhoto,
  verifyOriginal,
  viewSeals,
} from "@/lib/photo";
import type { PhotoFile } from "@/lib/photo";
import { s3Keys, startS3Stub, tellS3, type S3Stub } from "../../setup/s3-stub";
import { allFiles, send } from "./store";

/** A real bead, small: places are compared here, not pictures. */
const picture = await sharp(
  fileURLToPath(new URL("../../../demo-images/set/lap-cold-lap.jpg", import.meta.url)),
)
  .resize(600)
  .jpeg()
  .toBuffer();
const sha256 = createHash("sha256").update(picture).digest("hex");
const every: readonly PhotoFile[] = ["original", "view", "small", "thumb", "meta"];

/** A real S3 server that somebody started (tests/setup/ceph-gateway.sh); empty: none, and the stand-in answers. */
const real = process.env["TOELINE_TEST_S3"] ?? "";
let stub: S3Stub;
let forget: () => void;
let folder = "";
const places: Record<string, string> = {};

beforeAll(async () => {
  stub = await startS3Stub();
  forget = tellS3(real || stub.endpoint);
  if (real)
    await new AwsClient({ ...s3Keys, service: "s3", region: "us-east-1" }).fetch(`${real}/toeline`, {
      method: "PUT",
    });
  folder = mkdtempSync(path.join(tmpdir(), "toeline-photos-"));
  // Where half uploads lie: this file's own, since others on this machine have theirs in the usual one.
  vi.stubEnv("TMPDIR", folder);
  Object.assign(places, { folder, bucket: `s3://toeline/${Date.now()}` });
});
afterAll(async () => {
  forget();
  await stub.close();
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});
afterEach(() =>
  discardPhoto(places["folder"]!, sha256, () => Promise.resolve(false)).then(() => stub.objects.clear()),
);

const bytesOf = async (body: AsyncIterable<Uint8Array>): Promise<Buffer> => {
  const parts: Uint8Array[] = [];
  for await (const part of body) parts.push(part);
  return Buffer.concat(parts);
};

describe.each(["folder", "bucket"])("a store that is a %s", (kind) => {
  const place = () => places[kind]!;

  it("keeps a photo whole, byte for byte, and knows it again", async () => {
    const first = await send(place(), picture);
    expect(first).toMatchObject({ ok: true, value: { sha256, alreadyStored: false, bytes: picture.length } });
    expect(await send(place(), picture)).toMatchObject({ ok: true, value: { alreadyStored: true } });
    const store = photoStore(place());
    expect(await store.read(sha256, "original")).toEqual(picture);
    for (const file of every) expect(await store.size(sha256, file), file).toBeGreaterThan(100);
    expect(await verifyOriginal(place(), sha256)).toEqual({ ok: true, value: { sha256 } });
    expect(await viewSeals(place(), sha256)).toHaveLength(3);
  });

  it("gives any part of a file, and says how long the whole is", async () => {
    await send(place(), picture);
    const store = photoStore(place());
    for (const [from, to] of [
      [0, 0],
      [5, 99],
      [picture.length - 7, null],
      [100, picture.length - 1],
    ] as const) {
      const part = await store.open(sha256, "original", { from, to });
      expect(part?.size).toBe(picture.length);
      expect(await bytesOf(part!.body)).toEqual(picture.subarray(from, (to ?? picture.length - 1) + 1));
    }
  });

  it("has nothing under any other name, and nothing after it was discarded", async () => {
    await send(place(), picture);
    const store = photoStore(place());
    for (const name of ["a".repeat(64), "../../toeline.db", "", `${sha256}/..`, sha256.toUpperCase()])
      for (const file of every) {
        expect(await store.size(name, file)).toBeNull();
        expect(await store.read(name, file)).toBeNull();
        expect(await store.open(name, file)).toBeNull();
      }
    expect(await discardPhoto(place(), sha256, () => Promise.resolve(true))).toBe(false);
    expect(await readStoredPhoto(place(), sha256)).not.toBeNull();
    expect(await discardPhoto(place(), sha256, () => Promise.resolve(false))).toBe(true);
    for (const file of every) expect(await store.size(sha256, file)).toBeNull();
    expect(await verifyOriginal(place(), sha256)).toMatchObject({ issues: [{ code: "photo-missing" }] });
  });

  it("keeps one of many that come at once", async () => {
    const answers = await Promise.all(
      Array.from({ length: 4 }, (_, i) =>
        receivePhoto(place(), chunks(picture), { declaredBytes: picture.length, sender: `s${i}` }),
      ),
    );
    expect(answers.filter((one) => one.ok && !one.value.alreadyStored)).toHaveLength(1);
    expect(answers.every(({ ok }) => ok)).toBe(true);
  });
});

async function* chunks(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

// What a real server does wrong nobody can ask for.
if (real === "")
  describe("a bucket", () => {
    const place = () => places["bucket"]!;
    const store = () => photoStore(place());

    it("is never listed, and never sent an original twice", async () => {
      stub.asked.length = 0;
      await send(place(), picture);
      await send(place(), picture);
      await store().open(sha256, "view");
      expect(
        stub.asked.filter((line) => line.startsWith("PUT") && line.includes("/originals/")),
      ).toHaveLength(1);
      for (const line of stub.asked)
        expect(line).toMatch(/^(GET|HEAD|PUT|DELETE) \/toeline\/\d+\/(originals|views)\/[0-9a-f]{64}/);
      expect(await allFiles(path.join(tmpdir(), "toeline-incoming"))).toEqual([]);
    });

    it("refuses bytes that are not what was signed, and another original under a taken name", async () => {
      await send(place(), picture);
      const [name, bytes] = [...stub.objects].find(([key]) => key.includes("/originals/"))!;
      stub.objects.set(name, bytes.subarray(0, 100));
      // Its meta tells of another length, so the photo counts as not there; and what lies there is not written over.
      expect(await readStoredPhoto(place(), sha256)).toBeNull();
      expect(await send(place(), picture)).toMatchObject({ issues: [{ code: "photo-store-unusable" }] });
      expect(stub.objects.get(name)).toHaveLength(100);
      const asBefore = tellS3(stub.endpoint, "another");
      await expect(store().size(sha256, "view")).rejects.toThrow("403");
      asBefore();
    });

    it("that has one byte changed is found by our own sum", async () => {
      await send(place(), picture);
      const [name, bytes] = [...stub.objects].find(([key]) => key.includes("/originals/"))!;
      const changed = Buffer.from(bytes);
      changed[1000]! ^= 1;
      stub.objects.set(name, changed);
      expect(await verifyOriginal(place(), sha256)).toMatchObject({ issues: [{ code: "photo-altered" }] });
    });

    it("that does not answer, or has no room, is said so, and what was cut off is written again", async () => {
      // Original, then a view that fails for good: 403 is not tried again.
      for (const [at, code] of [
        [1, 403],
        [2, 403],
        [4, 403],
      ] as const) {
        stub.objects.clear();
        // The look for its meta, then each put.
        stub.failNext.push(404, ...Array.from({ length: at - 1 }, () => 200), code);
        expect(await send(place(), picture)).toMatchObject({ issues: [{ code: "photo-store-unusable" }] });
        stub.failNext.length = 0;
        expect(await readStoredPhoto(place(), sha256)).toBeNull();
      }
      expect(await send(place(), picture)).toMatchObject({ ok: true });
      expect(await readStoredPhoto(place(), sha256)).not.toBeNull();
    });

    it("that breaks once is asked again", async () => {
      stub.failNext.push(503);
      expect(await send(place(), picture)).toMatchObject({ ok: true });
      expect(await verifyOriginal(place(), sha256)).toMatchObject({ ok: true });
    });
  });
