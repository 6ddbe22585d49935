import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
} from "node:fs";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import Database from "better-sqlite3";
import { beforeAll, describe, expect, it } from "vitest";
import { backupSentence, makeBackup, restoreBackup } from "@/lib/backup";
import { backupSentences, type BackupIssue } from "@/lib/backup/issue";
import { createBead } from "@/lib/beads";
import { migrate } from "@/lib/cli/prepare.mjs";
import { openDb } from "@/lib/db";
import { installationSigner } from "@/lib/keys";
import { accountSecret } from "@/lib/account/secret";
import { verifyRecords } from "@/lib/verify";
import { originalPath } from "@/lib/photo/paths";
import { useFreshDb } from "../../setup/fresh-db";
import { fillWholeRecord, type WholeRecord } from "../../setup/whole-record";

const fresh = useFreshDb();
let whole: WholeRecord;
const now = new Date("2026-11-26T01:30:00Z");
/** Copies lie in a folder beside the data folder, both inside the one that the tests clear away. */
let data = "";
const at = (name: string) => path.join(fresh().folder, name);

beforeAll(async () => {
  whole = await fillWholeRecord(fresh());
  await installationSigner(fresh().pen, now);
  accountSecret(fresh().folder);
  data = at("data");
  mkdirSync(data);
  for (const name of ["toeline.db", "installation-key", "session-key"])
    copyFileSync(at(name), path.join(data, name));
  for (const name of ["originals", "views"])
    for (const file of readdirSync(at(`photos/${name}`), { recursive: true, encoding: "utf8" })) {
      if (statSync(at(`photos/${name}/${file}`)).isDirectory()) continue;
      mkdirSync(path.dirname(path.join(data, "photos", name, file)), { recursive: true });
      copyFileSync(at(`photos/${name}/${file}`), path.join(data, "photos", name, file));
    }
});

const codes = (result: { ok: boolean; issues?: readonly BackupIssue[] }) =>
  result.ok ? "good" : result.issues!.map(({ code }) => code).join();

const backUp = (target: string, sharing: string | null = null) =>
  makeBackup({ dataFolder: data, target: at(target), now, sharing: sharing && at(sharing) });
const bringBack = (from: string, dataFolder: string) =>
  restoreBackup({ from: at(from), dataFolder: at(dataFolder), now, migrate });

/** Does the damage to a file, asks, and puts the file back. */
async function damaged<T>(
  file: string,
  change: (bytes: Buffer) => Buffer,
  ask: () => Promise<T>,
): Promise<T> {
  const sound = readFileSync(file);
  chmodSync(file, 0o600);
  writeFileSync(file, change(Buffer.from(sound)));
  try {
    return await ask();
  } finally {
    writeFileSync(file, sound);
  }
}
const oneBit = (bytes: Buffer) => ((bytes[bytes.length >> 1]! ^= 1), bytes);

