import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { archiveOf, jobsAlong } from "@/lib/archive";
import { openDb, type Db } from "@/lib/db";
import { installationSigner } from "@/lib/keys";
import { assessContext } from "@/lib/shop";
import { verifyRecords } from "@/lib/verify";
import { growShop } from "@/lib/demo/grow-shop";
import { useFreshDb } from "../../setup/fresh-db";
import { storePlainPhotos } from "../../setup/plain-photos";
import { startS3Stub, s3Keys, tellS3, type S3Stub } from "../../setup/s3-stub";
import { bytesOf, listBeads } from "../../setup/stored-beads";
import { usePostgres } from "../../setup/use-postgres";
import { fillWholeRecord } from "../../setup/whole-record";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const fresh = useFreshDb();
const postgres = usePostgres();
let stub: S3Stub;
let forget: () => void;

beforeAll(async () => {
  stub = await startS3Stub();
  forget = tellS3(stub.endpoint);
});
afterAll(async () => {
  forget();
  await stub.close();
});

/** A command of package.json as somebody at a terminal runs it; the store's address and keys are told by the environment. */
function command(name: string, args: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const told = {
    TOELINE_S3_ENDPOINT: stub.endpoint,
    AWS_ACCESS_KEY_ID: s3Keys.accessKeyId,
    AWS_SECRET_ACCESS_KEY: s3Keys.secretAccessKey,
  };
  return new Promise<{ status: number | null; stdout: string; stderr: string }>((resolve) => {
    const child = spawn("npm", ["run", "-s", name, "--", ...args], {
      cwd: root,
      env: { ...process.env, ...told, ...env },
    });
    let [stdout, stderr] = ["", ""];
    child.stdout.on("data", (data) => (stdout += String(data)));
    child.stderr.on("data", (data) => (stderr += String(data)));
    child.on("close", (status) => resolve({ status, stdout, stderr }));
  });
}

/** SHA-256 of the archive of everything there is. */
async function archived(db: Db, photos: string): Promise<string> {
  const jobs = await db.job.findMany({ select: { id: true } });
  const ids = jobs.map(({ id }) => id);
  const { shopSets } = await assessContext(db);
  const archive = await archiveOf(photos, await listBeads(db), shopSets, await jobsAlong(db, photos, ids));
  if (!archive.ok) throw new Error(archive.issues[0]?.code);
  return createHash("sha256")
    .update(await bytesOf(archive.value))
    .digest("hex");
}

const clean = { status: 0, stderr: "" };

describe("npm run move", () => {
  it("there and back: archives are the same to the byte, verify finds nothing, and nothing goes where something is", async () => {
    await fillWholeRecord(fresh());
    const { db, pen, folder } = fresh();
    // More than one slice of each table.
    const photos = await storePlainPhotos(db, folder);
    await growShop(pen, { beads: 120, seed: 5, until: new Date("2026-11-26T12:00:00Z"), photos });
    await installationSigner(pen, new Date());
    const before = await archived(db, folder);
    const { entries, head } = await verifyRecords(db, folder);
    await db.$disconnect();

    const [there, back] = [postgres().newFolder(), postgres().newFolder()];
    const url = await postgres().newDatabase();
    const inBucket = "s3://school/photos";
    const newest = `Newest entry: ${entries}:${head}`;

    const gone = await command("move", [folder, there, "--to-database", url, "--to-photos", inBucket]);
    expect(gone).toMatchObject(clean);
    expect(gone.stdout).toContain(newest);
    const server = postgres().open(url, there);
    expect(await archived(server, inBucket)).toBe(before);
    const env = { DATABASE_URL: url, TOELINE_PHOTOS: inBucket, TOELINE_DATA: there };
    expect((await command("verify", [], env)).status).toBe(0);

    const again = await command("move", [folder, there, "--to-database", url, "--to-photos", inBucket]);
    expect(again).toMatchObject({ status: 1, stdout: "" });
    expect(again.stderr).toMatch(/there are \d+ rows already/);

    const home = await command("move", [there, back, "--from-database", url, "--from-photos", inBucket]);
    expect(home).toMatchObject(clean);
    expect(home.stdout).toContain(newest);
    const file = openDb(`file:${path.join(back, "toeline.db")}`, back);
    expect(await archived(file, back)).toBe(before);
    await file.$disconnect();
    expect((await command("verify", [], { TOELINE_DATA: back })).status).toBe(0);
    for (const key of ["installation-key"])
      expect(readFileSync(path.join(back, key))).toEqual(readFileSync(path.join(folder, key)));
  });

  it("says its use, and what it does not understand", async () => {
    const help = await command("move", ["--help"]);
    expect(help).toMatchObject({ status: 0 });
    expect(help.stdout).toContain("npm run move -- FROM TO");
    expect((await command("move", ["one"])).status).toBe(2);
    expect((await command("move", ["one", "two", "--nothing"])).status).toBe(2);
  });
});
