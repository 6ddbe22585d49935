import { crc32 } from "node:zlib";
import fc from "fast-check";
import { strFromU8, strToU8, unzipSync, zipSync, type Zippable } from "fflate";
import { afterEach, describe, expect, it, vi } from "vitest";
import { archiveManifest, archivePhotoName, storedZip, type ArchiveManifest } from "@/lib/exchange";
import { packArchive } from "@/lib/exchange/pack-archive";
import { MANIFEST_DIGEST_NAME, MANIFEST_NAME } from "@/lib/exchange/pack-archive";
import { unpackArchive, usualArchiveLimits } from "@/lib/exchange/unpack-archive";
import { arbWholeBead, sampleBead, sha256, type WholeBead } from "./bead";
import { inDepth } from "../../setup/in-depth";

const TABLES = sha256(strToU8("tables"));

function contentOf(whole: readonly WholeBead[]): {
  readonly manifest: ArchiveManifest;
  readonly files: ReadonlyMap<string, Uint8Array>;
} {
  const manifest = archiveManifest(
    whole.map(({ bead }) => bead),
    TABLES,
  );
  const files = whole.flatMap(({ bead, photos }) =>
    bead.photos.map((photo, i) => [archivePhotoName(photo), photos[i] ?? new Uint8Array()] as const),
  );
  return { manifest, files: new Map(files) };
}
const pack = (whole: readonly WholeBead[]): Uint8Array => {
  const { manifest, files } = contentOf(whole);
  return packArchive(manifest, files, sha256);
};
const sample = () => pack([sampleBead()]);
const arbBeads = fc.uniqueArray(arbWholeBead, { selector: ({ bead }) => bead.id, maxLength: 3 });

afterEach(() => void vi.unstubAllEnvs());

describe("a stored ZIP written part by part", () => {
  it("is byte for byte what the library packs in memory, at the length it says", () => {
    const arbFiles = fc.uniqueArray(
      fc.tuple(fc.stringMatching(/^[a-z0-9/.]{1,12}$/), fc.uint8Array({ maxLength: 300 })),
      { selector: ([name]) => name, maxLength: 6 },
    );
    fc.assert(
      fc.property(arbFiles, (files) => {
        // A key that is a whole number would be sorted first by the language, not by name.
        fc.pre(files.every(([name]) => !/^\d+$/.test(name) && !name.endsWith("/")));
        const entries = files.map(([name, data]) => ({ name, data, bytes: data.length, crc32: crc32(data) }));
        const { bytes, parts } = storedZip(entries);
        const written = Buffer.concat(parts.map((part) => ("bytes" in part ? part.bytes : part.entry.data)));
        const sorted = files.toSorted(([a], [b]) => (a < b ? -1 : 1));
        const packed = zipSync(Object.fromEntries(sorted), { level: 0, mtime: "1980-01-01T12:00:00" });
        expect(Buffer.compare(written, Buffer.from(packed))).toBe(0);
        expect(bytes).toBe(packed.length);
      }),
      { numRuns: inDepth(100, 1000), seed: 4 },
    );
  });
});

describe("archive", () => {
  it("out, in, out again: identical content, identical bytes", () => {
    fc.assert(
      fc.property(arbBeads, (whole) => {
        const bytes = pack(whole);
        const back = unpackArchive(bytes, sha256);
        expect(back).toEqual({ ok: true, value: contentOf(whole) });
        if (back.ok) expect(packArchive(back.value.manifest, back.value.files, sha256)).toEqual(bytes);
      }),
      { numRuns: inDepth(30, 300), seed: 5 },
    );
  });

  it("has the same bytes whatever the order of files, the hour and the time zone", () => {
    const { manifest, files } = contentOf([sampleBead()]);
    const turned = new Map([...files].reverse());
    const bytes = packArchive(manifest, files, sha256);
    expect(packArchive(manifest, turned, sha256)).toEqual(bytes);
    for (const zone of ["Pacific/Kiritimati", "America/Los_Angeles", "UTC"]) {
      vi.stubEnv("TZ", zone);
      expect(packArchive(manifest, files, sha256)).toEqual(bytes);
    }
  });

  it("is an ordinary ZIP to another reader, with a digest that sha256sum can check", () => {
    const read = unzipSync(sample());
    const { files } = contentOf([sampleBead()]);
    expect(Object.keys(read)).toEqual([MANIFEST_NAME, MANIFEST_DIGEST_NAME, ...[...files.keys()].sort()]);
    const manifest = read[MANIFEST_NAME] ?? new Uint8Array();
    expect(strFromU8(read[MANIFEST_DIGEST_NAME] ?? new Uint8Array())).toBe(
      `${sha256(manifest)}  ${MANIFEST_NAME}\n`,
    );
  });

  it("may have been unpacked and packed again by another program, compressed and with folders", () => {
    const again = zipSync({ ...unzipSync(sample()), "photos/": new Uint8Array() }, { level: 9 });
    expect(unpackArchive(again, sha256)).toEqual({ ok: true, value: contentOf([sampleBead()]) });
  });

  it("is not made from photos that are missing, altered or too many", () => {
    const { manifest, files } = contentOf([sampleBead()]);
    const [name = ""] = files.keys();
    const altered = new Map(files).set(name, new Uint8Array([9, 9, 9]));
    expect(() => packArchive(manifest, new Map(), sha256)).toThrow("no others");
    expect(() => packArchive(manifest, altered, sha256)).toThrow("differs");
    expect(() => packArchive(manifest, new Map(files).set("x", new Uint8Array()), sha256)).toThrow(
      "no others",
    );
  });
});

