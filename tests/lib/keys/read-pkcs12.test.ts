import { createPrivateKey } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { ownCertificate } from "@/lib/keys/own-certificate";
import { certificateFacts, belongsTo } from "@/lib/keys/read-certificate";
import { readPkcs12 } from "@/lib/keys/read-pkcs12";

// Made by openssl 3.0: `openssl pkcs12 -export`, one with the ciphers of before 3.0, one with a curve, others not fit.
const file = (name: string): Buffer =>
  readFileSync(path.join(import.meta.dirname, "../../fixtures/certificates", `${name}.p12`));
const PASSPHRASE = "eleven-copper-kettles";
const now = new Date("2026-11-28T08:00:00.000Z");

/** As `openssl x509 -fingerprint -sha256` printed them. */
const printed = {
  issued: "b983718d3f421dc168cb8ba204bf44d326068dbf17dfe1d1b3edb58824d0c392",
  curve: "7f022ee9183f538e0a42b4db35cf83000d0bd47ccf65797638ff1c910e1bf3cc",
};

describe("a PKCS #12 file", () => {
  it.each([
    ["issued", printed.issued, 2],
    ["older-ciphers", printed.issued, 1],
    ["curve", printed.curve, 1],
  ])("%s gives its key with its own certificate first", (name, fingerprint, length) => {
    const read = readPkcs12(file(name), PASSPHRASE, now);
    if (!read.ok) throw new Error(read.issues[0]?.code);
    const { privatePart, chain } = read.value;
    const own = chain[0] ?? Buffer.alloc(0);
    expect(chain).toHaveLength(length);
    expect(certificateFacts(own).fingerprint).toBe(fingerprint);
    expect(belongsTo(own, createPrivateKey({ key: privatePart, format: "der", type: "pkcs8" }))).toBe(true);
  });

  it("tells what its certificate says, and who vouches for it", () => {
    const read = readPkcs12(file("issued"), PASSPHRASE, now);
    if (!read.ok) throw new Error(read.issues[0]?.code);
    const [own, issuer] = read.value.chain.map(certificateFacts);
    expect(own).toMatchObject({
      name: "Harrow Basin papers",
      issuer: "Quarry Lane issuer",
      isSelfSigned: false,
    });
    expect(own).toMatchObject({ from: "2026-11-27T02:02:07.000Z", until: "2078-12-04T02:02:07.000Z" });
    expect(issuer).toMatchObject({ name: "Quarry Lane issuer", isSelfSigned: true });
  });

  it("without a passphrase opens with none", () => {
    expect(readPkcs12(file("no-passphrase"), "", now).ok).toBe(true);
  });

  const cut = file("issued").subarray(0, 400);
  it.each([
    ["another passphrase", file("issued"), "eleven-copper-kettle", now, "certificate-passphrase"],
    ["another passphrase, older ciphers", file("older-ciphers"), "", now, "certificate-passphrase"],
    ["no file", new Uint8Array(), PASSPHRASE, now, "certificate-file"],
    ["half a file", cut, PASSPHRASE, now, "certificate-file"],
    ["a picture", Buffer.from("89504e470d0a1a0a", "hex"), PASSPHRASE, now, "certificate-file"],
    ["too much", Buffer.alloc(70_000, 48), PASSPHRASE, now, "certificate-file"],
    ["no key in it", file("without-key"), PASSPHRASE, now, "certificate-key"],
    ["a key of 1024 bits", file("weak"), PASSPHRASE, now, "certificate-weak"],
    ["a certificate for ciphers", file("other-use"), PASSPHRASE, now, "certificate-other-use"],
    ["a day before it", file("issued"), PASSPHRASE, new Date("2026-11-26T00:00:00Z"), "certificate-not-now"],
    ["a day after it", file("issued"), PASSPHRASE, new Date("2078-12-05T00:00:00Z"), "certificate-not-now"],
  ])("is refused: %s", (_, bytes, passphrase, at, code) => {
    const read = readPkcs12(bytes, passphrase, at);
    expect(read.ok ? [] : read.issues.map((one) => one.code)).toEqual([code]);
  });
});

describe("a certificate made here", () => {
  it("is signed by itself, for five years, under the name that was given", async () => {
    const { chain, privatePart } = await ownCertificate("Träger & Söhne", now);
    const own = chain[0] ?? Buffer.alloc(0);
    expect(certificateFacts(own)).toMatchObject({
      ...{ name: "Träger & Söhne", issuer: "Träger & Söhne", isSelfSigned: true },
      ...{ from: now.toISOString(), until: "2031-11-28T08:00:00.000Z" },
    });
    expect(belongsTo(own, createPrivateKey({ key: privatePart, format: "der", type: "pkcs8" }))).toBe(true);
  });
});
