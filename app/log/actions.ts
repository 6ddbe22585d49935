"use server";

import type { Verified } from "@/components/log";
import { dataDir } from "@/lib/db";
import { ledgerSentence } from "@/lib/ledger";
import { verifyRecords } from "@/lib/verify";
import { actionFor } from "../_door/action-for";

export const verifyAction = actionFor("log.read", [], async ({ db }): Promise<Verified> => {
  const { entries, subjects, photos, frozen, signatures, head, findings } = await verifyRecords(
    db,
    dataDir(),
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
  };
});

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
