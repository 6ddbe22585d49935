import type { ReactNode } from "react";
import { prerender } from "react-dom/static";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { GET as inspectionPdf } from "@/app/api/inspections/[inspectionId]/pdf/route";
import InspectionPage from "@/app/inspections/[inspectionId]/page";
import RevisionPage from "@/app/inspections/[inspectionId]/revisions/[revision]/page";
import { archiveOf, importArchive, jobsAlong } from "@/lib/archive";
import { plain, readPdf } from "../lib/pdf/read-pdf";
import { repacked, resigned, underOtherIds, type LooseManifest } from "../setup/forge";
import { useFreshDb } from "../setup/fresh-db";
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

describe("a forged record never looks signed by somebody here", () => {
  it.each<[string, (manifest: LooseManifest) => void]>([
    [
      "with its result changed",
      (manifest) =>
        resigned(manifest, (record) => {
          record.result = "accepted";
          for (const one of record.weldResults) one.result = "accepted";
        }),
    ],
    [
      "with its statement changed",
      (manifest) => resigned(manifest, (record) => (record.statement = "All welds are sound.")),
    ],
    [
      "with its identification changed",
      (manifest) => resigned(manifest, (record) => (record.signature.signer.mark = "I-99")),
    ],
  ])("%s", async (_, change) => {
    const shown = await shownOf(await broughtIn(change));
    for (const [where, text] of Object.entries(shown)) {
      expect(text, where).not.toContain(INSPECTOR);
      expect(text, where).not.toMatch(
        /Signer: Vesna|Signed, revision|: signed, revision|signed revision 1|Signed before/,
      );
    }
  });
});
