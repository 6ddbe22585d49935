import { emptyInspection, wholeWeld, type JobContent } from "@/lib/inspect";
import { addInstrument, attachBead, createInspection, createJob, saveInspection } from "@/lib/jobs";
import type { Pen } from "@/lib/store";
import { dayAgo, made } from "./made";
import { demoShop } from "./beads";

interface DemoWeld {
  readonly beadId: string;
  readonly welderId: string;
}

const job = (first: DemoWeld, second: DemoWeld): Partial<JobContent> => ({
  title: "Hopper stand for bay 6",
  maker: demoShop,
  contract: "HB-0612",
  procedure: "WPS HB-11",
  process: "FCAW-G",
  criteriaId: "aws-d1-1-static",
  parts: [
    { id: "p1", name: "Leg plate, left", drawing: "HB-0612-1", material: "carbon steel", thicknessMm: 10 },
    { id: "p2", name: "Leg plate, right", drawing: "HB-0612-2", material: "carbon steel", thicknessMm: 8 },
  ],
  welds: [weld("W1", "p1", first.welderId), weld("W2", "p2", second.welderId)],
});

const weld = (number: string, partId: string, welderId: string): JobContent["welds"][number] => ({
  id: number.toLowerCase(),
  number,
  partId,
  joint: "groove-backed",
  position: "flat",
  welderId,
  welderMark: "",
  lengthMm: 240,
  asked: wholeWeld,
  askedNote: "",
});

/** A job of two parts with a bead on each weld, a gauge in date, and an inspection begun and not signed. */
export async function addDemoJob(pen: Pen, first: DemoWeld, second: DemoWeld): Promise<void> {
  const { id: jobId } = made(await createJob(pen, job(first, second)));
  made(await attachBead(pen, first.beadId, { jobId, weldId: "w1" }));
  made(await attachBead(pen, second.beadId, { jobId, weldId: "w2" }));
  const gauge = await addInstrument(pen, {
    kind: "undercut-gauge",
    name: "Undercut gauge, bay 6",
    serial: "HB-UG-2",
    resolution: 0.1,
    calibratedOn: dayAgo(90),
    dueOn: dayAgo(-275),
  });
  const inspection = made(await createInspection(pen, jobId));
  made(
    await saveInspection(pen, inspection.id, inspection.revision, {
      ...emptyInspection,
      ...inspection.draft,
      examinedOn: dayAgo(1),
      look: "direct",
      lightLux: 820,
      distanceMm: 350,
      angleDeg: 60,
      surface: "chipped and brushed",
      instrumentIds: [made(gauge).id],
      welds: [
        { weldId: "w1", seen: wholeWeld, seenNote: "" },
        {
          weldId: "w2",
          seen: { kind: "length", lengthMm: 150 },
          seenNote: "the end by the gusset is in shade",
        },
      ],
      remarks: "Second weld to be looked at again by daylight.",
    }),
  );
}
