import { ok, type Result } from "@/lib/base";
import { letGoPhoto } from "@/lib/beads";
import { withoutTriggers, type Db, type Tx } from "@/lib/db";
import { writing, type Pen, type RecordIssue } from "@/lib/store";
import { planClearing } from "./clear-plan";
import { shopRows } from "./shop-rows";

/** Counts of rows: what went, and what of the demo stays because somebody worked on it or a record needs it. */
export interface Cleared {
  readonly gone: number;
  readonly beadsGone: number;
  readonly staying: number;
}

type Kind = keyof typeof removers;

/** In this order nothing is taken away under something that still points to it. */
const removers = {
  feedback: async (tx: Tx, id: string) => {
    // What was returned is signed; a signature over nothing would say that something was taken out.
    await tx.keySignature.deleteMany({ where: { subject: `feedback:${id}` } });
    await tx.feedback.delete({ where: { handInId: id } });
  },
  "hand-in": (tx: Tx, id: string) => tx.handIn.delete({ where: { id } }),
  exercise: (tx: Tx, id: string) => tx.exercise.delete({ where: { id } }),
  bead: (tx: Tx, id: string) => tx.bead.delete({ where: { id } }),
  inspection: (tx: Tx, id: string) => tx.inspection.delete({ where: { id } }),
  job: (tx: Tx, id: string) => tx.job.delete({ where: { id } }),
  instrument: (tx: Tx, id: string) => tx.instrument.delete({ where: { id } }),
  group: (tx: Tx, id: string) => tx.group.delete({ where: { id } }),
  person: (tx: Tx, id: string) => tx.person.delete({ where: { id } }),
  setup: (tx: Tx, id: string) => tx.savedSetup.delete({ where: { id } }),
  criteria: (tx: Tx, id: string) => tx.shopCriteria.delete({ where: { id } }),
} as const;

const kindOf = (subject: string): string => subject.slice(0, subject.indexOf(":"));
const idOf = (subject: string): string => subject.slice(subject.indexOf(":") + 1);

/** What clearing the demo would do now; null: there is nothing of it left that could go. */
export async function demoToClear(db: Db): Promise<Cleared | null> {
  const { goes, stays } = planClearing(await shopRows(db));
  return goes.size === 0 ? null : counted(goes, stays);
}

function counted(goes: ReadonlySet<string>, stays: ReadonlySet<string>): Cleared {
  const beadsGone = [...goes].filter((subject) => kindOf(subject) === "bead").length;
  return { gone: goes.size, beadsGone, staying: stays.size };
}

/**
 * Takes the invented shop away, each row with an entry in the log. Its invented feedback was returned and signed, and its
 * limits are versions, which nothing else may delete: the guards are lifted within the one transaction that takes them.
 */
export async function clearDemoShop(pen: Pen, dataDir: string): Promise<Result<Cleared, RecordIssue>> {
  const photos: string[] = [];
  const done = await writing(pen, async (tx, log) => {
    const { goes, stays } = planClearing(await shopRows(tx));
    const beads = [...goes].filter((subject) => kindOf(subject) === "bead").map(idOf);
    const taken = await tx.photo.findMany({ where: { beadId: { in: beads } }, select: { sha256: true } });
    photos.push(...taken.map(({ sha256 }) => sha256));
    const after = await tx.bead.findMany({ where: { previousId: { in: beads } } });
    await withoutTriggers(tx, guarded, async () => {
      for (const kind of Object.keys(removers) as Kind[])
        for (const subject of [...goes].filter((one) => kindOf(one) === kind)) {
          await removers[kind](tx, idOf(subject));
          await log(subject, "demo.cleared");
        }
    });
    for (const { id, previousId } of after)
      if (!goes.has(`bead:${id}`)) await log(`bead:${id}`, "bead.previous-deleted", { previous: previousId });
    return ok(counted(goes, stays));
  });
  if (done.ok) for (const sha256 of new Set(photos)) await letGoPhoto(pen.db, dataDir, sha256);
  return done;
}

/** What would refuse it, each on its table. */
const guarded = {
  Feedback_no_delete: "Feedback",
  ShopCriteria_no_delete: "ShopCriteria",
  KeySignature_no_delete: "KeySignature",
} as const;
