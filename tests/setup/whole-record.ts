import { Readable } from "node:stream";
import { emptyBeadContent } from "@/lib/assess";
import { emptyExercise, emptyFeedback } from "@/lib/course";
import { JobContentSchema } from "@/lib/inspect";
import { emptyDrawing } from "@/lib/marks";
import { addPhoto, attachPhoto, createBead, deleteBead, getBead, saveBead } from "@/lib/beads";
import {
  addPhrase,
  createExercise,
  getExercise,
  handInBead,
  replyToFeedback,
  returnFeedback,
  saveFeedback,
} from "@/lib/classroom";
import { saveFilter } from "@/lib/find";
import {
  addInstrument,
  addStudy,
  attachBead,
  createInspection,
  createJob,
  draftRecord,
  saveInspection,
  seenDigest,
  signInspection,
} from "@/lib/jobs";
import { CardSchema, proposeRanges } from "@/lib/cards";
import { startRound } from "@/lib/drill";
import { addPerson, addStudent, createGroup, setAccount } from "@/lib/roster";
import { beginByCard, beginRun, createCard, createTrial } from "@/lib/series";
import { saveSetup, saveShopSet } from "@/lib/shop";
import { preparePersonKey, writePersonKey } from "@/lib/keys";
import { writeSetting, type Pen } from "@/lib/store";
import { RunSetupSchema } from "@/lib/setup";
import { handbook } from "../lib/gauge/handbook";
import { base, trialOf } from "../lib/trials/simulated";
import type { FreshDb } from "./fresh-db";
import { smallPhoto } from "./small-shop";

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

export const PASSPHRASE = "eleven copper kettles";

/** An account and a signing key for the inspector, without the accounts library, which takes its time. */
export async function keyOf(pen: Pen, inspectorId: string, at = "2026-11-25T08:00:00.000Z"): Promise<void> {
  value(await setAccount(pen, inspectorId, `account-of-${inspectorId}`));
  const prepared = await preparePersonKey(pen.db, inspectorId, null, PASSPHRASE);
  const by = `person:${inspectorId}`;
  await pen.db.$transaction((tx) =>
    writePersonKey(tx, by, inspectorId, prepared, { at, setBy: "code:owner" }),
  );
}

export interface WholeRecord {
  readonly studentId: string;
  readonly inspectorId: string;
  readonly groupId: string;
  readonly exerciseId: string;
  readonly handInId: string;
  readonly beadId: string;
  readonly jobId: string;
  readonly inspectionId: string;
  readonly sha256: string;
}

