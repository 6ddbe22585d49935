import { createPrivateKey, hkdfSync } from "node:crypto";
import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import { dataFolderOf, type Db, type Tx } from "@/lib/db";
import { readSetting, writing, type Pen, type RecordIssue } from "@/lib/store";
import { installationPart, installationSigner } from "./installation-key";
import { lock, LockedBoxSchema, unlock } from "./locked-box";
import { ownCertificate, type CertifiedKey } from "./own-certificate";
import { paperSignature } from "./paper-signature";
import { certificateFacts, type CertificateFacts } from "./read-certificate";
import { readPkcs12 } from "./read-pkcs12";

const KEY = "paper-certificates";

const StoredSchema = z.object({
  /** base64 of DER, its own certificate first */
  chain: z.array(z.base64()).min(1).max(20),
  origin: z.enum(["made", "uploaded"]),
  /** ISO 8601, UTC: when it was set up here, and when it was put out of use. */
  since: z.string(),
  endedAt: z.string().nullable(),
  /** The private part; gone when it was put out of use. */
  box: LockedBoxSchema.nullable(),
});
type Stored = z.infer<typeof StoredSchema>;
const AllSchema = z.object({ schemaVersion: z.literal(1), certificates: z.array(StoredSchema) });

/** A certificate that papers are, or were, signed with. */
export interface PaperCertificate extends CertificateFacts {
  readonly origin: Stored["origin"];
  /** ISO 8601, UTC */
  readonly since: string;
  readonly endedAt: string | null;
  /** Its own bytes, base64 of DER, for whoever wants to trust it. */
  readonly der: string;
}

const factsOf = ({ chain, origin, since, endedAt }: Stored): PaperCertificate => {
  const der = chain[0] ?? "";
  return { ...certificateFacts(Buffer.from(der, "base64")), origin, since, endedAt, der };
};

const readAll = async (db: Db | Tx): Promise<readonly Stored[]> =>
  (await readSetting(db, KEY, AllSchema))?.certificates ?? [];

/** Every certificate that papers were ever signed with here, the newest first. */
export const paperCertificates = async (db: Db | Tx): Promise<readonly PaperCertificate[]> =>
  (await readAll(db)).map(factsOf).toReversed();

/** Makes a key and a certificate signed by itself, issued to `name`, and takes it into use. */
export async function makePaperCertificate(
  pen: Pen,
  name: string,
  now: Date,
): Promise<Result<null, RecordIssue>> {
  const said = name.trim();
  if (said.length < 2 || said.length > 64) return fail(issue("certificate-name", ["name"]));
  return begin(pen, await ownCertificate(said, now), "made", now);
}

/** Takes a certificate with its key out of a PKCS #12 file into use. The passphrase is not kept. */
export async function uploadPaperCertificate(
  pen: Pen,
  { file, passphrase }: { readonly file: Uint8Array; readonly passphrase: string },
  now: Date,
): Promise<Result<null, RecordIssue>> {
  const read = readPkcs12(file, passphrase, now);
  return read.ok ? begin(pen, read.value, "uploaded", now) : read;
}

/** What belongs to the box: it opens for this certificate, with the key of this installation, and for nothing else. */
const bindsOf = (chain: readonly string[]): string => `${KEY}:${chain[0]}`;

/**
 * What locks the private part: it follows from the installation's own, so whoever has the database alone cannot sign, and
 * several servers of one installation can. Null: this folder has no key of an installation.
 */
function secretOf(db: Db): string | null {
  const part = installationPart(dataFolderOf(db));
  return part && Buffer.from(hkdfSync("sha256", part, "", KEY, 32)).toString("base64url");
}

async function begin(
  pen: Pen,
  { privatePart, chain }: CertifiedKey,
  origin: Stored["origin"],
  now: Date,
): Promise<Result<null, RecordIssue>> {
  await installationSigner(pen, now);
  const texts = chain.map((one) => Buffer.from(one).toString("base64"));
  const secret = secretOf(pen.db);
  if (secret === null) return fail(issue("certificate-key"));
  const box = await lock(privatePart, secret, bindsOf(texts));
  return change(pen, now, "certificate.begun", [
    { chain: texts, origin, since: now.toISOString(), endedAt: null, box },
  ]);
}

/** Puts the certificate in use out of use: papers made until now stay signed, further ones are not. */
export const endPaperCertificate = (pen: Pen, now: Date): Promise<Result<null, RecordIssue>> =>
  change(pen, now, "certificate.ended", []);

function change(
  pen: Pen,
  now: Date,
  action: string,
  next: readonly Stored[],
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const before = (await readAll(tx)).map((one) =>
      one.endedAt === null ? { ...one, endedAt: now.toISOString(), box: null } : one,
    );
    const value = { schemaVersion: 1, certificates: [...before, ...next] };
    await tx.setting.upsert({ where: { key: KEY }, create: { key: KEY, value }, update: { value } });
    await log(`setting:${KEY}`, action);
    return ok(null);
  });
}

/**
 * Whether papers can be signed now.
 * - `none`: nobody set a certificate up
 * - `over`: its time has run out, or has not begun
 * - `closed`: the private part does not open with the key in this data folder
 */
export type PaperSigning =
  | { readonly kind: "none" }
  | { readonly kind: "over" | "closed"; readonly certificate: PaperCertificate }
  | {
      readonly kind: "ready";
      readonly certificate: PaperCertificate;
      /** A detached CMS signature over these bytes, DER. */
      readonly sign: (covered: Uint8Array) => Uint8Array;
    };

/** Opens the key that papers are signed by. Costs a fraction of a second. */
export async function paperSigning(db: Db, now: Date): Promise<PaperSigning> {
  const used = (await readAll(db)).findLast(({ endedAt }) => endedAt === null);
  if (!used) return { kind: "none" };
  const certificate = factsOf(used);
  const [from, until] = [Date.parse(certificate.from), Date.parse(certificate.until)];
  if (now.getTime() < from || now.getTime() >= until) return { kind: "over", certificate };
  const secret = secretOf(db);
  const opened = secret && (await unlock(used.box, secret, bindsOf(used.chain)));
  if (!opened) return { kind: "closed", certificate };
  const key = createPrivateKey({ key: opened, format: "der", type: "pkcs8" });
  const chain = used.chain.map((one) => Buffer.from(one, "base64"));
  return { kind: "ready", certificate, sign: (covered) => paperSignature(covered, key, chain) };
}
