import { copyFileSync, cpSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { beforeAll, describe, expect, it } from "vitest";
import { canonicalJson } from "@/lib/base";
import { openDb } from "@/lib/db";
import { readHead, signedHead } from "@/lib/keys";
import { nextEntry, type LogEntry } from "@/lib/ledger";
import type { LogHead } from "@/lib/signature";
import { sha256Text, stateDigest } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";
import { fillWholeRecord, type WholeRecord } from "../../setup/whole-record";

const fresh = useFreshDb();
let whole: WholeRecord;
beforeAll(async () => {
  whole = await fillWholeRecord(fresh());
});

/** Somebody with an editor for the database, with our own code at hand, and without the key file. */
class Forger {
  constructor(readonly file: Database.Database) {
    file.pragma("foreign_keys = OFF");
    // Nobody waits for a forger's disk.
    file.pragma("synchronous = OFF");
    const triggers = file.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").all();
    for (const { name } of triggers as { name: string }[]) file.exec(`DROP TRIGGER "${name}"`);
  }
  entries = () => this.file.prepare("SELECT * FROM LogEntry ORDER BY seq").all() as LogEntry[];
  put(entry: LogEntry): void {
    const names = Object.keys(entry);
    this.file
      .prepare(`INSERT INTO LogEntry (${names.map((name) => `"${name}"`)}) VALUES (${names.map(() => "?")})`)
      .run(...Object.values(entry));
  }
  /** The log written anew from its first entry, with `change` made to each: a sound chain. */
  rewrite(change: (entry: LogEntry) => LogEntry | null): void {
    const before = this.entries();
    this.file.exec("DELETE FROM LogEntry");
    let last: LogEntry | null = null;
    for (const entry of before) {
      const changed = change(entry);
      if (changed) this.put((last = nextEntry(last, changed, sha256Text)));
    }
  }
  append(draft: Pick<LogEntry, "by" | "action" | "subject" | "digest" | "detail">): void {
    this.put(
      nextEntry(this.entries().at(-1) ?? null, { ...draft, at: new Date().toISOString() }, sha256Text),
    );
  }
}

type State = (subject: string) => Promise<string | null>;

/** Codes found on a copy of the data folder's database after the forger was at it. */
async function foundAfter(
  work: (forger: Forger, state: State) => Promise<void>,
  { noted = null, folder = fresh().folder }: { noted?: LogHead | null; folder?: string } = {},
): Promise<readonly string[]> {
  const copy = path.join(fresh().folder, "forged.db");
  await fresh().db.$queryRawUnsafe("PRAGMA wal_checkpoint(TRUNCATE)");
  copyFileSync(path.join(fresh().folder, "toeline.db"), copy);
  const db = openDb(`file:${copy}`);
  const file = new Database(copy);
  try {
    await work(new Forger(file), (subject) => stateDigest(db, subject));
    return (await verifyRecords(db, folder, { noted })).findings.map(({ code }) => code);
  } finally {
    file.close();
    await db.$disconnect();
  }
}

const signedRow = ({ file }: Forger) =>
  file.prepare("SELECT * FROM SignedRevision").get() as { id: string; content: string; digest: string };

/** Another result under a digest that fits. */
function changeSigned(forger: Forger): { readonly id: string; readonly digest: string } {
  const { id, content } = signedRow(forger);
  const text = canonicalJson({ ...(JSON.parse(content) as object), result: "accepted" });
  expect(text).not.toBe(content);
  const digest = sha256Text(text);
  forger.file.prepare("UPDATE SignedRevision SET content = ?, digest = ? WHERE id = ?").run(text, digest, id);
  return { id, digest };
}

function changeFeedback(forger: Forger): string {
  const row = forger.file.prepare("SELECT returned FROM Feedback").get() as { returned: string };
  const text = row.returned.replace("Nearly there.", "Well done.");
  expect(text).not.toBe(row.returned);
  const digest = sha256Text(text);
  forger.file.prepare("UPDATE Feedback SET returned = ?, digest = ?").run(text, digest);
  return digest;
}

const without = (forger: Forger, where: string) =>
  forger.file.exec(`DELETE FROM KeySignature WHERE ${where}`);

/** The log as if the present states had been there all along. */
async function rewriteAsIs(forger: Forger, state: State, digests: Record<string, string>): Promise<void> {
  const states = new Map<string, string | null>();
  for (const { subject } of forger.entries())
    if (!states.has(subject)) states.set(subject, await state(subject));
  forger.rewrite((entry) => {
    if (entry.subject.startsWith("checkpoint:") && states.get(entry.subject) === null) return null;
    const digest = digests[entry.subject];
    const detail = JSON.parse(entry.detail) as Record<string, unknown>;
    return {
      ...entry,
      digest: entry.digest === null ? null : (states.get(entry.subject) ?? entry.digest),
      detail: canonicalJson(digest && "digest" in detail ? { ...detail, digest } : detail),
    };
  });
}

describe("a forger who changes a frozen text, works out its digest and makes the log fit", () => {
  it("leaves nothing where they change nothing", async () => {
    expect(await foundAfter(async () => undefined)).toEqual([]);
  });

  it.each(["record.signed", "record.imported", "record.tidied"])(
    "is found with a signed record and one more entry that says %s",
    async (action) => {
      const found = await foundAfter(async (forger, state) => {
        const { id, digest } = changeSigned(forger);
        const subject = `signed:${id}`;
        const detail = canonicalJson({ inspection: whole.inspectionId, revision: 1, digest });
        forger.append({ by: "system", action, subject, digest: await state(subject), detail });
      });
      expect(found).toEqual(expect.arrayContaining(["digest-twice", "signature-bad"]));
    },
  );

  it.each(["feedback.replied", "feedback.returned"])(
    "is found with returned feedback and one more entry that says %s",
    async (action) => {
      const found = await foundAfter(async (forger, state) => {
        const digest = changeFeedback(forger);
        const subject = `feedback:${whole.handInId}`;
        const detail = canonicalJson(action === "feedback.returned" ? { digest, revision: 1 } : {});
        forger.append({ by: "system", action, subject, digest: await state(subject), detail });
      });
      expect(found).toEqual(expect.arrayContaining(["digest-twice", "signature-bad"]));
    },
  );

  it("is found when the whole log is written anew over it", async () => {
    const found = await foundAfter(async (forger, state) => {
      const { id, digest } = changeSigned(forger);
      await rewriteAsIs(forger, state, { [`signed:${id}`]: digest });
    });
    expect(found).toEqual(expect.arrayContaining(["signature-bad", "log-differs"]));
  });

  it("is found when the signatures over the log are taken out besides", async () => {
    const found = await foundAfter(async (forger, state) => {
      without(forger, "subject LIKE 'log:%'");
      const { id, digest } = changeSigned(forger);
      await rewriteAsIs(forger, state, { [`signed:${id}`]: digest });
    });
    expect(found).toContain("signature-bad");
  });

  it("is found when every signature is taken out, the record's own too", async () => {
    const found = await foundAfter(async (forger, state) => {
      without(forger, "1");
      const { id, digest } = changeSigned(forger);
      await rewriteAsIs(forger, state, { [`signed:${id}`]: digest });
    });
    expect(found).toContain("signature-bad");
  });

  it("is found with feedback when its signature is taken out and the log is written anew", async () => {
    const found = await foundAfter(async (forger, state) => {
      without(forger, "subject LIKE 'feedback:%' OR subject LIKE 'log:%'");
      const digest = changeFeedback(forger);
      await rewriteAsIs(forger, state, { [`feedback:${whole.handInId}`]: digest });
    });
    expect(found).toContain("signature-bad");
  });

  it("is found who changes nothing but an entry before the record: its signature speaks for the log too", async () => {
    const found = await foundAfter(async (forger) => {
      without(forger, "subject LIKE 'log:%'");
      const [first] = forger.entries();
      forger.rewrite((entry) =>
        entry.seq === first?.seq ? { ...entry, by: "person:somebody-else" } : entry,
      );
    });
    expect(found).toContain("log-differs");
  });

  it("is found who cuts the log off before its last signature", async () => {
    const found = await foundAfter(async (forger) => {
      const last = forger.entries().length;
      forger.file.exec(`DELETE FROM LogEntry WHERE seq > ${last - 3}`);
    });
    expect(found).toContain("log-cut");
  });

  it("is found who makes the record look as if it were from before keys were kept", async () => {
    const found = await foundAfter(async (forger, state) => {
      without(forger, "1");
      for (const table of ["SealedKey", "KeyEvent", "SigningKey"]) forger.file.exec(`DELETE FROM ${table}`);
      const { id, content } = signedRow(forger);
      const { signature, ...record } = JSON.parse(content) as { signature: Record<string, unknown> };
      const { key: _, ...old } = signature;
      const text = canonicalJson({ ...record, signature: old, result: "accepted" });
      const digest = sha256Text(text);
      forger.file.prepare("UPDATE SignedRevision SET content = ?, digest = ?").run(text, digest);
      forger.rewrite((entry) => (/^(key|checkpoint):/.test(entry.subject) ? null : entry));
      await rewriteAsIs(forger, state, { [`signed:${id}`]: digest });
    });
    expect(found).toEqual(["key-forgotten"]);
  });

  it("is found by a head that was kept elsewhere, who owns the whole folder and takes every key out of it", async () => {
    const keyless = path.join(fresh().folder, "keyless");
    cpSync(path.join(fresh().folder, "photos"), path.join(keyless, "photos"), { recursive: true });
    const head = await signedHead(fresh().pen, new Date());
    const kept = readHead(JSON.stringify(head));
    const noted = kept.ok ? kept.value : null;
    const rewritten = async (forger: Forger, state: State) => {
      without(forger, "1");
      for (const table of ["SealedKey", "KeyEvent", "SigningKey"]) forger.file.exec(`DELETE FROM ${table}`);
      const { id, content } = signedRow(forger);
      const { signature, ...record } = JSON.parse(content) as { signature: Record<string, unknown> };
      const { key: _, ...old } = signature;
      const text = canonicalJson({ ...record, signature: old, result: "accepted" });
      const digest = sha256Text(text);
      forger.file.prepare("UPDATE SignedRevision SET content = ?, digest = ?").run(text, digest);
      await rewriteAsIs(forger, state, { [`signed:${id}`]: digest });
      forger.rewrite((entry) =>
        entry.subject.startsWith("key:")
          ? { ...entry, action: "setting.read", subject: "setting:none", digest: null }
          : entry,
      );
    };
    const alone = await foundAfter(rewritten, { folder: keyless });
    expect(alone.filter((code) => code !== "state-unlogged")).toEqual([]);
    expect(await foundAfter(rewritten, { folder: keyless, noted })).toContain("noted-cut");
    expect(await foundAfter(async () => undefined, { noted })).toEqual([]);
    const other = noted && { ...noted, seq: noted.seq - 1 };
    expect(await foundAfter(async () => undefined, { noted: other })).toEqual(["noted-differs"]);
  });

  it("is found who begins a key of their own for the installation", async () => {
    const found = await foundAfter(async (forger, state) => {
      const id = sha256Text("x");
      forger.file
        .prepare(
          `INSERT INTO SigningKey (id, algorithm, publicKey, origin, holder, personId, "from", reason) VALUES (?, 'Ed25519', ?, 'here', 'installation', NULL, '2026-11-26T00:00:00.000Z', 'first-need')`,
        )
        .run(id, "A".repeat(43));
      const detail = canonicalJson({ holder: "installation", reason: "first-need" });
      const subject = `key:${id}`;
      forger.append({ by: "system", action: "key.begun", subject, digest: await state(subject), detail });
    });
    expect(found).toContain("key-not-ours");
  });
});