describe("a backup", () => {
  it("made while beads are written is whole, is restored into an empty folder and verifies there", async () => {
    const db = openDb(`file:${path.join(data, "toeline.db")}`);
    let going = true;
    let written = 0;
    const writer = (async () => {
      while (going) {
        const made = await createBead({ db, by: "test" }, { title: `while ${written}` });
        if (made.ok) written += 1;
        await pause(5);
      }
    })();
    const made = await backUp("first").finally(() => (going = false));
    await writer;
    await db.$disconnect();
    expect(codes(made)).toBe("good");
    expect(written).toBeGreaterThan(0);
    const restored = await bringBack("first", "back");
    expect(codes(restored)).toBe("good");
    const again = openDb(`file:${at("back/toeline.db")}`);
    const found = await verifyRecords(again, at("back"));
    expect(found.findings).toEqual([]);
    expect(found.photos).toBe(1);
    // Its last entry is the restoring's own; the one before is the head the backup said.
    const head = made.ok ? made.value.head : null;
    const entry = await again.logEntry.findUnique({ where: { seq: found.entries - 1 } });
    expect(`${entry?.seq}:${entry?.hash}`).toBe(head);
    expect((await again.bead.findUnique({ where: { id: whole.beadId } }))?.title).toBe("Lap, chipped");
    expect(await again.session.count()).toBe(0);
    await again.$disconnect();
    for (const name of ["installation-key", "session-key"])
      expect(readFileSync(at(`back/${name}`))).toEqual(readFileSync(path.join(data, name)));
    expect(readdirSync(at("back")).filter((name) => name === "restoring")).toEqual([]);
  });

  it("shares photos with an earlier one, and writes anew what went bad in that", async () => {
    expect(codes(await backUp("second", "first"))).toBe("good");
    const inode = (copy: string) => statSync(originalPath(at(copy), whole.sha256)!).ino;
    expect(inode("second")).toBe(inode("first"));
    const bad = originalPath(at("first"), whole.sha256)!;
    expect(await damaged(bad, oneBit, async () => codes(await backUp("third", "first")))).toBe("good");
    expect(inode("third")).not.toBe(inode("first"));
  });

  it("is none where the copy does not fit together, and leaves nothing behind", async () => {
    const original = originalPath(data, whole.sha256)!;
    expect(await damaged(original, oneBit, async () => codes(await backUp("bad")))).toBe("copy-does-not-fit");
    const file = path.join(data, "toeline.db");
    const hole = (bytes: Buffer) => bytes.fill(0xff, bytes.length >> 1, (bytes.length >> 1) + 40_000);
    expect(await damaged(file, hole, async () => codes(await backUp("bad")))).toMatch(
      /source-damaged|copy-does-not-fit/,
    );
    expect(
      await damaged(
        file,
        () => Buffer.from("no database"),
        async () => codes(await backUp("bad")),
      ),
    ).toBe("source-damaged");
    expect(existsSync(at("bad"))).toBe(false);
    expect(existsSync(at("bad.part"))).toBe(false);
  });

  it("takes the place of what a killed one left, and never of anything else", async () => {
    mkdirSync(at("fourth.part/photos"), { recursive: true });
    writeFileSync(at("fourth.part/photos/half"), "x");
    expect(codes(await backUp("fourth"))).toBe("good");
    expect(codes(await backUp("fourth"))).toBe("target-used");
    expect(codes(await makeBackup({ dataFolder: data, target: path.join(data, "in"), now }))).toBe(
      "target-in-data-folder",
    );
    expect(codes(await makeBackup({ dataFolder: data, target: fresh().folder, now }))).toBe(
      "target-in-data-folder",
    );
    expect(codes(await makeBackup({ dataFolder: data, target: "beside", now }))).toBe("target-not-absolute");
    writeFileSync(at("a-file"), "");
    expect(codes(await makeBackup({ dataFolder: data, target: at("a-file/in"), now }))).toBe(
      "target-unusable",
    );
  });

  it("is not restored unless every byte of it fits, nor over anything", async () => {
    const original = originalPath(at("fourth"), whole.sha256)!;
    expect(await damaged(original, oneBit, async () => codes(await bringBack("fourth", "bad")))).toBe(
      "copy-does-not-fit",
    );
    rmSync(at("fourth/installation-key"));
    expect(codes(await bringBack("fourth", "bad"))).toBe("copy-does-not-fit");
    copyFileSync(path.join(data, "installation-key"), at("fourth/installation-key"));
    const sound = new Database(at("fourth/toeline.db"));
    sound.exec(`UPDATE "Bead" SET "title" = 'other' WHERE "id" = '${whole.beadId}'`);
    sound.close();
    expect(codes(await bringBack("fourth", "bad"))).toBe("copy-does-not-fit");
    expect(readdirSync(at("bad"))).toEqual([]);
    expect(codes(await bringBack("first", "back"))).toBe("data-folder-used");
    rmSync(at("fourth/backup.json"));
    expect(codes(await bringBack("fourth", "bad"))).toBe("backup-missing");
  });

  it("says each refusal in a sentence with a way out", () => {
    for (const code of Object.keys(backupSentences) as BackupIssue["code"][]) {
      const data = { folder: "/x", reason: "EIO", findings: 2, first: "One." };
      expect(backupSentence({ code, path: [], data })).toMatch(/^[A-Z/].{20,}\./);
    }
  });
});
