import { openDb, type Db } from "@/lib/db";
import { verifyRecords } from "@/lib/verify";
import { tellS3 } from "../setup/s3-stub";
import type { Servers } from "./servers";

/** A bead that somebody sent, and what the servers said yes to of it. */
export interface Written {
  /** The sender's own, written down before it was sent. */
  readonly id: string;
  number: number | null;
  readonly saves: { readonly revision: number; readonly title: string; readonly marks: number }[];
  sha256: string | null;
}

interface There {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  readonly title: string;
  readonly photos: readonly { readonly sha256: string; readonly drawing: unknown }[];
}

const marksOf = (drawing: unknown): number => (drawing as { marks?: unknown[] } | null)?.marks?.length ?? 0;

/** What of one bead is not there as it was said yes to. */
function wrongOf({ id, number, saves, sha256 }: Written, there: There | undefined): string[] {
  if (number === null) return [];
  if (!there) return [`bead ${number} (${id}) is gone`];
  const wrong: string[] = [];
  if (there.number !== number) wrong.push(`bead ${number} has the number ${there.number}`);
  const last = saves.at(-1);
  const isThere = !last || (there.revision === last.revision && there.title === last.title);
  if (!isThere) wrong.push(`save ${last.revision} of bead ${number}: ${there.revision} is there`);
  const taken = there.photos.filter((photo) => photo.sha256 === sha256);
  if (sha256 !== null && taken.length !== 1)
    wrong.push(`the photo of ${number} is there ${taken.length} times`);
  if (last && marksOf(taken[0]?.drawing) !== last.marks) wrong.push(`marks of bead ${number}`);
  if (there.photos.length > 1) wrong.push(`bead ${number} has ${there.photos.length} photos`);
  return wrong;
}

/** Numbers given are 1 to n, each once: each that is there more than once, and each that is not there. */
function wrongNumbers(numbers: readonly number[], whose: string): string[] {
  const times = new Map<number, number>();
  for (const number of numbers) times.set(number, (times.get(number) ?? 0) + 1);
  const missing = numbers.map((_, i) => i + 1).filter((number) => !times.has(number));
  return [
    ...[...times].filter(([, n]) => n > 1).map(([number, n]) => `${whose}: number ${number} ${n} times`),
    ...missing.map((number) => `${whose}: number ${number} is missing`),
  ];
}

/** Each save that was said yes to stands in the log once, with its revision. */
async function wrongInLog(db: Db, book: readonly Written[]): Promise<string[]> {
  const entries = await db.logEntry.findMany({
    where: { action: "bead.saved" },
    select: { subject: true, detail: true },
  });
  const logged = new Map<string, number>();
  for (const { subject, detail } of entries) {
    const key = `${subject} ${(JSON.parse(detail) as { revision: number }).revision}`;
    logged.set(key, (logged.get(key) ?? 0) + 1);
  }
  return book.flatMap(({ id, saves }) =>
    saves.flatMap(({ revision }) => {
      const times = logged.get(`bead:${id} ${revision}`) ?? 0;
      return times === 1 ? [] : [`save ${revision} of ${id} stands in the log ${times} times`];
    }),
  );
}

/**
 * Compares the book of everybody with what is there, and walks all records; what is lost, twice or unsound, a line each. A bead
 * that nobody sent, or a gap among the numbers, is found too.
 */
export async function wrongAfter(
  { servers, database, photos, endpoint }: Servers,
  book: readonly Written[],
): Promise<readonly string[]> {
  const folder = servers[0]?.dataFolder ?? "";
  const db = openDb(database, folder);
  const forget = tellS3(endpoint);
  try {
    const beads = await db.bead.findMany({
      include: { photos: { select: { sha256: true, drawing: true } } },
    });
    const byId = new Map(beads.map((bead) => [bead.id, bead]));
    const sent = new Set(book.map(({ id }) => id));
    const given = book.flatMap(({ number }) => (number === null ? [] : [number]));
    const { findings } = await verifyRecords(db, folder, { photos });
    return [
      ...book.flatMap((written) => wrongOf(written, byId.get(written.id))),
      ...beads.filter(({ id }) => !sent.has(id)).map(({ number }) => `bead ${number}, which nobody sent`),
      ...given
        .filter((number, i) => given.indexOf(number) !== i)
        .map((number) => `number ${number} was told twice`),
      ...wrongNumbers(
        beads.map(({ number }) => number),
        "there",
      ),
      ...(await wrongInLog(db, book)),
      ...findings.map((finding) => JSON.stringify(finding)),
    ];
  } finally {
    forget();
    await db.$disconnect();
  }
}
