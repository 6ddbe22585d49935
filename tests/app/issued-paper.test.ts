import { beforeAll, describe, expect, it, vi } from "vitest";
import { GET } from "@/app/api/inspections/[inspectionId]/pdf/route";
import { issuePaper } from "@/app/_door/issue-paper";
import { endPaperCertificate, makePaperCertificate, paperSigning } from "@/lib/keys";
import { hasPdfsig, pdfsigSays, readCms, signatureIn } from "../setup/check-paper";
import { useFreshDb } from "../setup/fresh-db";
import { fillWholeRecord, type WholeRecord } from "../setup/whole-record";

vi.mock("next/headers", () => ({
  headers: async () => new Headers({ host: "localhost:3000" }),
  cookies: async () => ({ get: () => undefined }),
}));

const fresh = useFreshDb();
let whole: WholeRecord;
beforeAll(async () => {
  process.env["TOELINE_DATA"] = fresh().folder;
  whole = await fillWholeRecord(fresh());
}, 60_000);

async function paper(query: string): Promise<Uint8Array> {
  const { inspectionId } = whole;
  const address = `http://localhost:3000/api/inspections/${inspectionId}/pdf?${query}`;
  const answer = await GET(new Request(address, { headers: { host: "localhost:3000" } }), {
    params: Promise.resolve({ inspectionId }),
  });
  expect(answer.status).toBe(200);
  return new Uint8Array(await answer.arrayBuffer());
}
const isSigned = (bytes: Uint8Array): boolean => Buffer.from(bytes).includes("ETSI.CAdES.detached");

describe("the PDF of a signed record", () => {
  let bare: Uint8Array;
  let copies: readonly Uint8Array[];
  const asked = "revision=1&units=metric";

  it("leaves as it is where no certificate is set up", async () => {
    bare = await paper(asked);
    expect(isSigned(bare)).toBe(false);
  });

  it("leaves signed once the owner has set one up: the same paper each time, with the time of that copy", async () => {
    expect((await makePaperCertificate(fresh().pen, "Harrow Basin Training Bay", new Date())).ok).toBe(true);
    const before = Date.now();
    copies = [await paper(asked), await paper(asked)];
    for (const signed of copies) {
      expect(Buffer.compare(signed.subarray(0, bare.length), bare)).toBe(0);
      const { covered, cms } = signatureIn(signed);
      expect((await readCms(cms, covered)).fits).toBe(true);
      const [, said = ""] = /\/M \(D:(\d{14})Z\)/.exec(Buffer.from(signed).toString("latin1")) ?? [];
      const at = Date.parse(said.replace(/(....)(..)(..)(..)(..)(..)/, "$1-$2-$3T$4:$5:$6Z"));
      expect(at).toBeGreaterThanOrEqual(before - 1000);
      expect(at).toBeLessThanOrEqual(Date.now());
    }
  });

  it.skipIf(!hasPdfsig)("is valid to pdfsig, and one changed byte of it is not", () => {
    const [signed = new Uint8Array()] = copies;
    expect(pdfsigSays(signed)).toMatch(/Common Name: Harrow Basin Training Bay[^]*Signature is Valid/);
    const changed = signed.slice();
    changed[5000] = (changed[5000] ?? 0) ^ 1;
    expect(pdfsigSays(changed)).toContain("Signature Validation: Digest Mismatch");
  });

  it("stays bare for a draft and for what could not be verified", async () => {
    expect(isSigned(await paper("draft&units=metric"))).toBe(false);
    const { db } = fresh();
    const now = new Date();
    const standing = { kind: "unverified", why: "does-not-fit", imported: true } as const;
    expect(await issuePaper(db, bare, standing, now)).toBe(bare);
    expect(isSigned(await issuePaper(db, bare, { kind: "before-keys" }, now))).toBe(true);
  });

  it("leaves bare again once the certificate is out of use", async () => {
    const { db, pen } = fresh();
    await endPaperCertificate(pen, new Date());
    expect((await paperSigning(db, new Date())).kind).toBe("none");
    expect(await issuePaper(db, bare, { kind: "before-keys" }, new Date())).toBe(bare);
  });
});
