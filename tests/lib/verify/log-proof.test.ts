import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { createBead } from "@/lib/beads";
import { verifyProof } from "@/lib/cli/verify-proof";
import { nextEntry } from "@/lib/ledger";
import { sha256Text } from "@/lib/store";
import { proofSentence, proveEntry, readProof, type LogProof } from "@/lib/verify";
import { proofSentences } from "@/lib/verify/log-proof";
import { useFreshDb } from "../../setup/fresh-db";
import { itDeep } from "../../setup/in-depth";
import { fillWholeRecord } from "../../setup/whole-record";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const fresh = useFreshDb();
let subject = "";
let proof: LogProof;
beforeAll(async () => {
  const { db, pen } = fresh();
  await fillWholeRecord(fresh());
  subject = `signed:${(await db.signedRevision.findFirstOrThrow()).id}`;
  const made = await proveEntry(pen, subject, new Date("2026-11-27T08:00:00Z"));
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  proof = made.value;
});

const codeOf = (changed: unknown): string => {
  const read = readProof(typeof changed === "string" ? changed : JSON.stringify(changed));
  return read.ok ? "holds" : read.issues[0]!.code;
};
const spoilt = (hash: string): string => `${hash.startsWith("0") ? "1" : "0"}${hash.slice(1)}`;

describe("a proof that a signed record is in the log", () => {
  it("holds by its own bytes, and names the digest that stands on the report", async () => {
    const { digest } = await fresh().db.signedRevision.findFirstOrThrow();
    const file = path.join(fresh().folder, "proof.json");
    writeFileSync(file, JSON.stringify(proof));
    const { lines, code } = verifyProof(file);
    expect(code).toBe(0);
    expect(lines.join("\n")).toContain(`SHA-256 of the signed text: ${digest}`);
    expect(lines.at(-1)).toMatch(/^The proof holds\. Whose the key is, it cannot say/);
  });

  it("does not hold where anything in it was changed", async () => {
    const { entry, path: up, checkpoint } = proof;
    expect(
      codeOf({ ...proof, entry: { ...entry, detail: entry.detail.replace("revision", "Revision") } }),
    ).toBe("proof-entry-changed");
    // An entry of one's own, sound by itself, is not in the log.
    const own = nextEntry(
      { seq: entry.seq - 1, hash: entry.previous },
      { ...entry, by: "person:x" },
      sha256Text,
    );
    expect(codeOf({ ...proof, entry: own })).toBe("proof-not-in-log");
    expect(codeOf({ ...proof, path: up.with(0, spoilt(up[0]!)) })).toBe("proof-not-in-log");
    expect(codeOf({ ...proof, checkpoint: { ...checkpoint, root: spoilt(checkpoint.root) } })).toBe(
      "proof-not-in-log",
    );
    // A tree of one's own, with that entry alone, which nobody signed.
    const alone = nextEntry(null, entry, sha256Text);
    const { leafHash } = await import("@/lib/ledger");
    const { createHash } = await import("node:crypto");
    const leaf = leafHash(Buffer.from(alone.hash, "hex"), (bytes) =>
      createHash("sha256").update(bytes).digest("hex"),
    );
    const forged = { ...proof, entry: alone, path: [], checkpoint: { ...checkpoint, size: 1, root: leaf } };
    expect(codeOf(forged)).toBe("proof-forged");
    expect(codeOf("not json")).toBe("proof-not-understood");
    expect(codeOf({ ...proof, says: "something else" })).toBe("proof-not-understood");
    for (const [code, sentence] of Object.entries(proofSentences))
      expect(sentence, code).toMatch(/^[A-Z].*\.$/);
  });

  it("shows that the log only grew since an earlier one, and is not made where it did not", async () => {
    const { pen } = fresh();
    await createBead(pen, { title: "Later" });
    const now = new Date("2026-11-27T09:00:00Z");
    const later = await proveEntry(pen, subject, now, proof.checkpoint);
    if (!later.ok) throw new Error(JSON.stringify(later.issues));
    expect(later.value.checkpoint.size).toBeGreaterThan(proof.checkpoint.size);
    expect(later.value.grownFrom).toMatchObject({ size: proof.checkpoint.size, root: proof.checkpoint.root });
    expect(codeOf(later.value)).toBe("holds");
    const { grownFrom } = later.value;
    expect(codeOf({ ...later.value, grownFrom: { ...grownFrom, root: spoilt(proof.checkpoint.root) } })).toBe(
      "proof-other-log",
    );
    const other = { ...proof.checkpoint, root: spoilt(proof.checkpoint.root) };
    expect(await proveEntry(pen, subject, now, other)).toMatchObject({
      issues: [{ code: "proof-other-log" }],
    });
    const none = await proveEntry(pen, "signed:none", now);
    expect(none.ok ? "" : none.issues.map(proofSentence).join()).toMatch(/holds no signed record/);
  });

  itDeep("is written and verified by the commands", async () => {
    const { db, folder } = fresh();
    const { number } = await db.inspection.findFirstOrThrow({ where: { signed: { some: {} } } });
    const run = (command: string, ...args: string[]) =>
      spawnSync(
        process.execPath,
        ["--conditions=react-server", "--import", "tsx", `lib/cli/${command}.ts`, ...args],
        { cwd: root, encoding: "utf8", env: { ...process.env, TOELINE_DATA: folder, NODE_OPTIONS: "" } },
      );
    const made = run("prove", String(number), "1");
    expect([made.status, made.stderr]).toEqual([0, ""]);
    const file = path.join(folder, "made.json");
    writeFileSync(file, made.stdout);
    expect(run("verify", file)).toMatchObject({ status: 0 });
    writeFileSync(file, made.stdout.replace('"record.signed"', '"record.changed"'));
    expect(run("verify", file)).toMatchObject({ status: 1 });
    expect(run("prove", String(number), "9")).toMatchObject({ status: 1 });
    expect(run("prove", "x")).toMatchObject({ status: 2 });
  });
});
