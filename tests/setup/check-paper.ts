import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fromBER } from "asn1js";
import { Certificate, ContentInfo, SignedData } from "pkijs";

const has = (program: string, ask: string): boolean => spawnSync(program, [ask]).error === undefined;
/** Programs that other people wrote; a machine without one leaves those tests out by name. */
export const hasPdfsig = has("pdfsig", "-v");
export const hasOpenssl = has("openssl", "version");

/** What the last signature dictionary of a PDF says: the bytes it is over, and the CMS in it without its filling. */
export function signatureIn(pdf: Uint8Array): { range: number[]; covered: Buffer; cms: Buffer } {
  const bytes = Buffer.from(pdf);
  const from = bytes.lastIndexOf("/ByteRange [") + "/ByteRange [".length;
  const range = bytes.subarray(from, bytes.indexOf("]", from)).toString().split(" ").map(Number);
  const [a = 0, b = 0, c = 0, d = 0] = range;
  const hex = bytes.subarray(a + b + 1, c - 1).toString();
  const all = Buffer.from(hex, "hex");
  const { offset } = fromBER(all);
  return {
    range,
    covered: Buffer.concat([bytes.subarray(a, a + b), bytes.subarray(c, c + d)]),
    cms: all.subarray(0, offset),
  };
}

/** Types of what is signed beside the bytes, and whether the signature fits, by a library that did not make it. */
export async function readCms(cms: Uint8Array, covered: Uint8Array) {
  const content = new ContentInfo({ schema: fromBER(cms).result });
  const signed = new SignedData({ schema: content.content });
  const fits = await signed
    .verify({ signer: 0, data: new Uint8Array(covered).buffer, checkChain: false })
    .catch(() => false);
  const attributes = signed.signerInfos[0]?.signedAttrs?.attributes ?? [];
  return {
    fits,
    types: attributes.map(({ type }) => type),
    attribute: (type: string) => attributes.find((one) => one.type === type)?.values[0],
    certificates: (signed.certificates ?? []).flatMap((one) => (one instanceof Certificate ? [one] : [])),
  };
}

function inFolder<T>(work: (folder: string) => T): T {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-paper-"));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What poppler's pdfsig says of a PDF. */
export const pdfsigSays = (pdf: Uint8Array): string =>
  inFolder((folder) => {
    const file = path.join(folder, "paper.pdf");
    writeFileSync(file, pdf);
    const { stdout, stderr } = spawnSync("pdfsig", [file], { cwd: folder, encoding: "utf8" });
    return stdout + stderr;
  });

/** What openssl says of a detached signature whose certificate is trusted, asking for the attribute of CAdES too. */
export const opensslSays = (cms: Uint8Array, covered: Uint8Array, trusted: Uint8Array): string =>
  inFolder((folder) => {
    const at = (name: string) => path.join(folder, name);
    writeFileSync(at("cms"), cms);
    writeFileSync(at("covered"), covered);
    writeFileSync(at("der"), trusted);
    execFileSync("openssl", ["x509", "-inform", "DER", "-in", at("der"), "-out", at("pem")]);
    const asked = "cms -verify -cades -binary -inform DER -purpose any -partial_chain -no_check_time";
    const files = ["-in", at("cms"), "-content", at("covered"), "-CAfile", at("pem"), "-out", at("out")];
    return spawnSync("openssl", [...asked.split(" "), ...files], { encoding: "utf8" }).stderr;
  });