/** One row at least in every table of the record, written by the program's own functions. */
export async function fillWholeRecord({ pen, folder }: FreshDb): Promise<WholeRecord> {
  const { db } = pen;
  const groupId = value(await createGroup(pen, "Bay 3")).id;
  const student = value(await addStudent(pen, groupId, { name: "Marit Oddny", mark: "W-07" }));
  const inspector = value(
    await addPerson(pen, { name: "Vesna Ling", mark: "I-03", role: "inspector", also: ["instructor"] }),
  );
  // The first key ends with the second, so that something has become of a key.
  await keyOf(pen, inspector.id, "2026-11-25T07:00:00.000Z");
  await keyOf(pen, inspector.id);
  const first = value(await createBead(pen, { title: "Lap", welder: "Marit Oddny", welderId: student.id }));
  const next = { title: "Lap, try 2", welderId: student.id, previousId: first.id };
  const beadId = value(await createBead(pen, next)).id;
  const source = Readable.from([await smallPhoto(3, 640, 480)]);
  const arriving = { dataDir: folder, source, declaredBytes: null };
  const attached = await attachPhoto(db, arriving, (photo) => addPhoto(pen, beadId, photo, "face"));
  if (!attached.ok) throw new Error("no photo");
  const { sha256 } = attached.photo;
  const photoId = (await getBead(db, beadId))?.photos[0]?.id ?? "";
  const content = { ...emptyBeadContent, title: "Lap, chipped", welder: "Marit Oddny" };
  const photos = [{ id: photoId, role: "face" as const, drawing: emptyDrawing }];
  value(await saveBead(pen, beadId, 1, { ...content, photos }));

  const spoilt = value(
    await createBead(pen, { title: "Spoilt", welder: "Marit Oddny", welderId: student.id }),
  );
  value(await deleteBead(pen, spoilt.id, new Date("2026-11-25T08:00:00Z")));

  const exerciseId = value(
    await createExercise(pen, groupId, {
      title: "Lap on 2 mm",
      content: { ...emptyExercise, joint: "lap" },
      open: true,
      withoutAccount: true,
      dueAt: null,
    }),
  ).id;
  const code = (await getExercise(db, exerciseId))?.code ?? "";
  const { handInId } = value(await handInBead(pen, code, beadId, "my second"));
  value(await saveFeedback(pen, handInId, 0, { ...emptyFeedback, remark: "Nearly there." }, inspector.id));
  value(await returnFeedback(pen, handInId, 1, inspector.id, new Date("2026-11-25T09:00:00Z")));
  value(await replyToFeedback(pen, handInId, "I will.", new Date("2026-11-25T09:30:00Z")));
  value(await addPhrase(pen, "Keep the stick-out even.", null));
  value(await saveSetup(pen, "Lap, 2 mm", RunSetupSchema.parse({})));
  value(await saveFilter(pen, "Laps", {} as never));
  await writeSetting(pen, "units", "mm");
  const undercut = {
    id: "undercut",
    title: "Undercut",
    imperfections: ["undercut"],
    quantity: "depth",
    limit: 0.8,
  };
  value(await saveShopSet(pen, null, 0, { title: "First week", rows: [undercut], note: "" }, "Instructor"));

  await fillSeries(pen, student.id);

  const gauge = value(await addInstrument(pen, { kind: "fillet-gauge", name: "Gauge 2", serial: "F-2" }));
  value(await addStudy(pen, gauge.id, handbook));
  const weld = { id: "w1", number: "W1", welderId: student.id };
  const job = JobContentSchema.parse({ title: "Bracket run 4", welds: [weld] });
  const jobId = value(await createJob(pen, job)).id;
  value(await attachBead(pen, beadId, { jobId, weldId: "w1" }));
  const inspectionId = value(await createInspection(pen, jobId)).id;
  const welds = [{ weldId: "w1", seen: { kind: "percent", percent: 100 } }];
  const draft = { examinedOn: "2026-11-25", lightLux: 520, instrumentIds: [gauge.id], welds };
  value(await saveInspection(pen, inspectionId, 1, draft));
  const record = await draftRecord(db, inspectionId);
  if (!record) throw new Error("no draft to sign");
  value(
    await signInspection(pen, {
      inspectionId,
      signerId: inspector.id,
      passphrase: PASSPHRASE,
      seen: seenDigest(record),
      acknowledgement: "Open points seen.",
      reason: "",
      now: new Date("2026-11-25T10:00:00Z"),
    }),
  );
  const [studentId, inspectorId] = [student.id, inspector.id];
  return { studentId, inspectorId, groupId, exerciseId, handInId, beadId, jobId, inspectionId, sha256 };
}

/** A trial and a card with a bead each, and a round of the trained eye. */
async function fillSeries(pen: Pen, personId: string): Promise<void> {
  const trial = value(await createTrial(pen, trialOf(1), null));
  value(await beginRun(pen, trial.id, { place: 0, at: [] }, null));
  const ranges = proposeRanges(base);
  const card = CardSchema.parse({ title: "Tee", setup: { ...base, amps: 150 }, ranges, code: "aws-d1-1" });
  value(await beginByCard(pen, value(await createCard(pen, card, null)).id, null));
  const drawn = Array.from({ length: 6 }, (_, i) => `drawn-${i}`);
  const round = { look: "plain", level: "iso-5817-c", drawn } as const;
  value(await startRound(pen, personId, round, new Date("2026-11-25T11:00:00Z")));
}
