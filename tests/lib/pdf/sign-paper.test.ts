import { createHash, createPrivateKey } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { paperSignature } from "@/lib/keys/paper-signature";
import { readPkcs12 } from "@/lib/keys/read-pkcs12";
import { signPaper, stripPdf } from "@/lib/pdf";
import {
  hasOpenssl,
  hasPdfsig,
  opensslSays,
  pdfsigSays,
  readCms,
  signatureIn,
} from "../../setup/check-paper";
import { inDepth } from "../../setup/in-depth";
import { readPdf } from "./read-pdf";

const AT = "2026-11-28T08:15:30.000Z";
/** RFC 5652, 11.1 and 11.2; RFC 5035, 3. The time of signing, 1.2.840.113549.1.9.5, is not among them. */
const BASELINE = ["1.2.840.113549.1.9.3", "1.2.840.113549.1.9.4", "1.2.840.113549.1.9.16.2.47"];

let paper: Uint8Array;
beforeAll(async () => {
  paper = await stripPdf("a4", AT);
});

function signedBy(name: "issued" | "curve") {
  const file = readFileSync(path.join(import.meta.dirname, `../../fixtures/certificates/${name}.p12`));
  const read = readPkcs12(file, "eleven-copper-kettles", new Date(AT));
  if (!read.ok) throw new Error(read.issues[0]?.code);
  const { chain, privatePart } = read.value;
  const key = createPrivateKey({ key: privatePart, format: "der", type: "pkcs8" });
  const sign = (covered: Uint8Array) => paperSignature(covered, key, chain);
  return { chain, signed: signPaper(paper, { name: "Träger Söhne", reason: "Issued (here)", at: AT, sign }) };
}

