import type { Db, Tx } from "@/lib/db";
import { allSubjects, logParts } from "@/lib/store";
import type { ShopRows } from "./clear-plan";

/** The entry that ends the filling. */
const FILLED = "setting:demo.filled";
/** Entries of the filling that made nothing: what was there before, and settings. */
const madeNothing = new Set(["entered", "setting.written", "photo.sealed"]);
/** The installation's keys, and what it signed of the log, are its own for good: nothing of them is invented. */
const isOfTheHouse = (subject: string): boolean => /^(key|checkpoint):/.test(subject);

/** What the demo made and what became of it, from the log alone: so it holds for databases filled long ago. */
async function demoSubjects(db: Db | Tx): Promise<Pick<ShopRows, "demo" | "touched">> {
  const end =
    (await db.logEntry.findFirst({ where: { subject: FILLED }, orderBy: { seq: "asc" } }))?.seq ?? 0;
  const [demo, touched] = [new Set<string>(), new Set<string>()];
  for await (const part of logParts(db))
    for (const { seq, by, action, subject } of part) {
      if (seq < end && by === "system" && !madeNothing.has(action) && !isOfTheHouse(subject))
        demo.add(subject);
      if (seq > end && by !== "system" && demo.has(subject)) touched.add(subject);
    }
  return { demo, touched };
}

/** Whether a bead that the demo made is still there; quick, however long the log. */
export async function isDemoThere(db: Db): Promise<boolean> {
  const end = await db.logEntry.findFirst({ where: { subject: FILLED }, orderBy: { seq: "asc" } });
  if (!end) return false;
  const made = await db.logEntry.findMany({
    where: { seq: { lt: end.seq }, by: "system", action: "bead.made" },
    select: { subject: true },
  });
  const ids = made.map(({ subject }) => subject.slice("bead:".length));
  return (await db.bead.count({ where: { id: { in: ids } } })) > 0;
}

const all = (kind: string, ids: readonly (string | null | undefined)[]): readonly string[] =>
  ids.flatMap((id) => (id ? [`${kind}:${id}`] : []));

/** Everything between quotation marks in a JSON column: whatever id it names is among it. */
const quoted = (json: unknown): ReadonlySet<string> =>
  new Set([...JSON.stringify(json).matchAll(/"([^"\\]+)"/g)].map(([, text = ""]) => text));

export async function shopRows(db: Db | Tx): Promise<ShopRows> {
  const { demo, touched } = await demoSubjects(db);
  const needs = new Map(
    [
      ...(await beadNeeds(db)),
      ...(await courseNeeds(db)),
      ...(await jobNeeds(db)),
      ...(await criteriaNeeds(db)),
    ].map(([subject, needed]) => [subject, needed] as const),
  );
  const signed = (await db.signedRevision.findMany()).map(({ inspectionId, content }) => ({
    inspection: `inspection:${inspectionId}`,
    content,
  }));
  return { demo: await stillThere(db, demo), touched, needs, signed };
}

type Needs = (readonly [string, readonly string[]])[];

async function beadNeeds(db: Db | Tx): Promise<Needs> {
  const beads = await db.bead.findMany({
    select: { id: true, welderId: true, jobId: true, judgement: true },
  });
  const criteria = await criteriaByName(db);
  return beads.map(({ id, welderId, jobId, judgement }) => {
    const { criteriaId } = judgement as { readonly criteriaId?: string | null };
    return [
      `bead:${id}`,
      [
        ...all("person", [welderId]),
        ...all("job", [jobId]),
        ...all("criteria", [criteria.get(criteriaId ?? "")]),
      ],
    ];
  });
}

async function courseNeeds(db: Db | Tx): Promise<Needs> {
  const criteria = await criteriaByName(db);
  const exercises = await db.exercise.findMany();
  const handIns = await db.handIn.findMany();
  const groups = await db.group.findMany({ include: { members: { select: { personId: true } } } });
  const feedback = await db.feedback.findMany({ select: { handInId: true } });
  return [
    ...groups.map(({ id, members }): Needs[number] => [
      `group:${id}`,
      all(
        "person",
        members.map(({ personId }) => personId),
      ),
    ]),
    ...exercises.map(({ id, groupId, content }): Needs[number] => [
      `exercise:${id}`,
      [
        ...all("group", [groupId]),
        ...all(
          "criteria",
          [...quoted(content)].map((name) => criteria.get(name)),
        ),
      ],
    ]),
    ...handIns.map(({ id, exerciseId, beadId, personId }): Needs[number] => [
      `hand-in:${id}`,
      [...all("exercise", [exerciseId]), ...all("bead", [beadId]), ...all("person", [personId])],
    ]),
    ...feedback.map(({ handInId }): Needs[number] => [`feedback:${handInId}`, [`hand-in:${handInId}`]]),
  ];
}

async function jobNeeds(db: Db | Tx): Promise<Needs> {
  const jobs = await db.job.findMany({ include: { beads: { select: { id: true } } } });
  const inspections = await db.inspection.findMany();
  const persons = new Set((await db.person.findMany({ select: { id: true } })).map(({ id }) => id));
  const instruments = new Set((await db.instrument.findMany({ select: { id: true } })).map(({ id }) => id));
  return [
    ...jobs.map(({ id, content, beads }): Needs[number] => [
      `job:${id}`,
      [
        ...all(
          "person",
          [...quoted(content)].filter((one) => persons.has(one)),
        ),
        ...all(
          "bead",
          beads.map((bead) => bead.id),
        ),
      ],
    ]),
    ...inspections.map(({ id, jobId, draft }): Needs[number] => [
      `inspection:${id}`,
      [
        `job:${jobId}`,
        ...all(
          "instrument",
          [...quoted(draft)].filter((one) => instruments.has(one)),
        ),
      ],
    ]),
  ];
}

/** A version that is needed keeps the ones before it: a set begins with its first. */
async function criteriaNeeds(db: Db | Tx): Promise<Needs> {
  const versions = await db.shopCriteria.findMany({ select: { id: true, key: true, version: true } });
  return versions.map(({ id, key, version }) => [
    `criteria:${id}`,
    versions.flatMap((one) => (one.key === key && one.version < version ? [`criteria:${one.id}`] : [])),
  ]);
}

/** Row ids of the shop's own limits by the name that beads give them: "shop-KEY@VERSION". */
async function criteriaByName(db: Db | Tx): Promise<ReadonlyMap<string, string>> {
  const versions = await db.shopCriteria.findMany({ select: { id: true, key: true, version: true } });
  return new Map(versions.map(({ id, key, version }) => [`${key}@${version}`, id]));
}

/** Without what was deleted since. */
async function stillThere(db: Db | Tx, subjects: ReadonlySet<string>): Promise<ReadonlySet<string>> {
  const there = new Set(await allSubjects(db));
  return new Set([...subjects].filter((subject) => there.has(subject)));
}
