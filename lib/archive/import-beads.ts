import { setImmediate as turn } from "node:timers/promises";
import { shopSetId } from "@/lib/accept";
import { fail, issue, ok, type Issue, type Result } from "@/lib/base";
import { letGoPhoto, photoColumn, keepFacts } from "@/lib/beads";
import { writeTogether, type Db, type Tx } from "@/lib/db";
import {
  exchangeSentence,
  unpackSteps,
  type ExchangeBead,
  type ExchangePhoto,
  type ExchangeIssue,
  type UnpackedArchive,
} from "@/lib/exchange";
import { emptyDrawing } from "@/lib/marks";
import { photoSentence, receivePhoto, viewSeals, type PhotoIssue } from "@/lib/photo";
import { writeShopSet } from "@/lib/shop";
import { guardStore, writeLog, recordSentence, type Pen, type RecordIssue } from "@/lib/store";
import { sha256Bytes } from "./export-beads";
import { alongOf, placeBeads, unsoundSigned, writeJobs } from "./import-jobs";
import { planImport, type ImportPlan } from "./import-plan";
import { writeSeries, type ArrivedBeads } from "./import-series";

export type { ImportPlan } from "./import-plan";

/**
 * - `import-conflicts`: `data.conflicts` beads are here with other content and nobody said what to do with them.
 * - `import-signed-changed`: a signed revision of inspection `data.number` is not what was signed.
 * - `import-criteria-differ`: limits of the shop's own (`data.id`) are here with other content.
 * - `import-photo-facts`: a photo is not the size or kind its list says (`data.name`).
 * - `import-photo-refused`: a photo that this installation does not take in (`data.name`, `data.why`).
 * - `import-photo-twice`: one picture stands twice on one bead (`data.number`).
 * - `import-photo-id-twice`: two beads of the archive share a photo's id (`data.id`).
 */
type OwnIssue = Issue<
  | "import-conflicts"
  | "import-criteria-differ"
  | "import-signed-changed"
  | "import-photo-facts"
  | "import-photo-refused"
  | "import-photo-twice"
  | "import-photo-id-twice"
>;
export type ImportIssue = OwnIssue | ExchangeIssue | RecordIssue;

const ownSentences: Readonly<Record<OwnIssue["code"], (data: OwnIssue["data"]) => string>> = {
  "import-conflicts": ({ conflicts }) =>
    `${conflicts} of these beads, jobs, trials or cards are here already with other content. Nothing was imported; say whether to leave those as they are here and import the rest.`,
  "import-signed-changed": ({ number }) =>
    `A signed record of inspection ${number} in this archive is not what was signed. Nothing was imported; fetch the archive again from where it came.`,
  "import-criteria-differ": ({ id, title }) =>
    `Beads of this archive were judged by "${title}" (${id}), and here that version says something else. A verdict would not mean the same, so nothing was imported. Where the archive came from, save those limits under another title, judge the beads by them and export again.`,
  "import-photo-facts": ({ name }) =>
    `"${name}" is not the picture the archive's list describes. Nothing was imported; export the archive again.`,
  "import-photo-refused": ({ name, why }) =>
    `"${name}" could not be taken in, so nothing was imported. ${why}`,
  "import-photo-twice": ({ number }) =>
    `Bead ${number} of this archive carries one picture twice. Nothing was imported; export it again.`,
  "import-photo-id-twice": ({ id }) =>
    `Two beads of this archive share the photo id "${id}". Nothing was imported; export it again.`,
};

/** One clear sentence for whatever kept an archive out. */
export function importSentence(found: ImportIssue): string {
  if (Object.hasOwn(ownSentences, found.code)) return ownSentences[(found as OwnIssue).code](found.data);
  return found.code.startsWith("store-")
    ? recordSentence(found as RecordIssue)
    : exchangeSentence(found as ExchangeIssue);
}

/** Reads an archive and says what importing it would do. Writes nothing. */
export async function checkArchive(db: Db, bytes: Uint8Array): Promise<Result<ImportPlan, ImportIssue>> {
  const archive = await readArchive(bytes);
  return archive.ok ? ok(await planImport(db, archive.value.manifest)) : archive;
}

/**
 * Imports an archive, all or nothing: photos first, into the store where they harm nobody, then every bead with its
 * entry in the log in one transaction. Beads that are here with other content stop it unless `leaveConflicts`.
 */
