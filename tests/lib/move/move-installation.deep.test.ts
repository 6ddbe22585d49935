import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { archiveOf, jobsAlong } from "@/lib/archive";
import { createBead } from "@/lib/beads";
import { openDb } from "@/lib/db";
import { installationSigner } from "@/lib/keys";
import { moveInstallation, moveSentence, type Installation } from "@/lib/move";
import { movedTables } from "@/lib/move/tables";
import { assessContext } from "@/lib/shop";
import { verifyRecords } from "@/lib/verify";
import { Prisma } from "@/prisma/generated/client";
import { useFreshDb } from "../../setup/fresh-db";
import { layMigrated } from "../../setup/migrated";
import { startS3Stub, tellS3, type S3Stub } from "../../setup/s3-stub";
import { bytesOf, listBeads } from "../../setup/stored-beads";
import { usePostgres } from "../../setup/use-postgres";
import { fillWholeRecord } from "../../setup/whole-record";

const fresh = useFreshDb();
const postgres = usePostgres();
let stub: S3Stub;
let forget: () => void;
let [first, second, third]: Installation[] = [];

beforeAll(async () => {
  stub = await startS3Stub();
  forget = tellS3(stub.endpoint);
  await fillWholeRecord(fresh());
  const { pen, db, folder } = fresh();
  const one = await createBead(pen, { title: "First try" });
  if (!one.ok) throw new Error("no bead");
  // A pointer to a bead that comes later in any order of ids, one way or the other.
  const two = await createBead(pen, { title: "Second", previousId: one.value.id });
  if (!two.ok) throw new Error("no bead");
  await createBead(pen, { title: "Third", previousId: two.value.id });
  await installationSigner(pen, new Date());
  first = { db, folder, photos: folder };
  const onServer = postgres().newFolder();
  second = {
    db: postgres().open(await postgres().newDatabase(), onServer),
    folder: onServer,
    photos: "s3://school/photos",
  };
  const back = postgres().newFolder();
  await layMigrated(path.join(back, "toeline.db"));
  third = { db: openDb(`file:${path.join(back, "toeline.db")}`), folder: back, photos: back };
});
afterAll(async () => {
  await third?.db.$disconnect();
  forget();
  await stub.close();
});

/** SHA-256 of the archive of everything there is. */
async function archived({ db, photos }: Installation): Promise<string> {
  const jobs = await db.job.findMany({ select: { id: true } });
  const along = await jobsAlong(
    db,
    photos,
    jobs.map(({ id }) => id),
  );
  const { shopSets } = await assessContext(db);
  const archive = await archiveOf(photos, await listBeads(db), shopSets, along);
  if (!archive.ok) throw new Error(archive.issues[0]?.code);
  return createHash("sha256")
    .update(await bytesOf(archive.value))
    .digest("hex");
}

describe("moving an installation", () => {
  it("takes along every table, but for what follows from others", () => {
    // What throttles remember is of the last hour, and of the old place.
    const derived = ["BeadFacts", "BeadFound", "BeadCard", "Tries"];
    const lower = (name: string) => name.charAt(0).toLowerCase() + name.slice(1);
    const all = Object.keys(Prisma.ModelName).filter((name) => !derived.includes(name));
    expect(Object.keys(movedTables).sort()).toEqual(all.map(lower).sort());
  });

  it("to PostgreSQL and a bucket and back: nothing is lost, archives are the same to the byte", async () => {
    const before = await archived(first!);
    const { entries, head } = await verifyRecords(first!.db, first!.folder);
    for (const [from, to] of [
      [first!, second!],
      [second!, third!],
    ] as const) {
      const moved = await moveInstallation(from, to);
      expect(moved.ok ? [] : moved.issues.map(moveSentence)).toEqual([]);
      expect(await archived(to)).toBe(before);
      const found = await verifyRecords(to.db, to.folder, { photos: to.photos });
      expect(found).toMatchObject({ findings: [], entries, head });
      for (const name of ["installation-key"])
        expect(readFileSync(path.join(to.folder, name))).toEqual(readFileSync(path.join(from.folder, name)));
    }
    expect(stub.objects.size).toBeGreaterThan(4);
    // What is made next goes on from there.
    const [there, here] = await Promise.all(
      [first!, second!].map(({ db }) => createBead({ db, by: "test" }, { title: "Next" })),
    );
    expect(here).toMatchObject({ value: { number: there?.ok ? there.value.number : "none" } });
  });

  it("is refused into what is not empty, and from what does not verify", async () => {
    expect(await moveInstallation(first!, third!)).toMatchObject({ issues: [{ code: "move-not-empty" }] });
    const empty = postgres().newFolder();
    await layMigrated(path.join(empty, "toeline.db"));
    const db = openDb(`file:${path.join(empty, "toeline.db")}`);
    await third!.db.$executeRawUnsafe(`UPDATE "Bead" SET "title" = 'Sound' WHERE "number" = 1`);
    expect(await moveInstallation(third!, { db, folder: empty, photos: empty })).toMatchObject({
      issues: [{ code: "move-unsound", data: { findings: 1 } }],
    });
    expect(await db.bead.count()).toBe(0);
    await db.$disconnect();
  });
});
