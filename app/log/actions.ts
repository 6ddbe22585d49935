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
    looked: `${entries} log entries, ${subjects} records, ${photos} photos, ${frozen} frozen texts`,
    head,
    findings: findings.map(ledgerSentence),
  };
}
