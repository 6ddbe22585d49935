import { spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { archiveOf, jobsAlong } from "@/lib/archive";
import { verifyArchive } from "@/lib/cli/verify-archive";
import { listKeys } from "@/lib/keys";
import { fingerprint } from "@/lib/signature";
import { repacked, resigned, signedOf, type LooseManifest } from "../../setup/forge";
import { useFreshDb } from "../../setup/fresh-db";
import { bytesOf, listBeads } from "../../setup/stored-beads";
import { fillWholeRecord } from "../../setup/whole-record";

const fresh = useFreshDb();
const root = fileURLToPath(new URL("../../..", import.meta.url));
let archive: Uint8Array;
beforeAll(async () => {
  const whole = await fillWholeRecord(fresh());
  const { db, folder } = fresh();
  const beads = (await listBeads(db)).filter(({ jobId }) => jobId === whole.jobId);
  const made = await archiveOf(folder, beads, [], await jobsAlong(db, folder, [whole.jobId]));
  if (!made.ok) throw new Error(made.issues[0]?.code);
  archive = await bytesOf(made.value);
});

function written(bytes: Uint8Array): string {
  const file = path.join(mkdtempSync(path.join(fresh().folder, "archive-")), "job.zip");
  writeFileSync(file, bytes);
  return file;
}

describe("an archive verified by itself", () => {
  it("by the command, on a machine without data or account, says which key signed what and when", async () => {
    const nowhere = path.join(fresh().folder, "nowhere");
    const { status, stdout } = spawnSync(
      process.execPath,
      ["--conditions=react-server", "--import", "tsx", "lib/cli/verify.ts", written(archive)],
      { cwd: root, encoding: "utf8", env: { ...process.env, TOELINE_DATA: nowhere } },
    );
    const keys = await listKeys(fresh().db);
    const key = keys.find(({ holder, until }) => holder === "person" && until === null)!;
    expect(stdout).toContain(`Inspection 1, revision 1: signed by key ${fingerprint(key.id)} (Ed25519)`);
    expect(stdout).toContain("on 2026-11-25 10:00 UTC, identification I-03; text and signature fit");
    expect(stdout).toContain(key.id);
    expect(stdout).toContain("Whose the keys are, no archive can say");
    expect(status).toBe(0);
  });

  it.each<[string, (manifest: LooseManifest) => void, string]>([
    [
      "a changed result",
      (manifest) => resigned(manifest, (record) => (record.result = "accepted")),
      "its signature was given for another text",
    ],
    [
      "a changed result under the old digest",
      (manifest) => {
        for (const signed of signedOf(manifest))
          signed.content = signed.content.replace('"result":"open"', '"result":"accepted"');
      },
      "the text no longer gives its digest",
    ],
    [
      "a stripped signature",
      (manifest) => {
        for (const signed of signedOf(manifest)) delete signed.signature;
      },
      "the text names a key, and the signature is not with it",
    ],
    ["its keys taken out", (manifest) => (manifest.keys = []), "the key of its signature is not known here"],
  ])("says of %s that it is unverified", (_, change, why) => {
    const { lines, code } = verifyArchive(written(repacked(archive, change)));
    expect(code).toBe(1);
    expect(lines.join("\n")).toContain(`Inspection 1, revision 1: UNVERIFIED, ${why}`);
    expect(lines.at(-1)).toContain("1 of 1 signed records could not be verified");
  });

  it("says in a sentence what is no archive, or not there", () => {
    expect(verifyArchive(written(Buffer.from("no zip"))).code).toBe(2);
    expect(verifyArchive("/nowhere/at-all.zip").code).toBe(2);
  });
});
