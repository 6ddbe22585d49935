import type { ReactNode } from "react";
import { prerender } from "react-dom/static";
import { beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { GET as cardPdf } from "@/app/api/beads/[beadId]/card.pdf/route";
import { GET as sheetPdf } from "@/app/api/beads/[beadId]/sheet.pdf/route";
import { GET as beadsCsv } from "@/app/api/export/beads.csv/route";
import { GET as marksCsv } from "@/app/api/export/marks.csv/route";
import { GET as inspectionPdf } from "@/app/api/inspections/[inspectionId]/pdf/route";
import BeadPage from "@/app/beads/[beadId]/page";
import CardPage from "@/app/beads/[beadId]/card/page";
import ComparePage from "@/app/beads/[beadId]/compare/page";
import SheetPage from "@/app/beads/[beadId]/sheet/page";
import FeedbackPage from "@/app/feedback/[handInId]/page";
import InspectionPage from "@/app/inspections/[inspectionId]/page";
import BeadsPage from "@/app/page";
import { emptyBeadContent, type BeadContent } from "@/lib/assess";
import type * as AssessFile from "@/lib/assess/assess";
import { addPhoto, createBead, getBead, saveBead } from "@/lib/beads";
import { createExercise, getExercise, handInBead } from "@/lib/classroom";
import { emptyExercise } from "@/lib/course";
import { JobContentSchema } from "@/lib/inspect";
import { attachBead, createInspection, createJob, draftRecord, seenDigest, signInspection } from "@/lib/jobs";
import { emptyDrawing, type Drawing } from "@/lib/marks";
import type * as CalibrateFile from "@/lib/measure/calibrate";
import { addPerson, addStudent, createGroup } from "@/lib/roster";
import { emptyRunSetup } from "@/lib/setup";
import { meltedFillet } from "../lib/assess/section-bead";
import { useFreshDb } from "../setup/fresh-db";
import { keyOf, PASSPHRASE } from "../setup/whole-record";

/**
 * The dear parts of a request are counted where they are done: each bead is assessed once, each photo that has a scale is
 * calibrated once, whatever the request shows of it.
 */
const done = vi.hoisted(() => ({ assessed: [] as string[], calibrated: [] as string[] }));
vi.mock("@/lib/assess/assess", async (original) => {
  const real = await original<typeof AssessFile>();
  const assess: typeof real.assess = (content, ...rest) => {
    done.assessed.push(content.title);
    return real.assess(content, ...rest);
  };
  return { ...real, assess };
});
vi.mock("@/lib/measure/calibrate", async (original) => {
  const real = await original<typeof CalibrateFile>();
  const calibrate: typeof real.calibrate = (scale, options) => {
    if (scale?.kind === "two-points") done.calibrated.push(`${scale.lengthMm} mm`);
    return real.calibrate(scale, options);
  };
  return { ...real, calibrate };
});
vi.mock("next/headers", () => ({
  headers: async () => new Headers({ host: "localhost:3000" }),
  cookies: async () => ({ get: () => undefined }),
}));
// What has nothing to do with a bead and wants a running Next around it.
vi.mock("@/components/shell/header", () => ({ Header: () => null }));
vi.mock("next/navigation", async (original) => ({
  ...(await original<object>()),
  useRouter: () => ({ refresh: () => undefined }),
}));

const fresh = useFreshDb();
let lap: string;
let tee: string;
let handInId: string;
let inspectionId: string;
let signerId: string;

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Two points `lengthMm` apart on the plate: the length tells the photos apart. */
function drawing(lengthMm: number): Drawing {
  return {
    ...emptyDrawing,
    scale: { kind: "two-points", a: { x: 100, y: 1100 }, b: { x: 100 + 20 * lengthMm, y: 1100 }, lengthMm },
    weldLine: [
      { x: 200, y: 600 },
      { x: 1400, y: 640 },
    ],
    marks: [300, 700].map((x) => ({
      id: `u${x}`,
      imperfection: "undercut",
      shape: {
        kind: "line",
        points: [
          { x, y: 607 },
          { x: x + 200, y: 643 },
        ],
      },
      place: "upper-toe",
      stretch: "run",
      patterns: ["continuous"],
      gauge: [],
      note: "",
    })),
  };
}

type Photo = Omit<BeadContent["photos"][number], "id">;

async function bead(title: string, photos: readonly Photo[], previousId?: string): Promise<string> {
  const { pen } = fresh();
  const { id } = value(await createBead(pen, { title, ...(previousId ? { previousId } : {}) }));
  for (const [i, { role }] of photos.entries()) {
    const sha256 = `${title}${i}`.padEnd(64, "0").replaceAll(/[^0-9a-f]/g, "a");
    value(await addPhoto(pen, id, { sha256, format: "jpeg", bytes: 9, widthPx: 2400, heightPx: 2000 }, role));
  }
  const stored = await getBead(pen.db, id);
  if (!stored) throw new Error("gone");
  const judgement = {
    ...emptyBeadContent.judgement,
    criteriaId: "iso-5817-c",
    sectionSetId: "aws-d1-1-macro-fillet",
  };
  const setup = { ...emptyRunSetup, joint: "tee" as const, thicknessMm: 10, targetLegMm: 6 };
  const drawn = stored.content.photos.map(({ id }, i) => ({ ...photos[i]!, id }));
  value(await saveBead(pen, id, stored.revision, { ...stored.content, setup, judgement, photos: drawn }));
  return id;
}

beforeAll(async () => {
  const { pen, folder } = fresh();
  process.env["TOELINE_DATA"] = folder;
  lap = await bead("Lap", [
    { role: "face", drawing: drawing(20) },
    { role: "face", drawing: emptyDrawing },
    { role: "section", drawing: drawing(30), section: meltedFillet },
  ]);
  tee = await bead("Tee", [{ role: "face", drawing: drawing(40) }], lap);

  const groupId = value(await createGroup(pen, "Bay 3")).id;
  await addStudent(pen, groupId, { name: "Marit Oddny", mark: "W-07" });
  const lesson = {
    title: "Lap",
    content: emptyExercise,
    open: true,
    withoutAccount: true,
    dueAt: null,
  };
  const exercise = await getExercise(pen.db, value(await createExercise(pen, groupId, lesson)).id);
  handInId = value(await handInBead(pen, exercise?.code ?? "", lap, "")).handInId;

  const welds = ["w1", "w2"].map((id) => ({ id, number: id }));
  const jobId = value(await createJob(pen, JobContentSchema.parse({ title: "Bracket", welds }))).id;
  value(await attachBead(pen, lap, { jobId, weldId: "w1" }));
  value(await attachBead(pen, tee, { jobId, weldId: "w2" }));
  inspectionId = value(await createInspection(pen, jobId)).id;
  const inspector = value(await addPerson(pen, { name: "Vesna Ling", mark: "I-03", role: "inspector" }));
  await keyOf(pen, inspector.id);
  signerId = inspector.id;
});

beforeEach(() => {
  done.assessed = [];
  done.calibrated = [];
});

const ofLap = { assessed: ["Lap"], calibrated: ["20 mm", "30 mm"] };
/** Once for what is said of the answer, and once by the renderer that writes the parts: the two of them share nothing. */
const ofLapTwice = { ...ofLap, assessed: ["Lap", "Lap"] };
const ofBoth = { assessed: ["Lap", "Tee"], calibrated: ["20 mm", "30 mm", "40 mm"] };
/** Lists and the table of beads say what was kept at the save; the table of marks measures, and asks for nothing else. */
const ofNone = { assessed: [], calibrated: [] };
const measured = { assessed: [], calibrated: ofBoth.calibrated };
const counted = () => ({ assessed: done.assessed.toSorted(), calibrated: done.calibrated.toSorted() });

const params = (beadId = lap) => ({ params: Promise.resolve({ beadId }) });
const asked = (search = {}) => ({ searchParams: Promise.resolve(search) });
const request = (path: string) =>
  new Request(`http://localhost:3000${path}`, { headers: { host: "localhost:3000" } });

/** Parts of a page may be asynchronous, so it is waited for whole. */
async function htmlOf(page: ReactNode): Promise<string> {
  const { prelude } = await prerender(page);
  return new Response(prelude).text();
}

describe("a page assesses each bead it shows once, and calibrates each of its scales once", () => {
  it.each([
    ["the workbench", () => BeadPage({ ...params(), ...asked() }), ofLapTwice],
    ["the sheet", () => SheetPage(params()), ofLap],
    ["the bench card", () => CardPage(params()), ofLap],
    ["two beads side by side", () => ComparePage({ ...params(tee), ...asked() }), ofBoth],
    ["the list, from what is kept", () => BeadsPage(asked()), ofNone],
    ["the list by verdict", () => BeadsPage(asked({ verdict: "cannot-say" })), ofNone],
    ["the hand-in", () => FeedbackPage({ params: Promise.resolve({ handInId }), ...asked() }), ofLap],
  ])("%s", async (_, page, expected) => {
    const html = await htmlOf(await page());
    expect(html).toContain("Lap");
    expect(counted()).toEqual(expected);
  });

  it("an inspection", async () => {
    await InspectionPage({ params: Promise.resolve({ inspectionId }) });
    expect(counted()).toEqual(ofBoth);
  });
});

describe("so does a file", () => {
  it.each([
    ["the sheet as PDF", () => sheetPdf(request("/sheet.pdf"), params()), ofLap],
    ["the bench card as PDF", () => cardPdf(request("/card.pdf"), params()), ofLap],
    ["beads as CSV", () => beadsCsv(request("/beads.csv?verdict=cannot-say")), ofNone],
    ["marks as CSV", () => marksCsv(request("/marks.csv?verdict=cannot-say")), measured],
    [
      "the draft of a record as PDF",
      () => inspectionPdf(request("/pdf?draft"), { params: Promise.resolve({ inspectionId }) }),
      ofBoth,
    ],
  ])("%s", async (_, get, expected) => {
    const response = await get();
    expect(response.status).toBe(200);
    expect((await response.arrayBuffer()).byteLength).toBeGreaterThan(500);
    expect(counted()).toEqual(expected);
  });
});

it("a save assesses its bead once, and nothing else", async () => {
  const { pen } = fresh();
  const { id, revision, content } = (await getBead(pen.db, tee))!;
  const judgement = { ...content.judgement, note: "Sounded even." };
  done.assessed = [];
  done.calibrated = [];
  expect((await saveBead(pen, id, revision, { ...content, judgement })).ok).toBe(true);
  expect(counted()).toEqual({ assessed: ["Tee"], calibrated: ["40 mm"] });
});

it("signing works out once what it freezes", async () => {
  const { pen, db } = fresh();
  const seen = seenDigest((await draftRecord(db, inspectionId))!);
  done.assessed = [];
  done.calibrated = [];
  const signed = await signInspection(pen, {
    inspectionId,
    signerId,
    passphrase: PASSPHRASE,
    seen,
    acknowledgement: "Open points seen.",
    reason: "",
    now: new Date("2026-11-26T10:00:00Z"),
  });
  expect(signed.ok).toBe(true);
  expect(counted()).toEqual(ofBoth);
});
