"use server";

import { dataDir } from "@/lib/db";
import { ledgerSentence } from "@/lib/ledger";
import { verifyRecords } from "@/lib/record";
import { actionFor } from "../_door/here";

/** What the verifier looked at, and one sentence per finding. */
export interface VerifyAnswer {
  readonly looked: string;
  readonly head: string | null;
  readonly findings: readonly string[];
}

export async function verifyAction(): Promise<VerifyAnswer> {
  const { db } = await actionFor("log.read");
  const { entries, subjects, photos, frozen, head, findings } = await verifyRecords(db, dataDir());
  return {
    looked: [
      counted(entries, "log entry", "log entries"),
      counted(subjects, "record"),
      counted(photos, "photo"),
      counted(frozen, "frozen text"),
    ].join(", "),
    head,
    findings: findings.map(ledgerSentence),
  };
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