/** The sample with its files changed, and a digest that fits the changed manifest. */
function repacked(change: (files: Record<string, Uint8Array>) => Zippable, level: 0 | 9 = 0): Uint8Array {
  return zipSync(change(unzipSync(sample())), { level });
}
function withManifest(change: (manifest: Record<string, unknown>) => unknown): Uint8Array {
  return repacked((files) => {
    const manifest = JSON.parse(strFromU8(files[MANIFEST_NAME] ?? new Uint8Array())) as Record<
      string,
      unknown
    >;
    const text = strToU8(JSON.stringify(change(manifest)));
    return {
      ...files,
      [MANIFEST_NAME]: text,
      [MANIFEST_DIGEST_NAME]: strToU8(`${sha256(text)}  ${MANIFEST_NAME}\n`),
    };
  });
}
const issuesOf = (bytes: Uint8Array, limits = usualArchiveLimits) => {
  const result = unpackArchive(bytes, sha256, limits);
  return result.ok ? [] : result.issues.map(({ code, data }) => ({ code, ...data }));
};
/** First place of a text in bytes, from `from` on. */
const find = (bytes: Uint8Array, text: string, from = 0) =>
  Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).indexOf(text, from, "latin1");

/** Where the name stands in the file's own header: the manifest's text holds names too. */
function localName(bytes: Uint8Array, name: string): number {
  for (let at = find(bytes, name); at >= 0; at = find(bytes, name, at + 1))
    if (find(bytes, "PK\u0003\u0004", at - 30) === at - 30) return at;
  throw new Error(`no local header of ${name}`);
}

describe("refusals", () => {
  const photoNames = () => Object.keys(unzipSync(sample())).filter((name) => name.startsWith("photos/"));

  it("not a ZIP, or its end missing", () => {
    expect(issuesOf(new Uint8Array())).toEqual([{ code: "archive-not-zip" }]);
    expect(issuesOf(strToU8("not a zip, but long enough to hold an end record"))).toEqual([
      { code: "archive-not-zip" },
    ]);
    expect(issuesOf(sample().subarray(0, -1))).toEqual([{ code: "archive-not-zip" }]);
    expect(issuesOf(sample().subarray(20))).not.toEqual([]);
  });

  it("a missing file: a photo, the manifest, its digest", () => {
    const [name = ""] = photoNames();
    for (const missing of [name, MANIFEST_NAME, MANIFEST_DIGEST_NAME]) {
      const bytes = repacked((files) =>
        Object.fromEntries(Object.entries(files).filter(([key]) => key !== missing)),
      );
      expect(issuesOf(bytes)).toEqual([{ code: "archive-file-missing", name: missing }]);
    }
  });

  it("a photo that is not what the manifest says", () => {
    const [name = ""] = photoNames();
    const bytes = repacked((files) => ({ ...files, [name]: strToU8("another picture") }));
    expect(issuesOf(bytes)).toEqual([{ code: "archive-checksum", name }]);
  });

  it("a manifest that is not what its digest says", () => {
    const bytes = repacked((files) => ({ ...files, [MANIFEST_NAME]: strToU8("{}") }));
    expect(issuesOf(bytes)).toEqual([{ code: "archive-checksum", name: MANIFEST_NAME }]);
  });

  it("a later version, before anything else of it is read", () => {
    const bytes = withManifest((manifest) => ({ ...manifest, schemaVersion: 10, parts: [] }));
    expect(issuesOf(bytes)).toEqual([{ code: "version-newer", found: 10, known: 9 }]);
  });

  it("a photo list that differs from the beads, a bead twice", () => {
    expect(issuesOf(withManifest((manifest) => ({ ...manifest, photos: [] })))).toMatchObject([
      { code: "malformed" },
    ]);
    const twice = withManifest((manifest) => ({
      ...manifest,
      beads: [sampleBead().bead, sampleBead().bead],
    }));
    expect(issuesOf(twice)).toMatchObject([{ code: "id-twice" }]);
  });

  it("a file nobody listed", () => {
    expect(issuesOf(repacked((files) => ({ ...files, "photos/extra.jpeg": new Uint8Array() })))).toEqual([
      { code: "archive-file-unlisted", name: "photos/extra.jpeg" },
    ]);
  });

  it.each([
    "../evil",
    "photos/../../evil",
    "/etc/evil",
    "C:evil",
    "photos\\evil",
    "photos/./evil",
    "evil\n",
    "évil",
    "../evil/",
  ])("the name %j", (name) => {
    const [found] = issuesOf(repacked((files) => ({ ...files, [name]: new Uint8Array() })));
    expect(found?.code).toBe("archive-name-unsafe");
  });

  it("a name that stands twice", () => {
    const [name = ""] = photoNames();
    const stand = name.replace(/^photos/, "photoz");
    const bytes = repacked((files) => ({ ...files, [stand]: strToU8("second") })).slice();
    for (let at = find(bytes, stand); at >= 0; at = find(bytes, stand)) bytes.set(strToU8(name), at);
    expect(issuesOf(bytes)).toEqual([{ code: "archive-name-twice", name }]);
  });

  it("a local header that names another file than the directory does", () => {
    const [name = ""] = photoNames();
    const bytes = sample().slice();
    bytes.set(strToU8(name.replace(/^photos/, "photoz")), localName(bytes, name));
    expect(issuesOf(bytes)).toEqual([{ code: "archive-unreadable", name }]);
  });

  it("an encrypted file, an unknown method, a damaged stream", () => {
    const directory = (bytes: Uint8Array) => find(bytes, "PK\u0001\u0002");
    const encrypted = sample().slice();
    encrypted[directory(encrypted) + 8] = 1;
    const method = sample().slice();
    method[directory(method) + 10] = 12;
    const damaged = repacked((files) => files, 9).slice();
    damaged.fill(0xff, 30 + MANIFEST_NAME.length, 90);
    for (const bytes of [encrypted, method, damaged])
      expect(issuesOf(bytes)).toEqual([{ code: "archive-unreadable", name: MANIFEST_NAME }]);
  });
});

