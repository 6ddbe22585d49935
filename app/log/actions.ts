"use server";

import type { Verified } from "@/components/log";
import { runAside } from "@/lib/backup";
import { dataDir, photoPlace, type Db } from "@/lib/db";
import { headSentence, readHead } from "@/lib/keys";
import { ledgerSentence } from "@/lib/ledger";
import type { LogHead } from "@/lib/signature";
import { verifyRecords, type Verification } from "@/lib/verify";
import { actionFor, words } from "../_door/action-for";
import { DEAR_WORK_WAITS, inDearTurn } from "../_door/dear-work";

/** A log of so many entries is walked in a second or two; what is longer has a process of its own. Own estimate. */
const MOST_HERE = 3000;

/** `noted`: a head of the log that was kept elsewhere, as its file or as printed; empty: none. */
export const verifyAction = actionFor("log.read", [words], async ({ db, pen }, given): Promise<Verified> => {
  const noted = given.trim() === "" ? null : readHead(given);
  if (noted && !noted.ok) return { ...nothingLooked, findings: noted.issues.map(headSentence) };
  const found = await inDearTurn(pen.by, () => walked(db, noted?.value ?? null));
  if (found === null) return { ...nothingLooked, findings: [DEAR_WORK_WAITS] };
  const { entries, subjects, photos, frozen, signatures, head, findings, remarks } = found;
  return {
    looked: [
      counted(entries, "log entry", "log entries"),
      counted(subjects, "record"),
      counted(photos, "photo"),
      counted(frozen, "frozen text"),
      counted(signatures, "signature"),
    ].join(", "),
    head: head && `${entries}:${head}`,
    findings: findings.map(ledgerSentence),
    remarks: remarks.map(ledgerSentence),
  };
});

const nothingLooked = { looked: "", head: null, remarks: [] };

async function walked(db: Db, noted: LogHead | null): Promise<Verification> {
  const last = await db.logEntry.findFirst({ orderBy: { seq: "desc" }, select: { seq: true } });
  if ((last?.seq ?? 0) <= MOST_HERE) return verifyRecords(db, dataDir(), { noted, photos: photoPlace() });
  const head = noted ? ["--head", `${noted.seq}:${noted.hash}`] : [];
  const { code, said, out } = await runAside("verify.ts", ["--json", ...head], { TOELINE_DATA: dataDir() });
  if (code !== 0 && code !== 1)
    throw new Error(`the check of the records gave no answer: ${said.slice(-500)}`);
  return JSON.parse(out) as Verification;
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
