import { readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import {
  endPaperCertificate,
  makePaperCertificate,
  paperCertificates,
  paperSigning,
  paperWords,
  uploadPaperCertificate,
} from "@/lib/keys";
import { newPrivatePart } from "@/lib/keys/key-pair";
import { readPkcs12 } from "@/lib/keys/read-pkcs12";
import { verifyRecords } from "@/lib/verify";
import { readCms } from "../../setup/check-paper";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const PASSPHRASE = "eleven-copper-kettles";
const file = readFileSync(path.join(import.meta.dirname, "../../fixtures/certificates/issued.p12"));
const now = new Date("2026-11-28T08:00:00.000Z");
const hereToo = { kind: "before-keys" } as const;

async function upload() {
  const taken = await uploadPaperCertificate(fresh().pen, { file, passphrase: PASSPHRASE }, now);
  if (!taken.ok) throw new Error(taken.issues[0]?.code);
}

/** Every byte of the data folder and of the database as text. */
async function allBytes(): Promise<string> {
  const { db, folder } = fresh();
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const files = names.map(({ parentPath, name }) =>
    readFileSync(path.join(parentPath, name)).toString("latin1"),
  );
  return [
    ...files,
    JSON.stringify(await db.setting.findMany()),
    JSON.stringify(await db.logEntry.findMany()),
  ].join();
}

describe("the certificate that papers are signed with", () => {
  it("is none at first, and then PDFs are said to carry nothing", async () => {
    const signing = await paperSigning(fresh().db, now);
    expect(signing).toEqual({ kind: "none" });
    expect(paperWords(signing, hereToo)).toContain("no certificate is set up");
  });

  it("is taken out of a file, signs, and is kept sealed: neither key nor passphrase lie here in clear", async () => {
    await upload();
    const signing = await paperSigning(fresh().db, now);
    if (signing.kind !== "ready") throw new Error(signing.kind);
    expect(signing.certificate).toMatchObject({
      name: "Harrow Basin papers",
      origin: "uploaded",
      isSelfSigned: false,
    });
    const covered = Buffer.from("a paper");
    expect((await readCms(signing.sign(covered), covered)).fits).toBe(true);
    const read = readPkcs12(file, PASSPHRASE, now);
    if (!read.ok) throw new Error("not read");
    const { privatePart } = read.value;
    const bytes = await allBytes();
    // The numbers that make the private part secret begin past its head; any stretch of them would show in some writing.
    for (const writing of ["latin1", "hex", "base64", "base64url"] as const)
      expect(bytes).not.toContain(privatePart.subarray(600, 660).toString(writing));
    for (const secret of [PASSPHRASE, Buffer.from(PASSPHRASE).toString("base64"), "PRIVATE KEY"])
      expect(bytes).not.toContain(secret);
    expect(bytes).toContain(read.value.chain[0]?.toString("base64"));
  });

  it("is in the log, and the log holds", async () => {
    const { db, folder } = fresh();
    const actions = (await db.logEntry.findMany({ where: { subject: "setting:paper-certificates" } })).map(
      ({ action }) => action,
    );
    expect(actions).toEqual(["certificate.begun"]);
    expect((await verifyRecords(db, folder)).findings).toEqual([]);
  });

  it("does not open with the key of another installation, nor without any", async () => {
    const { db, folder } = fresh();
    const key = path.join(folder, "installation-key");
    const own = readFileSync(key);
    writeFileSync(key, newPrivatePart().toString("base64"));
    const other = await paperSigning(db, now);
    expect(other.kind).toBe("closed");
    expect(paperWords(other, hereToo)).toContain("does not open in this data folder");
    renameSync(key, `${key}-away`);
    expect((await paperSigning(db, now)).kind).toBe("closed");
    writeFileSync(key, own);
    expect((await paperSigning(db, now)).kind).toBe("ready");
  });

  it("does not open beside another certificate: a box that somebody moved signs nothing", async () => {
    const { db } = fresh();
    const row = await db.setting.findUniqueOrThrow({ where: { key: "paper-certificates" } });
    const value = structuredClone(row.value) as unknown as { certificates: { chain: string[] }[] };
    value.certificates[0]?.chain.reverse();
    await db.setting.update({ where: { key: row.key }, data: { value: value as never } });
    expect((await paperSigning(db, now)).kind).toBe("closed");
    await db.setting.update({ where: { key: row.key }, data: { value: row.value as never } });
    expect((await paperSigning(db, now)).kind).toBe("ready");
  });

  it.each([
    ["2026-11-26T00:00:00.000Z", "over"],
    ["2078-12-04T02:02:07.000Z", "over"],
    ["2078-12-04T02:02:06.999Z", "ready"],
  ])("on %s is %s: no signature outside its own time", async (at, kind) => {
    expect((await paperSigning(fresh().db, new Date(at))).kind).toBe(kind);
  });

  it("gives way to one that was made here, which says that nobody else vouches for it", async () => {
    const { db, pen } = fresh();
    const short = await makePaperCertificate(pen, " x ", now);
    expect(short.ok ? [] : short.issues.map(({ code }) => code)).toEqual(["certificate-name"]);
    expect((await makePaperCertificate(pen, "Harrow Basin Training Bay", now)).ok).toBe(true);
    const signing = await paperSigning(db, now);
    if (signing.kind !== "ready") throw new Error(signing.kind);
    expect(paperWords(signing, hereToo)).toMatch(/Harrow Basin Training Bay, .* nobody else vouches for/);
    const covered = Buffer.from("a paper");
    expect((await readCms(signing.sign(covered), covered)).fits).toBe(true);
    const [used, before] = await paperCertificates(db);
    expect(used).toMatchObject({ origin: "made", isSelfSigned: true, endedAt: null });
    expect(before).toMatchObject({ name: "Harrow Basin papers", endedAt: now.toISOString() });
  });

  it("is put out of use with its private part, and stays listed", async () => {
    const { db, pen } = fresh();
    await endPaperCertificate(pen, now);
    expect(await paperSigning(db, now)).toEqual({ kind: "none" });
    expect((await paperCertificates(db)).map(({ endedAt }) => endedAt)).toEqual([
      now.toISOString(),
      now.toISOString(),
    ]);
    const row = await db.setting.findUniqueOrThrow({ where: { key: "paper-certificates" } });
    expect(JSON.stringify(row.value)).not.toContain("scrypt");
  });

  it("vouches for nothing that could not be verified", async () => {
    await upload();
    const standing = { kind: "unverified", why: "none", imported: true } as const;
    expect(paperWords(await paperSigning(fresh().db, now), standing)).toContain(
      "carries no digital signature",
    );
  });
});
