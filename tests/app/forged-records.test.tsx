import { readFileSync, statSync } from "node:fs";
import path from "node:path";
import type { ReactNode } from "react";
import { prerender } from "react-dom/static";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { GET as inspectionPdf } from "@/app/api/inspections/[inspectionId]/pdf/route";
import InspectionPage from "@/app/inspections/[inspectionId]/page";
import RevisionPage from "@/app/inspections/[inspectionId]/revisions/[revision]/page";
import { archiveOf, importArchive, jobsAlong } from "@/lib/archive";
import { confirmKey, listKeys } from "@/lib/keys";
import { newPrivatePart, signerOf } from "@/lib/keys/key-pair";
import { fingerprint } from "@/lib/signature";
import { verifyRecords } from "@/lib/verify";
import { plain, readPdf } from "../lib/pdf/read-pdf";
import { manifestOf, repacked, resigned, signedOf, underOtherIds, type LooseManifest } from "../setup/forge";
import { useFreshDb } from "../setup/fresh-db";
import { inDepth } from "../setup/in-depth";
import { bytesOf, listBeads } from "../setup/stored-beads";
import { fillWholeRecord, type WholeRecord } from "../setup/whole-record";

vi.mock("next/headers", () => ({
  headers: async () => new Headers({ host: "localhost:3000" }),
  cookies: async () => ({ get: () => undefined }),
}));
vi.mock("@/components/shell/header", () => ({ Header: () => null }));
vi.mock("next/navigation", async (original) => ({
  ...(await original<object>()),
  useRouter: () => ({ refresh: () => undefined }),
}));

const fresh = useFreshDb();
let whole: WholeRecord;
let archive: Uint8Array;
const INSPECTOR = "Vesna Ling";

beforeAll(async () => {
  process.env["TOELINE_DATA"] = fresh().folder;
  whole = await fillWholeRecord(fresh());
  const { db, folder } = fresh();
  const beads = (await listBeads(db)).filter(({ jobId }) => jobId === whole.jobId);
  const made = await archiveOf(folder, beads, [], await jobsAlong(db, folder, [whole.jobId]));
  if (!made.ok) throw new Error(made.issues[0]?.code);
  archive = await bytesOf(made.value);
}, 60_000);

async function htmlOf(page: ReactNode): Promise<string> {
  const { prelude } = await prerender(page);
  return (await new Response(prelude).text()).replaceAll("<!-- -->", "");
}

/** Everything anybody is shown of an inspection's first revision. */
async function shownOf(inspectionId: string) {
  const params = Promise.resolve({ inspectionId, revision: "1" });
  const request = new Request(`http://localhost:3000/api/inspections/${inspectionId}/pdf?revision=1`, {
    headers: { host: "localhost:3000" },
  });
  const pdf = await inspectionPdf(request, { params });
  expect(pdf.status).toBe(200);
  const pages = await readPdf(new Uint8Array(await pdf.arrayBuffer()));
  return {
    inspection: await htmlOf(await InspectionPage({ params })),
    revision: await htmlOf(await RevisionPage({ params })),
    pdf: plain(pages.map(({ text }) => text).join(" ")),
  };
}

/** What the forger brings in: the archive under other ids, changed. Says the inspection it became. */
async function broughtIn(change: (manifest: LooseManifest) => void): Promise<string> {
  const before = new Set((await fresh().db.inspection.findMany()).map(({ id }) => id));
  const forged = repacked(archive, (manifest) => change(underOtherIds(manifest)));
  const done = await importArchive(fresh().pen, fresh().folder, forged, { leaveConflicts: false });
  if (!done.ok) throw new Error(JSON.stringify(done.issues));
  const after = await fresh().db.inspection.findMany();
  return after.find(({ id }) => !before.has(id))?.id ?? "";
}

describe("a record that was really signed here", () => {
  it("is shown as signed, with its inspector's name", async () => {
    const shown = await shownOf(whole.inspectionId);
    for (const text of [shown.inspection, shown.revision, shown.pdf]) expect(text).toContain(INSPECTOR);
    expect(shown.revision).toContain("Signed, revision 1");
    expect(shown.pdf).toContain(`Signer: ${INSPECTOR}`);
  });
});

