import { makeToken, openAccount } from "@/lib/account";
import { emptyBeadContent } from "@/lib/assess";
import { getBead, saveBead } from "@/lib/beads";
import { CardSchema, proposeRanges } from "@/lib/cards";
import { createExercise } from "@/lib/classroom";
import { addInstrument, addStudy, createInspection, createJob } from "@/lib/jobs";
import type { Role, Scope } from "@/lib/people";
import { addPerson, addStudent, createGroup, setAccount } from "@/lib/roster";
import { beginByCard, beginRun, createCard, createTrial } from "@/lib/series";
import { saveShopSet } from "@/lib/shop";
import type { Pen } from "@/lib/store";
import { smallBead } from "../../setup/small-shop";
import { handbook } from "../../lib/gauge/handbook";
import { base, trialOf } from "../../lib/trials/simulated";

export function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** A person with an account, whose tokens reach as far as it is said. */
export async function personWith(
  pen: Pen,
  role: Role,
  signInName: string,
  mark = `${role.slice(0, 2).toUpperCase()}-1`,
) {
  const person = value(await addPerson(pen, { name: `The ${role}`, mark, role }));
  const userId = value(await openAccount(pen.db, signInName));
  value(await setAccount(pen, person.id, userId));
  const token = async (scopes: readonly Scope[]): Promise<string> =>
    value(await makeToken(pen.db, userId, { name: "test", scopes, days: 1 }));
  return { id: person.id, mark, token };
}

/** Limits as a person writes them. */
export const limits = (limit: number) => ({
  title: "Stringers, first week",
  note: "",
  rows: [
    { id: "width", title: "Width", imperfections: [], quantity: "width", limit, windowMm: null, note: "" },
  ],
});

/** One of everything that an address can name. Place in an address -> what stands in it. */
export async function furnish(pen: Pen, folder: string, welderId: string): Promise<Record<string, string>> {
  const { id: beadId, sha256 } = await smallBead(pen, folder, 1);
  const photoId = (await getBead(pen.db, beadId))?.photos[0]?.id ?? "";
  const trial = value(await createTrial(pen, trialOf(1), welderId));
  value(await beginRun(pen, trial.id, { place: 0, at: [] }, welderId));
  value(await createTrial(pen, trialOf(1), null));
  const content = {
    title: "Tee",
    setup: { ...base, amps: 150 },
    ranges: proposeRanges(base),
    code: "aws-d1-1",
  };
  const card = value(await createCard(pen, CardSchema.parse(content), null));
  value(await beginByCard(pen, card.id, welderId));
  value(await beginByCard(pen, card.id, null));
  const group = value(await createGroup(pen, "Bay 4"));
  value(await addStudent(pen, group.id, { name: "Student One", mark: "S-1" }));
  const exercise = value(
    await createExercise(pen, group.id, {
      ...{ title: "Tee, flat", content: {}, open: true, withoutAccount: false },
      dueAt: "2026-11-30T16:00:00Z",
    }),
  );
  const job = value(await createJob(pen, { title: "Bracket run 4", welds: [{ id: "w1", number: "1" }] }));
  const inspection = value(await createInspection(pen, job.id));
  const gauge = value(await addInstrument(pen, { kind: "fillet-gauge", name: "Gauge 2" }));
  const study = value(await addStudy(pen, gauge.id, handbook));
  const set = value(await saveShopSet(pen, null, 0, limits(9), "Owner"));
  value(await saveBead(pen, beadId, 2, { ...emptyBeadContent, title: "Tee 1", setup: base }));
  return {
    ...{ beadId, photoId, sha256, size: "small", trialId: trial.id, cardId: card.id, groupId: group.id },
    ...{ exerciseId: exercise.id, jobId: job.id, inspectionId: inspection.id, studyId: study.id },
    ...{ key: set.key, code: "CCCCCC" },
  };
}