describe("bombs", () => {
  const zeros = new Uint8Array(40 * 2 ** 20);
  const bomb = () => repacked((files) => ({ ...files, "photos/zeros.png": zeros }), 9);
  const small = { ...usualArchiveLimits, mostFileBytes: 2 ** 20 };

  it("a declared size beyond the limit is refused unpacked", () => {
    const packed = bomb();
    expect(packed.length).toBeLessThan(100_000);
    expect(issuesOf(packed, small)).toEqual([
      { code: "archive-too-large", name: "photos/zeros.png", bytes: zeros.length, most: 2 ** 20 },
    ]);
    expect(issuesOf(packed, { ...usualArchiveLimits, mostBytes: 2 ** 20 })).toMatchObject([
      { code: "archive-too-large", name: "archive" },
    ]);
    expect(issuesOf(sample(), { ...usualArchiveLimits, mostFiles: 2 })).toMatchObject([
      { code: "archive-too-large", name: "files" },
    ]);
  });

  it("a file that grows beyond what it declares is stopped on the way", () => {
    // The manifest itself is made to say 100 bytes and to unpack to 40 MB.
    const bytes = repacked((files) => ({ ...files, [MANIFEST_NAME]: zeros }), 9).slice();
    const view = new DataView(bytes.buffer);
    view.setUint32(find(bytes, "PK\u0001\u0002") + 24, 100, true);
    const [found] = issuesOf(bytes, small);
    expect(found).toMatchObject({ code: "archive-too-large", name: MANIFEST_NAME, most: 100 });
    // Stopped after the first piece, not at the end.
    expect(Number((found as { bytes?: number }).bytes)).toBeLessThan(8 * 2 ** 20);
  });
});

describe("any damage", () => {
  it("one changed byte is refused, or lies where it changes nothing that comes out", () => {
    const whole = sample();
    const content = { ok: true, value: contentOf([sampleBead()]) };
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: whole.length - 1 }),
        fc.integer({ min: 1, max: 255 }),
        (at, flip) => {
          const bytes = whole.slice();
          bytes[at] = (bytes[at] ?? 0) ^ flip;
          const result = unpackArchive(bytes, sha256);
          if (result.ok) expect(result).toEqual(content);
          else expect(result.issues.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: inDepth(150, 1500), seed: 6 },
    );
  });

  it("every byte of every photo and of the manifest counts", () => {
    const whole = sample();
    const files = Object.entries(unzipSync(whole));
    for (const [name, content] of files) {
      const start = localName(whole, name) + name.length;
      const step = Math.max(1, Math.floor(content.length / 40));
      for (let i = 0; i < content.length; i += step) {
        const bytes = whole.slice();
        bytes[start + i] = (bytes[start + i] ?? 0) ^ 1;
        expect([name, i, unpackArchive(bytes, sha256).ok]).toEqual([name, i, false]);
      }
    }
  });

  it("no bytes at all make it throw", () => {
    const header = [0x50, 0x4b, 5, 6];
    const tail = fc
      .uint8Array({ minLength: 18, maxLength: 18 })
      .map((rest) => new Uint8Array([...header, ...rest]));
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 120 }), tail, (front, end) => {
        expect(unpackArchive(new Uint8Array([...front, ...end]), sha256)).toHaveProperty("ok");
      }),
      { numRuns: inDepth(300, 3000), seed: 7 },
    );
  });
});