export async function importArchive(
  pen: Pen,
  dataDir: string,
  bytes: Uint8Array,
  options: { readonly leaveConflicts: boolean } = { leaveConflicts: false },
): Promise<Result<ImportPlan, ImportIssue>> {
  const archive = await readArchive(bytes);
  if (!archive.ok) return archive;
  const before = await planImport(pen.db, archive.value.manifest);
  const refused = refusalOf(before, options.leaveConflicts);
  if (refused) return fail(refused);
  const fresh = new Set(before.beads.flatMap(({ id, fate }) => (fate === "new" ? [id] : [])));
  const beads = archive.value.manifest.beads.filter(({ id }) => fresh.has(id));
  const freshJobs = new Set(before.jobs.flatMap(({ id, fate }) => (fate === "new" ? [id] : [])));
  const jobs = (archive.value.manifest.jobs ?? []).filter(({ id }) => freshJobs.has(id));
  const arriving = [...beads.flatMap(({ photos }) => photos), ...jobs.flatMap(({ evidence }) => evidence)];
  const stored: string[] = [];
  try {
    const photos = await storePhotos(dataDir, arriving, archive.value, stored);
    const written = photos.ok
      ? await writeAll(pen, archive.value, { archive: sha256Bytes(bytes), seals: photos.value }, options)
      : photos;
    if (!written.ok) await takeBack(pen.db, dataDir, stored);
    return written;
  } catch (error) {
    await takeBack(pen.db, dataDir, stored);
    throw error;
  }
}

/** What keeps the whole archive out; null: nothing does. */
function refusalOf({ criteria, conflicts }: ImportPlan, leaveConflicts: boolean): OwnIssue | null {
  const found = criteria.find(({ fate }) => fate === "differs");
  if (found) return issue("import-criteria-differ", [], { id: found.id, title: found.title });
  return conflicts > 0 && !leaveConflicts ? issue("import-conflicts", [], { conflicts }) : null;
}

/** The shop's own limits that are not here yet, so that the beads are judged as they were. */
async function writeCriteria(
  tx: Tx,
  by: string,
  { criteria = [] }: UnpackedArchive["manifest"],
  plan: ImportPlan,
  archive: string,
): Promise<void> {
  const fresh = new Set(plan.criteria.flatMap(({ id, fate }) => (fate === "new" ? [id] : [])));
  for (const set of criteria.filter((one) => fresh.has(shopSetId(one)))) {
    const id = await writeShopSet(tx, set);
    const detail = { version: set.version, archive };
    await writeLog(tx, { by, subject: `criteria:${id}`, action: "criteria.imported", detail });
  }
}

/** Hashing an archive of a gigabyte takes seconds: others have their turn between two of its files. */
async function unpackInSlices(bytes: Uint8Array): Promise<Result<UnpackedArchive, ExchangeIssue>> {
  const steps = unpackSteps(bytes, sha256Bytes);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    await turn();
  }
}

async function readArchive(bytes: Uint8Array): Promise<Result<UnpackedArchive, ImportIssue>> {
  const archive = await unpackInSlices(bytes);
  if (!archive.ok) return archive;
  const unsound = unsoundSigned(archive.value.manifest);
  if (unsound) return fail(issue("import-signed-changed", [], unsound));
  const { beads } = archive.value.manifest;
  const twice = beads.find(({ photos }) => new Set(photos.map(({ sha256 }) => sha256)).size < photos.length);
  if (twice) return fail(issue("import-photo-twice", [], { number: twice.number }));
  const seen = new Set<string>();
  const ids = beads.flatMap(({ photos }) => photos.map(({ id }) => id));
  const shared = ids.find((id) => seen.size === seen.add(id).size);
  return shared === undefined ? archive : fail(issue("import-photo-id-twice", [], { id: shared }));
}

/** Seals of the derived pictures, by photo. */
type Seals = ReadonlyMap<string, readonly string[]>;

type ArrivingPhoto = Pick<ExchangePhoto, "sha256" | "format"> & Partial<ExchangePhoto>;

