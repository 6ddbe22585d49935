import { issue } from "@/lib/base";
import { danglingRows, type Db } from "@/lib/db";
import type { ChainEnd, ContentIssue, LedgerIssue } from "@/lib/ledger";
import type { LogHead } from "@/lib/signature";
import { checkDerived } from "./derived";
import { checkFrozen } from "./frozen";
import { walkLog } from "./log-walk";
import { checkPhotos } from "./photos";
import { checkSignatures } from "./signatures";
import { checkStates } from "./states";
import type { Watch } from "./watch";

export interface Verification {
  readonly entries: number;
  readonly subjects: number;
  readonly photos: number;
  readonly frozen: number;
  /** Signatures by key, over frozen texts and over the log. */
  readonly signatures: number;
  /** Beads whose derived rows were worked out again. */
  readonly derived: number;
  /** Hash of the newest entry; write it down outside this machine, and a log cut off later shows. */
  readonly head: string | null;
  /** The newest entry; a later walk may begin behind it. */
  readonly end: ChainEnd | null;
  readonly findings: readonly LedgerIssue[];
  /** What is worth a word and takes nothing from the records: a log of an earlier version may run back in time. */
  readonly remarks: readonly LedgerIssue[];
}

interface Asked {
  /** A head of the log that was kept elsewhere; where it still stands, nothing before it was changed. */
  readonly noted?: LogHead | null;
  /** Only what came behind this entry, and what that speaks of; null: everything. */
  readonly since?: ChainEnd | null;
  readonly watch?: Watch;
  /** Where the photos are, if not in the data folder. */
  readonly photos?: string;
}

/**
 * Walks the log from its first entry, compares everything there is with what the log last said of it, hashes every
 * original photo and the pictures made from it again, and every frozen text; what follows from the records is worked out
 * again. Reads only, slice by slice, so that memory does not grow with the records but for a hundred bytes a photo.
 * `folder`: the data folder with the installation's key. Throws the signal's reason where it was stopped.
 */
export async function verifyRecords(
  db: Db,
  folder: string,
  { noted = null, since = null, watch = {}, photos: place = folder }: Asked = {},
): Promise<Verification> {
  const log = await walkLog(db, { since, noted }, watch);
  const only = log.touched;
  const states = await checkStates(db, only, watch);
  const photos = await checkPhotos(db, place, log, watch);
  const frozen = await checkFrozen(db, only, watch);
  const signatures = await checkSignatures(db, folder, { last: log.end?.seq ?? 0, only }, watch);
  const derived = await checkDerived(db, only, watch);
  return {
    entries: log.entries,
    subjects: states.looked,
    photos: photos.looked,
    frozen: frozen.looked,
    signatures: signatures.looked,
    derived: derived.looked,
    head: log.end?.hash ?? null,
    end: log.end,
    remarks: log.findings.filter(({ code }) => code === "time-runs-back"),
    findings: [
      ...log.findings.filter(({ code }) => code !== "time-runs-back"),
      ...states.findings,
      ...photos.findings,
      ...frozen.findings,
      ...signatures.findings,
      ...(only === null ? await dangling(db) : []),
      ...derived.findings,
    ],
  };
}

/** Rows whose key points nowhere. The program cannot write one, and no subject's state would hold it. */
async function dangling(db: Db): Promise<readonly ContentIssue[]> {
  const rows = await danglingRows(db);
  return rows.map(({ table, parent }) => issue("row-dangling" as const, [table], { table, of: parent }));
}