describe.each(["issued", "curve"] as const)("a paper signed by the certificate “%s”", (name) => {
  it("begins with the paper as it was, and shows the same pages", async () => {
    const { signed } = signedBy(name);
    expect(Buffer.compare(signed.subarray(0, paper.length), paper)).toBe(0);
    expect(await readPdf(signed)).toEqual(await readPdf(paper));
  });

  it("is covered whole, but for the signature itself", () => {
    const { signed } = signedBy(name);
    const { range, covered } = signatureIn(signed);
    const [from, first = 0, second = 0, rest = 0] = range;
    expect([from, second + rest]).toEqual([0, signed.length]);
    expect([signed[first], signed[second - 1]].map((byte) => String.fromCharCode(byte ?? 0))).toEqual([
      "<",
      ">",
    ]);
    const left = Buffer.from(signed.subarray(first + 1, second - 1)).toString();
    expect(left).toMatch(/^[0-9a-f]+$/);
    expect(covered.length + left.length + 2).toBe(signed.length);
  });

  it("carries what baseline B-B asks for, checked by a library that did not make it", async () => {
    const { signed, chain } = signedBy(name);
    const { covered, cms } = signatureIn(signed);
    const read = await readCms(cms, covered);
    expect(read.fits).toBe(true);
    expect(read.types.toSorted()).toEqual(BASELINE.toSorted());
    expect(read.certificates).toHaveLength(chain.length);
    // RFC 5035: the certificate that the signature is to be checked by is among what is signed, as its SHA-256.
    const hash = createHash("sha256").update(chain[0]!).digest("hex");
    const named = read.attribute("1.2.840.113549.1.9.16.2.47") as { toBER(): ArrayBuffer };
    expect(Buffer.from(named.toBER()).toString("hex")).toBe(`3026302430220420${hash}`);
    const words = Buffer.from(signed).toString("latin1");
    for (const said of ["/SubFilter /ETSI.CAdES.detached", "/M (D:20261128081530Z)", "/SigFlags 3"])
      expect(words).toContain(said);
  });

  it.skipIf(!hasPdfsig)("is valid to poppler’s pdfsig, which reads name, time and profile", () => {
    const said = pdfsigSays(signedBy(name).signed);
    for (const words of [
      "Signature Validation: Signature is Valid.",
      "Total document signed",
      "Signature Type: ETSI.CAdES.detached",
      "Signing Hash Algorithm: SHA-256",
      "Signing Time: Nov 28 2026 08:15:30",
    ])
      expect(said).toContain(words);
  });

  it.skipIf(!hasOpenssl)("is valid to openssl as CAdES, and by no other certificate", () => {
    const { signed, chain } = signedBy(name);
    const { covered, cms } = signatureIn(signed);
    expect(opensslSays(cms, covered, chain[0]!)).toContain("CAdES Verification successful");
    const other = signedBy(name === "issued" ? "curve" : "issued").chain[0]!;
    expect(opensslSays(cms, covered, other)).not.toContain("successful");
  });

  it("does not fit any more once one bit was changed: of the paper, of what is signed beside it, of the signature", async () => {
    const { signed } = signedBy(name);
    const { range, cms } = signatureIn(signed);
    const [, first = 0, second = 0] = range;
    // Where the numbers of the range stand is theirs alone: other numbers are another covering.
    const numbers = Buffer.from(signed).lastIndexOf("/ByteRange [");
    const algorithmId = name === "issued" ? "06092a864886f70d01010b" : "06082a8648ce3d040302";
    const [attributes, algorithm] = [
      cms.lastIndexOf(Buffer.from("06092a864886f70d010903", "hex")),
      cms.lastIndexOf(Buffer.from(algorithmId, "hex")) - 2,
    ];
    const inCms = (byte: number): number => first + 1 + byte * 2;
    const place = fc
      .oneof(
        fc.integer({ min: 0, max: first - 1 }),
        fc.integer({ min: paper.length, max: first - 1 }),
        fc.integer({ min: second, max: signed.length - 1 }),
        fc.integer({ min: inCms(attributes), max: inCms(algorithm) - 1 }),
        fc.integer({ min: inCms(cms.length - 64), max: inCms(cms.length) - 1 }),
      )
      .filter((at) => at < numbers || at > numbers + 64);
    await fc.assert(
      fc.asyncProperty(place, fc.integer({ min: 0, max: 7 }), async (at, bit) => {
        const changed = signed.slice();
        changed[at] = (changed[at] ?? 0) ^ (1 << bit);
        // Hexadecimal digits that only changed their case say the same.
        const isCase = bit === 5 && /[a-f]/i.test(String.fromCharCode(changed[at]));
        fc.pre(!(isCase && at > first && at < second));
        expect(await stillFits(changed)).toBe(false);
      }),
      { seed: 18, numRuns: inDepth(40, 2000) },
    );
  });

  it.skipIf(!hasPdfsig)(
    "is named changed by pdfsig, with one byte of the paper, of its end or of the signature",
    () => {
      const { signed } = signedBy(name);
      const { range } = signatureIn(signed);
      for (const at of [1000, paper.length + 20, (range[2] ?? 0) + 8, (range[1] ?? 0) + 900]) {
        const changed = signed.slice();
        changed[at] = (changed[at] ?? 0) ^ 1;
        expect(pdfsigSays(changed)).not.toContain("Signature is Valid");
      }
    },
  );
});

/** Whether anything in these bytes can still be taken for the signed paper. */
async function stillFits(bytes: Uint8Array): Promise<boolean> {
  try {
    const { covered, cms } = signatureIn(bytes);
    return (await readCms(cms, covered)).fits;
  } catch {
    return false;
  }
}

describe("a paper to be signed", () => {
  it("is refused where it was signed already: a second one would hide what it covers", () => {
    const { signed } = signedBy("curve");
    const seal = { name: "x", reason: "y", at: AT, sign: () => new Uint8Array(10) };
    expect(() => signPaper(signed, seal)).toThrow();
  });

  it("is not cut short for a signature that is longer than its room", () => {
    const seal = { name: "x", reason: "y", at: AT, sign: () => new Uint8Array(40_000) };
    expect(() => signPaper(paper, seal)).toThrow(/longer than the room/);
  });
});
