"use server";

import type { Verified } from "@/components/log";
import { dataDir, photoPlace } from "@/lib/db";
import { headSentence, readHead } from "@/lib/keys";
import { ledgerSentence } from "@/lib/ledger";
import { verifyRecords } from "@/lib/verify";
import { actionFor, words } from "../_door/action-for";

/** `noted`: a head of the log that was kept elsewhere, as its file or as printed; empty: none. */
export const verifyAction = actionFor("log.read", [words], async ({ db }, given): Promise<Verified> => {
  const noted = given.trim() === "" ? null : readHead(given);
  if (noted && !noted.ok)
    return { looked: "", head: null, remarks: [], findings: noted.issues.map(headSentence) };
  const { entries, subjects, photos, frozen, signatures, head, findings, remarks } = await verifyRecords(
    db,
    dataDir(),
    { noted: noted?.value ?? null, photos: photoPlace() },
  );
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

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
