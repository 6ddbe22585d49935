import { describe, expect, it } from "vitest";
import { deleteBead, restoreBead } from "@/lib/beads";
import { CardSchema, proposeRanges } from "@/lib/cards";
import {
  beginByCard,
  beginRun,
  cardOfBead,
  createCard,
  createTrial,
  getCard,
  getTrial,
  listCards,
  listTrials,
  retireCard,
  trialOfBead,
} from "@/lib/series";
import { allSubjects } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { getBead } from "@/lib/beads";
import { useFreshDb } from "../../setup/fresh-db";
import { base, trialOf } from "../trials/simulated";

const fresh = useFreshDb();
type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly { code: string }[] };
function value<T>(result: Outcome<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const trial = trialOf(1);
const now = new Date("2026-11-26T12:00:00Z");

describe("a stored trial", () => {
  it("begins each bead from its point, once", async () => {
    const { pen, db } = fresh();
    const made = value(await createTrial(pen, trial, null));
    expect(made).toMatchObject({ number: 1, revision: 1, runs: [], content: trial });
    const { beadId } = value(await beginRun(pen, made.id, { place: 0, at: [] }, null));
    const bead = (await getBead(db, beadId))!;
    expect(bead.content.judgement.planned!.travelSpeedMmPerMin).toBe(trial.points[0]![0]);
    // To be run so is not run so.
    expect(bead.content.setup).toMatchObject({ joint: "tee", travelSpeedMmPerMin: null, volts: null });
    expect(bead.content.title).toBe(`${trial.title}, run 1`);
    expect(await beginRun(pen, made.id, { place: 0, at: [] }, null)).toMatchObject({
      ok: false,
      issues: [{ code: "trial-changed-elsewhere" }],
    });
    expect(await trialOfBead(db, beadId)).toMatchObject({ place: 0, trial: { id: made.id, revision: 2 } });
  });

  it("takes the point that is proposed next, and none beyond it", async () => {
    const { pen, db } = fresh();
    const made = value(await createTrial(pen, trial, null));
    const next = trial.points.length;
    expect((await beginRun(pen, made.id, { place: next + 1, at: [300] }, null)).ok).toBe(false);
    value(await beginRun(pen, made.id, { place: next, at: [300] }, null));
    expect((await getTrial(db, made.id))!.content.points.at(-1)).toEqual([300]);
    expect(await beginRun(pen, made.id, { place: next + 1, at: [1, 2] }, null)).toMatchObject({
      issues: [{ code: "trial-not-understood" }],
    });
  });

  it("is refused where it is none, or gone", async () => {
    const { pen } = fresh();
    expect(await createTrial(pen, { ...trial, knobs: [] }, null)).toMatchObject({
      issues: [{ code: "trial-not-understood" }],
    });
    expect(await beginRun(pen, "nowhere", { place: 0, at: [] }, null)).toMatchObject({
      issues: [{ code: "trial-gone" }],
    });
  });

  it("belongs to a person where it was made by one", async () => {
    const { pen, db } = fresh();
    value(await createTrial(pen, trial, "somebody"));
    expect(await listTrials(db, { personId: "somebody" })).toHaveLength(1);
    expect((await listTrials(db)).length).toBeGreaterThan(2);
  });
});

describe("a stored card", () => {
  const card = CardSchema.parse({
    title: "Tee",
    setup: { ...base, amps: 150 },
    ranges: proposeRanges(base),
    code: "aws-d1-1",
  });

  it("begins beads that know it, without what was read on the bead it came from", async () => {
    const { pen, db } = fresh();
    const made = value(await createCard(pen, card, null));
    const { beadId } = value(await beginByCard(pen, made.id, null));
    const { setup, judgement } = (await getBead(db, beadId))!.content;
    expect(judgement.planned).toMatchObject({ volts: base.volts, amps: null });
    expect(setup).toMatchObject({ electrodeClass: base.electrodeClass, volts: null, polarity: null });
    expect(await cardOfBead(db, beadId)).toMatchObject({ id: made.id, beadIds: [beadId] });
    value(await retireCard(pen, made.id, new Date("2026-11-26T12:00:00Z")));
    expect((await getCard(db, made.id))!.retiredAt).toBe("2026-11-26T12:00:00.000Z");
    expect(await listCards(db)).toHaveLength(1);
    expect((await retireCard(pen, "nowhere", null)).ok).toBe(false);
    expect((await createCard(pen, { ...card, title: "" }, null)).ok).toBe(false);
  });
});

describe("the log", () => {
  it("seals trials and cards, and finds what was changed behind its back", async () => {
    const { db, folder } = fresh();
    expect((await verifyRecords(db, folder)).findings).toEqual([]);
    const subjects = await allSubjects(db);
    expect(
      subjects.some((one) => one.startsWith("trial:")) && subjects.some((one) => one.startsWith("card:")),
    ).toBe(true);
    const [link] = await db.trialBead.findMany();
    await db.trialBead.update({ where: { beadId: link!.beadId }, data: { place: 77 } });
    expect((await verifyRecords(db, folder)).findings).toHaveLength(1);
    await db.trialBead.update({ where: { beadId: link!.beadId }, data: { place: link!.place } });
  });

  it("stays whole when a bead of a series is deleted and comes back", async () => {
    const { db, pen, folder } = fresh();
    const [link] = await db.trialBead.findMany();
    value(await deleteBead(pen, link!.beadId, now));
    expect((await verifyRecords(db, folder)).findings).toEqual([]);
    expect((await trialOfBead(db, link!.beadId))!.place).toBe(link!.place);
    const [gone] = await db.deletedBead.findMany();
    value(await restoreBead(pen, gone!.id, now));
    expect((await verifyRecords(db, folder)).findings).toEqual([]);
  });
});