/** The forger's own key, under the inspector's name as far as an archive can say it. */
function withForgersKey(manifest: LooseManifest): void {
  const signer = signerOf(newPrivatePart());
  const [template] = manifest.keys;
  manifest.keys = [
    { ...template, id: signer.keyId, publicKey: signer.publicKey, until: null, untilReason: null },
  ];
  resigned(manifest, (record) => {
    record.result = "accepted";
    record.signature.key.id = signer.keyId;
  });
  for (const signed of signedOf(manifest)) {
    const { digest, signature } = signed;
    signed.signature = signer.sign({ subject: `signed:${signed.id}`, digest, at: signature.at, head: null });
  }
}

const accepted = (record: LooseManifest): void => {
  record.result = "accepted";
  for (const one of record.weldResults) one.result = "accepted";
};

describe("a forged record never looks signed by somebody here", () => {
  const forgeries: readonly [string, (manifest: LooseManifest) => void, string][] = [
    ["with its result changed", (manifest) => resigned(manifest, accepted), "was given for another text"],
    [
      "with its statement changed",
      (manifest) => resigned(manifest, (record) => (record.statement = "All welds are sound.")),
      "was given for another text",
    ],
    [
      "with its identification changed",
      (manifest) => resigned(manifest, (record) => (record.signature.signer.mark = "I-99")),
      "was given for another text",
    ],
    [
      "with the signature of another record",
      (manifest) => {
        for (const signed of signedOf(manifest)) signed.signature.subject = "signed:of-another";
      },
      "the signature is not with it",
    ],
    [
      "with its signature put under the new digest",
      (manifest) => {
        resigned(manifest, accepted);
        for (const signed of signedOf(manifest)) signed.signature.digest = signed.digest;
      },
      "does not fit the text",
    ],
    ["by a key of the forger", withForgersKey, "has not confirmed whose key that is"],
    [
      "by a key of the forger under the inspector's key's id",
      (manifest) => {
        const [{ id }] = manifest.keys;
        withForgersKey(manifest);
        manifest.keys[0].id = id;
      },
      "the key of its signature is not known here",
    ],
    [
      "by a key of the forger, where the text names the inspector's",
      (manifest) => {
        const own = JSON.parse(signedOf(manifest)[0].content).signature.key.id;
        withForgersKey(manifest);
        resigned(manifest, (record) => (record.signature.key.id = own));
        for (const signed of signedOf(manifest)) signed.signature.digest = signed.digest;
      },
      "by another key than that of the signer",
    ],
    [
      "with its signature stripped",
      (manifest) => {
        delete manifest.keys;
        for (const signed of signedOf(manifest)) delete signed.signature;
      },
      "the signature is not with it",
    ],
    [
      "made to look as if it were from before keys were kept",
      (manifest) => {
        delete manifest.keys;
        for (const signed of signedOf(manifest)) delete signed.signature;
        resigned(manifest, (record) => {
          accepted(record);
          delete record.signature.key;
        });
      },
      "it carries no signature",
    ],
    [
      "with another day beside the text than in it",
      (manifest) => {
        for (const signed of signedOf(manifest)) signed.signedAt = "2026-11-20T10:00:00.000Z";
      },
      "what stands beside the text is not what the text says",
    ],
  ];

  // The ordinary run takes every other one.
  it.each(forgeries.filter((_, i) => i % inDepth(2, 1) === 0))("%s", async (_, change, why) => {
    const shown = await shownOf(await broughtIn(change));
    for (const [where, text] of Object.entries(shown)) {
      expect(text, where).not.toContain(INSPECTOR);
      expect(text, where).not.toMatch(
        /Signer: Vesna|Signed, revision|: signed|Signed before|[Ss]igned revision/,
      );
      expect(text, where).toMatch(/Imported, (unverified|key of another installation)/);
      expect(text, where).toContain(why);
    }
  });

  it("and each lies here as it came: the log knows it, and nothing of it was changed", async () => {
    expect(await fresh().db.signedRevision.count()).toBeGreaterThan(inDepth(6, 11));
    expect((await verifyRecords(fresh().db, fresh().folder)).findings).toEqual([]);
  });

  it("and two records under one id do not come in at all", async () => {
    const { pen, folder, db } = fresh();
    const before = await db.signedRevision.count();
    const twice = repacked(archive, (manifest) => {
      const [inspection] = underOtherIds(manifest).jobs[0].inspections;
      manifest.jobs[0].inspections.push({ ...inspection, id: `${inspection.id}x`, number: 9 });
    });
    expect(await importArchive(pen, folder, twice)).toMatchObject({
      ok: false,
      issues: [{ code: "id-twice" }],
    });
    const same = repacked(archive, (manifest) => {
      const ids = signedOf(manifest).map(({ id }: { id: string }) => id);
      underOtherIds(manifest);
      resigned(manifest, accepted);
      signedOf(manifest).forEach((signed, i) => (signed.id = ids[i]));
    });
    expect(await importArchive(pen, folder, same)).toMatchObject({
      ok: false,
      issues: [{ code: "import-conflicts" }],
    });
    expect(await db.signedRevision.count()).toBe(before);
  });
});