/** Takes every photo in the way an upload is, so that it is checked and its views exist. */
async function storePhotos(
  dataDir: string,
  photos: readonly ArrivingPhoto[],
  { files }: UnpackedArchive,
  stored: string[],
): Promise<Result<Seals, ImportIssue>> {
  const seals = new Map<string, readonly string[]>();
  for (const photo of photos) {
    const name = `photos/${photo.sha256}.${photo.format}`;
    const bytes = files.get(name);
    if (!bytes) return fail(issue("archive-file-missing", [], { name }));
    const taken = await receivePhoto(dataDir, once(bytes), {
      declaredBytes: bytes.length,
      sender: "archive",
    });
    if (!taken.ok)
      return fail(
        issue("import-photo-refused", [], {
          name,
          why: taken.issues.map((one: PhotoIssue) => photoSentence(one)).join(" "),
        }),
      );
    const { sha256, format, widthPx, heightPx, alreadyStored } = taken.value;
    if (!alreadyStored) stored.push(sha256);
    // Of evidence the signed record itself says how large it is.
    const otherSize =
      photo.widthPx !== undefined && (widthPx !== photo.widthPx || heightPx !== photo.heightPx);
    if (format !== photo.format || otherSize) return fail(issue("import-photo-facts", [], { name }));
    seals.set(sha256, await viewSeals(dataDir, sha256));
  }
  return ok(seals);
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

/** Photos this import brought and no bead carries after all. */
async function takeBack(db: Db, dataDir: string, stored: readonly string[]): Promise<void> {
  for (const sha256 of stored) await letGoPhoto(db, dataDir, sha256);
}

/** Two thousand beads with their log entries take some seconds; the usual five are for one save. */
const DEADLINE_MS = 300_000;

function writeAll(
  { db, by }: Pen,
  { manifest }: UnpackedArchive,
  { archive, seals }: { readonly archive: string; readonly seals: Seals },
  { leaveConflicts }: { readonly leaveConflicts: boolean },
): Promise<Result<ImportPlan, ImportIssue>> {
  return guardStore<ImportPlan>(() =>
    writeTogether(
      db,
      async (tx) => {
        // Looked at again inside the transaction: somebody may have been faster.
        const plan = await planImport(tx, manifest);
        const refused = refusalOf(plan, leaveConflicts);
        if (refused) return fail(refused) as never;
        const numbers = new Map(
          plan.beads.flatMap(({ id, fate, number }) => (fate === "new" ? [[id, number]] : [])),
        );
        await writeCriteria(tx, by, manifest, plan, archive);
        const along = alongOf(manifest);
        await writeJobs(tx, along, plan.jobs, { by, archive });
        for (const bead of inOrder(manifest.beads.filter(({ id }) => numbers.has(id)))) {
          const number = numbers.get(bead.id) ?? bead.number;
          const views = bead.photos.flatMap(({ sha256 }) => seals.get(sha256) ?? []);
          await writeBead(tx, bead, number);
          await writeLog(tx, {
            by,
            subject: `bead:${bead.id}`,
            action: "bead.imported",
            detail: { number, ownNumber: bead.number, archive, views },
          });
        }
        await placeBeads(tx, along, plan.jobs, by);
        await writeSeries(tx, manifest, plan.series, arrivedBeads(plan), { by, archive });
        await keepSome(tx, [...numbers.keys()]);
        return ok(plan);
      },
      { timeout: DEADLINE_MS, maxWait: 20_000 },
    ),
  );
}

const arrivedBeads = ({ beads }: ImportPlan): ArrivedBeads => {
  const here = beads.filter(({ fate }) => fate === "new" || fate === "same");
  return {
    here: new Set(here.map(({ id }) => id)),
    numbers: new Map(here.map(({ ownNumber, number }) => [ownNumber, number])),
  };
};

/** As many beads as are worked out while everybody else's saves wait: half a second's worth. */
const WORTH_WAITING = 60;

/** What a few beads are asked by is there with them; of many it is worked out afterwards, and until then they say so. */
async function keepSome(tx: Tx, ids: readonly string[]): Promise<void> {
  if (ids.length > WORTH_WAITING) return;
  for (const id of ids) await keepFacts(tx, id);
}

/** A bead after the one it points back to; what points in a circle comes last and loses its pointer. */
function inOrder(beads: readonly ExchangeBead[]): readonly ExchangeBead[] {
  const waiting = new Map(beads.map((bead) => [bead.id, bead]));
  const sorted: ExchangeBead[] = [];
  for (let before = -1; before !== sorted.length;) {
    before = sorted.length;
    for (const bead of waiting.values()) {
      if (bead.previous && waiting.has(bead.previous.id)) continue;
      sorted.push(bead);
      waiting.delete(bead.id);
    }
  }
  return [...sorted, ...[...waiting.values()].map((bead) => ({ ...bead, previous: null }))];
}

async function writeBead(tx: Tx, bead: ExchangeBead, number: number): Promise<void> {
  const { id, revision, createdAt, updatedAt, previous, content, photos } = bead;
  const before = previous && (await tx.bead.findUnique({ where: { id: previous.id }, select: { id: true } }));
  await tx.bead.create({
    data: {
      id,
      number,
      revision,
      createdAt: new Date(createdAt),
      updatedAt: new Date(updatedAt),
      title: content.title,
      welder: content.welder,
      setup: content.setup,
      judgement: content.judgement,
      previousId: before?.id ?? null,
      photos: {
        create: photos.map((photo, place) => ({
          ...photo,
          place,
          drawing: photoColumn(
            content.photos.find((one) => one.id === photo.id) ?? { drawing: emptyDrawing },
          ),
        })),
      },
    },
  });
}