describe("a true record in another installation", () => {
  const other = useFreshDb();

  it("says by which key, and that nobody here confirmed whose; then whose the owner says it is", async () => {
    const { pen, folder, db } = other();
    process.env["TOELINE_DATA"] = folder;
    try {
      // Somebody here is called by the same id: that makes the record no more theirs.
      const mark = { id: whole.inspectorId, name: "Odo Marsh", mark: "I-03", role: "inspector", salt: "s" };
      await db.person.create({ data: mark });
      const done = await importArchive(pen, folder, archive);
      expect(done).toMatchObject({ ok: true });
      const keys = await listKeys(db);
      const key = keys.find(({ until }) => until === null)!;
      const print = fingerprint(key.id);
      for (const [where, text] of Object.entries(await shownOf(whole.inspectionId))) {
        for (const name of [INSPECTOR, "Odo Marsh"]) expect(text, where).not.toContain(name);
        expect(text, where).toContain("Imported, key of another installation");
        expect(text, where).toContain(`The signature fits key ${print}`);
        expect(text, where).toContain("has not confirmed whose key that is");
      }
      const confirm = (told: string) =>
        confirmKey(pen, key.id, { told, whose: "Inspector of Bay 3" }, new Date("2026-11-27T08:00:00Z"));
      expect(await confirm(fingerprint(keys.find(({ id }) => id !== key.id)!.id))).toMatchObject({
        ok: false,
      });
      expect(await confirm(print.toUpperCase())).toMatchObject({ ok: true });
      for (const [where, text] of Object.entries(await shownOf(whole.inspectionId))) {
        expect(text, where).toContain("says whose it is: Inspector of Bay 3.");
        expect(text, where).not.toContain("Odo Marsh");
      }
    } finally {
      process.env["TOELINE_DATA"] = fresh().folder;
    }
  });
});

/** What never may travel: whatever opens a key. */
describe("an archive", () => {
  it("holds public keys with what became of them, and no private part", async () => {
    const manifest = manifestOf(archive);
    expect(manifest.keys).toHaveLength(2);
    const ended = manifest.keys.filter((key: LooseManifest) => key.until !== null);
    expect(ended).toMatchObject([{ untilReason: "passphrase-by-code" }]);
    const { box } = await fresh().db.sealedKey.findFirstOrThrow();
    const file = readFileSync(path.join(fresh().folder, "installation-key"), "utf8");
    expect(statSync(path.join(fresh().folder, "installation-key")).mode & 0o777).toBe(0o600);
    const text = Buffer.from(archive).toString("latin1");
    for (const secret of [(box as { locked: string }).locked, file]) expect(text).not.toContain(secret);
  });
});
